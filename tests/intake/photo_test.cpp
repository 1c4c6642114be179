// Photos written anew: nothing but upright pixels is left of what was sent, and nothing of what
// can't be read. Pictures are made here, invented; own rules but where a source is named.
#include "intake/photo.hpp"

#include "intake/invented_photo.hpp"
#include "intake/jpeg_outline.hpp"
#include "intake/png_pixels.hpp"
#include "source_folder.hpp"

#include <gmock/gmock.h>
#include <sys/resource.h>

#include <cstdlib>
#include <fstream>
#include <random>
#include <sstream>

namespace tracewright {
namespace {

using namespace tracewright::testing;
using ::testing::HasSubstr;
using ::testing::Not;

struct Seen {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> rgb;

    Colour at(int x, int y) const {
        const auto from = static_cast<std::size_t>((y * width + x) * 3);
        return {rgb[from], rgb[from + 1], rgb[from + 2]};
    }
};

Seen seen(const std::string& jpeg) {
    Seen seen;
    void* turbo = tjInitDecompress();
    const auto* bytes = reinterpret_cast<const unsigned char*>(jpeg.data());
    int sampling = 0;
    int colours = 0;
    EXPECT_EQ(tjDecompressHeader3(turbo, bytes, jpeg.size(), &seen.width, &seen.height, &sampling,
                                  &colours),
              0);
    seen.rgb.resize(static_cast<std::size_t>(seen.width * seen.height * 3));
    EXPECT_EQ(tjDecompress2(turbo, bytes, jpeg.size(), seen.rgb.data(), seen.width, 0, seen.height,
                            TJPF_RGB, 0),
              0);
    tjDestroy(turbo);
    return seen;
}

bool alike(const Colour& one, const Colour& other) {
    for (std::size_t i = 0; i < 3; ++i) {
        if (std::abs(one.at(i) - other.at(i)) > 40) {
            return false;
        }
    }
    return true;
}

void expect_corners(const Seen& seen) {
    const int right = seen.width - 3;
    const int bottom = seen.height - 3;
    EXPECT_TRUE(alike(seen.at(2, 2), red));
    EXPECT_TRUE(alike(seen.at(right, 2), green));
    EXPECT_TRUE(alike(seen.at(2, bottom), blue));
    EXPECT_TRUE(alike(seen.at(right, bottom), white));
}

std::string why_not(std::string_view file) {
    const auto photo = photo_anew(file);
    return photo ? "it was taken" : photo.error();
}

// Every segment before the pixels, by its marker. ITU-T T.81 (1992), annex B.
std::vector<unsigned> markers_of(const std::string& jpeg) {
    std::vector<unsigned> markers;
    for (std::size_t at = 2; at + 3 < jpeg.size();) {
        EXPECT_EQ(static_cast<std::uint8_t>(jpeg[at]), 0xFF);
        markers.push_back(static_cast<std::uint8_t>(jpeg[at + 1]));
        if (markers.back() == 0xDA) {
            break;
        }
        at += 2U + static_cast<std::size_t>(static_cast<std::uint8_t>(jpeg[at + 2]) << 8U |
                                            static_cast<std::uint8_t>(jpeg[at + 3]));
    }
    return markers;
}

TEST(Photo, no_place_device_time_comment_or_profile_is_left) {
    const std::string told = exif_of(1) +
                             segment(0xE1, "http://ns.adobe.com/xap/1.0/ Inventedplace") +
                             segment(0xE2, std::string("ICC_PROFILE\0", 12) + "Invented colours") +
                             segment(0xED, "Invented by-line") + segment(0xEF, "Invented other") +
                             segment(0xFE, "Invented comment");
    const std::string file = with_segments(jpeg_of(64, 32), told) + "Invented bytes after the end";
    ASSERT_THAT(file, HasSubstr("Invented camera"));
    const auto photo = photo_anew(file);
    ASSERT_TRUE(photo) << photo.error();
    EXPECT_THAT(photo->jpeg, Not(HasSubstr("Invented")));
    EXPECT_THAT(photo->jpeg, Not(HasSubstr("Exif")));
    for (const unsigned marker : markers_of(photo->jpeg)) {
        EXPECT_FALSE(marker >= 0xE1 && marker <= 0xEF) << marker;
        EXPECT_NE(marker, 0xFEU);
    }
    EXPECT_TRUE(photo->jpeg.ends_with("\xFF\xD9"));
    expect_corners(seen(photo->jpeg));
}

// What the file's rows and columns show of the upright picture. Exif 2.32 (CIPA DC-008, 2019),
// 4.6.4: for 6, say, the first row is the right side and the first column the top.
TEST(Photo, stands_upright_whichever_way_the_device_was_held) {
    const std::array<Corners, 8> lying{{{red, green, blue, white},
                                        {green, red, white, blue},
                                        {white, blue, green, red},
                                        {blue, white, red, green},
                                        {red, blue, green, white},
                                        {green, white, red, blue},
                                        {white, green, blue, red},
                                        {blue, red, white, green}}};
    for (int orientation = 1; orientation <= 8; ++orientation) {
        const bool on_its_side = orientation >= 5;
        const std::string plain = jpeg_of(on_its_side ? 32 : 64, on_its_side ? 64 : 32,
                                          lying.at(static_cast<std::size_t>(orientation - 1)));
        for (const bool big_first : {true, false}) {
            SCOPED_TRACE(std::to_string(orientation) + (big_first ? " MM" : " II"));
            const auto photo = photo_anew(with_segments(plain, exif_of(orientation, big_first)));
            ASSERT_TRUE(photo) << photo.error();
            const Seen upright = seen(photo->jpeg);
            EXPECT_EQ(upright.width, 64);
            EXPECT_EQ(upright.height, 32);
            expect_corners(upright);
        }
    }
}

TEST(Photo, an_orientation_that_makes_no_sense_is_left_alone) {
    for (const int nonsense : {0, 9, 60'000}) {
        const auto photo = photo_anew(with_segments(jpeg_of(64, 32), exif_of(nonsense)));
        ASSERT_TRUE(photo) << photo.error();
        expect_corners(seen(photo->jpeg));
    }
    const std::string whole = exif_of(6);
    for (std::size_t size = 4; size < whole.size(); ++size) {
        const auto photo =
            photo_anew(with_segments(jpeg_of(64, 32), segment(0xE1, whole.substr(4, size - 4))));
        EXPECT_TRUE(photo) << size;
    }
}

TEST(Photo, a_large_one_is_made_smaller_and_a_small_one_is_not) {
    const Seen large = seen(photo_anew(jpeg_of(4000, 3000))->jpeg);
    EXPECT_EQ(large.width, 1500);  // three eighths
    EXPECT_EQ(large.height, 1125);
    expect_corners(large);
    const Seen small = seen(photo_anew(jpeg_of(33, 17))->jpeg);
    EXPECT_EQ(small.width, 33);
    EXPECT_EQ(small.height, 17);
}

TEST(Photo, a_png_is_taken_and_kept_as_any_other) {
    const auto photo = photo_anew(png_of(64, 32));
    ASSERT_TRUE(photo) << photo.error();
    EXPECT_TRUE(photo->jpeg.starts_with("\xFF\xD8"));
    expect_corners(seen(photo->jpeg));
    EXPECT_EQ(seen(photo_anew(png_of(3200, 100))->jpeg).width, 1600);
}

TEST(Photo, of_noise_no_more_is_kept_than_is_allowed) {
    std::mt19937 draw(20261129);
    std::vector<std::uint8_t> noise(1600UL * 1600 * 3);
    for (std::uint8_t& value : noise) {
        value = static_cast<std::uint8_t>(draw());
    }
    void* turbo = tjInitCompress();
    unsigned char* bytes = nullptr;
    unsigned long size = 0;
    tjCompress2(turbo, noise.data(), 1600, 0, 1600, TJPF_RGB, &bytes, &size, TJSAMP_444, 95, 0);
    const std::string jpeg(reinterpret_cast<char*>(bytes), size);
    tjFree(bytes);
    tjDestroy(turbo);
    ASSERT_GT(jpeg.size(), 3 * longest_meal_photo);
    const auto photo = photo_anew(jpeg);
    if (photo) {
        EXPECT_LE(photo->jpeg.size(), longest_meal_photo);
    } else {
        EXPECT_THAT(photo.error(), HasSubstr("longer than 1 MB"));
    }
}

TEST(Photo, other_kinds_are_called_by_their_name) {
    using namespace std::string_literals;
    EXPECT_THAT(why_not(""), HasSubstr("an empty file"));
    EXPECT_THAT(why_not("\0\0\0\x18"s + "ftypheic" + "more"), HasSubstr("HEIC"));
    EXPECT_THAT(why_not("RIFFxxxxWEBPVP8 "), HasSubstr("WebP"));
    EXPECT_THAT(why_not("GIF89a"), HasSubstr("GIF"));
    EXPECT_THAT(why_not("%PDF-1.7"), HasSubstr("PDF"));
    EXPECT_THAT(why_not("MM\0*"s), HasSubstr("TIFF"));
    EXPECT_THAT(why_not("Time,Glucose\n"), HasSubstr("no picture known here"));
    EXPECT_THAT(why_not("<svg xmlns='http://www.w3.org/2000/svg'/>"), HasSubstr("expected a JPEG"));
    EXPECT_THAT(why_not(print_jpeg_of(32, 32)), HasSubstr("colours of print"));
    EXPECT_THAT(why_not(std::string(longest_photo_file + 1, 'x')), HasSubstr("at most 12 MB"));
}

TEST(Photo, cut_short_anywhere_nothing_is_taken) {
    const std::string jpeg = with_segments(jpeg_of(64, 32), exif_of(6));
    for (std::size_t size = 0; size < jpeg.size(); ++size) {
        EXPECT_FALSE(photo_anew(std::string_view(jpeg).substr(0, size))) << size;
    }
    const std::string png = png_of(64, 32);
    for (std::size_t size = 0; size + 12 < png.size(); ++size) {  // 12: its mark of the end
        EXPECT_FALSE(photo_anew(std::string_view(png).substr(0, size))) << size;
    }
}

// PNG (ISO/IEC 15948:2004), annex D: the check sum of a chunk.
std::string with_check(const std::string& chunk) {
    std::uint32_t sum = 0xFFFFFFFF;
    for (const char byte : chunk) {
        sum ^= static_cast<std::uint8_t>(byte);
        for (int bit = 0; bit < 8; ++bit) {
            sum = (sum >> 1U) ^ ((sum & 1U) != 0 ? 0xEDB88320U : 0U);
        }
    }
    sum = ~sum;
    std::string whole = chunk;
    for (const unsigned shift : {24U, 16U, 8U, 0U}) {
        whole += static_cast<char>(sum >> shift & 0xFFU);
    }
    return whole;
}

TEST(Photo, a_small_file_of_huge_sides_is_refused_by_its_head) {
    std::string jpeg = jpeg_of(64, 32);
    const auto frame = jpeg.find("\xFF\xC0");
    ASSERT_NE(frame, std::string::npos);
    jpeg.replace(frame + 5, 4, "\xFF\xDC\xFF\xDC");
    EXPECT_THAT(why_not(jpeg), HasSubstr("65500 by 65500 pixels"));
    jpeg.replace(frame + 5, 4, "\x2E\x00\x2E\x00", 4);
    EXPECT_THAT(why_not(jpeg), HasSubstr("40 million in all"));
    std::string png = png_of(64, 32);
    png.replace(12, 21,
                with_check(png.substr(12, 4) + std::string("\0\0\x27\x10\0\0\x27\x10", 8) +
                           png.substr(24, 5)));
    EXPECT_THAT(why_not(png), HasSubstr("10000 by 10000 pixels"));
}

// What the decoder would hold of a progressive file is six bytes a pixel, whatever size is asked.
TEST(Photo, one_that_is_held_whole_may_have_half_the_pixels) {
    std::string whole = jpeg_of(64, 32);
    EXPECT_FALSE(jpeg_outline(whole)->held_whole);
    std::string progressive = jpeg_of(64, 32, corners, TJFLAG_PROGRESSIVE);
    EXPECT_TRUE(jpeg_outline(progressive)->held_whole);
    // Each colour in a scan of its own: the first tells of one.
    std::string apart = whole;
    apart.at(apart.find("\xFF\xDA") + 4) = 1;
    EXPECT_TRUE(jpeg_outline(apart)->held_whole);
    const std::string sides("\x13\x88\x1F\x40", 4);  // 5000 high, 8000 wide
    progressive.replace(progressive.find("\xFF\xC2") + 5, 4, sides);
    EXPECT_THAT(why_not(progressive), HasSubstr("20 million in all"));
    whole.replace(whole.find("\xFF\xC0") + 5, 4, sides);
    EXPECT_THAT(why_not(whole), HasSubstr("damaged"));  // by its pixels, not by its head
}

TEST(Photo, of_a_png_nothing_but_its_pixels_is_read) {
    const std::string told = png_with_text(64, 32, 7'900'000);
    ASSERT_LT(told.size(), 20'000U);
    ASSERT_THAT(told, HasSubstr("zTXtInvented"));
    const auto alone = png_pixels_alone(told);
    ASSERT_TRUE(alone);
    EXPECT_EQ(alone->find("zTXt"), std::string::npos);
    EXPECT_TRUE(png_pixels_alone(png_of(64, 32)));
    const std::string_view text =
        std::string_view(told).substr(told.find("zTXt") - 4, told.find("IDAT") - told.find("zTXt"));
    std::string file = told;
    for (int i = 0; i < 100; ++i) {
        file.insert(33, text);  // behind the head
    }
    rusage before{};
    getrusage(RUSAGE_SELF, &before);
    const auto photo = photo_anew(file);
    ASSERT_TRUE(photo) << photo.error();
    expect_corners(seen(photo->jpeg));
    rusage after{};
    getrusage(RUSAGE_SELF, &after);
    EXPECT_LT(after.ru_maxrss - before.ru_maxrss, 200'000);  // kB; unpacked, 790 MB
}

TEST(Photo, a_picture_gone_through_again_and_again_is_refused) {
    std::string jpeg = jpeg_of(64, 32, corners, TJFLAG_PROGRESSIVE);
    ASSERT_TRUE(photo_anew(jpeg));
    ASSERT_GT(jpeg_outline(jpeg)->scans, 1);
    const std::string scan =
        jpeg.substr(jpeg.rfind("\xFF\xDA"), jpeg.size() - 2 - jpeg.rfind("\xFF\xDA"));
    for (int i = 0; i < 100; ++i) {
        jpeg.insert(jpeg.size() - 2, scan);
    }
    EXPECT_THAT(why_not(jpeg), HasSubstr("scans, expected at most 64"));
}

TEST(Photo, whatever_is_altered_gives_a_whole_photo_or_an_error) {
    std::mt19937 draw(7);
    for (const std::string& whole :
         {with_segments(jpeg_of(64, 32), exif_of(6)), jpeg_of(64, 32, corners, TJFLAG_PROGRESSIVE),
          png_of(64, 32)}) {
        for (int round = 0; round < 300; ++round) {
            std::string file = whole;
            for (int i = 0; i < 3; ++i) {
                file[draw() % file.size()] = static_cast<char>(draw());
            }
            if (const auto photo = photo_anew(file)) {
                EXPECT_TRUE(jpeg_outline(photo->jpeg));
                EXPECT_LE(photo->jpeg.size(), longest_meal_photo);
            } else {
                EXPECT_THAT(photo.error(), HasSubstr("expected"));
            }
        }
    }
}

// The fuzzer's seeds are these. TRACEWRIGHT_WRITE_SEEDS writes them anew.
TEST(Photo, the_fuzzers_seeds_are_the_pictures_made_here) {
    const std::map<std::string, std::string> seeds{
        {"lying.jpg", with_segments(jpeg_of(32, 64), exif_of(6))},
        {"progressive.jpg", jpeg_of(64, 32, corners, TJFLAG_PROGRESSIVE)},
        {"small.png", png_of(16, 8)}};
    for (const auto& [name, bytes] : seeds) {
        const std::string path =
            std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/fuzz/corpus/photo/" + name;
        if (std::getenv("TRACEWRIGHT_WRITE_SEEDS") != nullptr) {
            std::ofstream(path, std::ios::binary) << bytes;
        }
        std::ifstream file(path, std::ios::binary);
        std::ostringstream kept;
        kept << file.rdbuf();
        EXPECT_EQ(kept.str(), bytes) << name;
        EXPECT_TRUE(photo_anew(bytes));
    }
}

}  // namespace
}  // namespace tracewright
