#include "intake/photo.hpp"

#include "intake/jpeg_outline.hpp"
#include "intake/png_pixels.hpp"

#include <fmt/format.h>
#include <png.h>
#include <turbojpeg.h>

#include <algorithm>
#include <cstdint>
#include <memory>
#include <utility>
#include <vector>

namespace tracewright {

namespace {

constexpr int longest_side = 12'000;
constexpr std::int64_t most_pixels = 40'000'000;
// Of these the decoder holds up to six bytes a pixel at once: about 120 MB.
constexpr std::int64_t most_pixels_held_whole = 20'000'000;
// A progressive file of a usual camera has about ten: each more costs the whole picture's time.
constexpr int most_scans = 64;

using Failed = tl::unexpected<std::string>;

Failed damaged(const char* what) {
    return Failed(fmt::format(
        "found a {} file that is damaged or cut short, expected a whole one: send it once more, or "
        "save it anew",
        what));
}

Failed too_large(std::int64_t width, std::int64_t height, std::int64_t most) {
    return Failed(fmt::format(
        "found a picture of {} by {} pixels, expected at most {} a side and {} million in all",
        width, height, longest_side, most / 1'000'000));
}

bool fits(std::int64_t width, std::int64_t height, std::int64_t most) {
    return width <= longest_side && height <= longest_side && width * height <= most;
}

/// Rows of three bytes a pixel, the topmost first.
struct Pixels {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> rgb;

    Pixels(int w, int h)
        : width(w), height(h), rgb(static_cast<std::size_t>(w) * static_cast<std::size_t>(h) * 3) {}
    std::uint8_t* at(int x, int y) {
        return rgb.data() + (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                             static_cast<std::size_t>(x)) *
                                3;
    }
};

struct Ends {
    void operator()(void* turbo) const { tjDestroy(turbo); }
    void operator()(unsigned char* bytes) const { tjFree(bytes); }
};
using Turbo = std::unique_ptr<void, Ends>;

std::string written(const Pixels& pixels, int quality, int sampling) {
    const Turbo turbo(tjInitCompress());
    unsigned char* bytes = nullptr;
    unsigned long size = 0;
    const int failed = tjCompress2(turbo.get(), pixels.rgb.data(), pixels.width, 0, pixels.height,
                                   TJPF_RGB, &bytes, &size, sampling, quality, 0);
    const std::unique_ptr<unsigned char, Ends> kept(bytes);
    return failed != 0 ? std::string() : std::string(reinterpret_cast<char*>(bytes), size);
}

// Orientation 1 to 8: which row and column of the file are the top and the left of what was seen.
// Exif 2.32 (CIPA DC-008, 2019), 4.6.4.
Pixels upright(Pixels lying, int orientation) {
    if (orientation == 1) {
        return lying;
    }
    const bool on_its_side = orientation >= 5;
    Pixels right(on_its_side ? lying.height : lying.width,
                 on_its_side ? lying.width : lying.height);
    const bool from_the_right =
        orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
    const bool from_the_bottom =
        orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
    for (int y = 0; y < right.height; ++y) {
        for (int x = 0; x < right.width; ++x) {
            const int column = on_its_side ? y : x;
            const int row = on_its_side ? x : y;
            std::copy_n(lying.at(from_the_right ? lying.width - 1 - column : column,
                                 from_the_bottom ? lying.height - 1 - row : row),
                        3, right.at(x, y));
        }
    }
    return right;
}

// As many eighths of its size as keep it within the longest side.
int kept_side(int side, int eighths) {
    return (side * eighths + 7) / 8;
}

tl::expected<Pixels, std::string> pixels_of_jpeg(std::string_view file) {
    const auto outline = jpeg_outline(file);
    if (!outline || outline->scans == 0) {
        return damaged("JPEG");
    }
    if (outline->scans > most_scans) {
        return Failed(fmt::format("found a JPEG of {} scans, expected at most {}", outline->scans,
                                  most_scans));
    }
    const Turbo turbo(tjInitDecompress());
    const auto* bytes = reinterpret_cast<const unsigned char*>(file.data());
    int width = 0;
    int height = 0;
    int sampling = 0;
    int colours = 0;
    if (tjDecompressHeader3(turbo.get(), bytes, file.size(), &width, &height, &sampling,
                            &colours) != 0 ||
        width < 1 || height < 1) {
        return damaged("JPEG");
    }
    const std::int64_t most = outline->held_whole ? most_pixels_held_whole : most_pixels;
    if (!fits(width, height, most)) {
        return too_large(width, height, most);
    }
    if (colours == TJCS_CMYK || colours == TJCS_YCCK) {
        return Failed("found a JPEG in the colours of print (CMYK), expected one for screens");
    }
    int eighths = 8;
    while (eighths > 1 && kept_side(std::max(width, height), eighths) > longest_photo_side) {
        --eighths;
    }
    Pixels pixels(kept_side(width, eighths), kept_side(height, eighths));
    if (tjDecompress2(turbo.get(), bytes, file.size(), pixels.rgb.data(), pixels.width, 0,
                      pixels.height, TJPF_RGB, TJFLAG_STOPONWARNING | TJFLAG_LIMITSCANS) != 0) {
        return damaged("JPEG");
    }
    return upright(std::move(pixels), outline->orientation);
}

tl::expected<Pixels, std::string> pixels_of_png(std::string_view file) {
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    const std::unique_ptr<png_image, decltype(&png_image_free)> ends(&image, &png_image_free);
    // Words packed in a few bytes would be unpacked before the first pixel is read.
    const auto alone = png_pixels_alone(file);
    if (!alone || png_image_begin_read_from_memory(&image, alone->data(), alone->size()) == 0) {
        return damaged("PNG");
    }
    if (!fits(image.width, image.height, most_pixels_held_whole)) {
        return too_large(image.width, image.height, most_pixels_held_whole);
    }
    image.format = PNG_FORMAT_RGB;
    Pixels pixels(static_cast<int>(image.width), static_cast<int>(image.height));
    const png_color white{255, 255, 255};
    if (png_image_finish_read(&image, &white, pixels.rgb.data(), 0, nullptr) == 0) {
        return damaged("PNG");
    }
    return pixels;
}

// What coaches may be sent besides; the first bytes tell.
const char* kind_of(std::string_view file) {
    if (file.empty()) {
        return "an empty file";
    }
    if (file.size() >= 12 && file.substr(4, 4) == "ftyp") {
        return "a HEIC or AVIF picture, or a film";
    }
    if (file.size() >= 12 && file.starts_with("RIFF") && file.substr(8, 4) == "WEBP") {
        return "a WebP picture";
    }
    return file.starts_with("GIF8")   ? "a GIF picture"
           : file.starts_with("BM")   ? "a BMP picture"
           : file.starts_with("%PDF") ? "a PDF document"
           : file.starts_with("II*") || file.starts_with(std::string_view("MM\0*", 4))
               ? "a TIFF picture"
               : "a file that is no picture known here";
}

}  // namespace

tl::expected<MealPhoto, std::string> photo_anew(std::string_view file) {
    if (file.size() > longest_photo_file) {
        return Failed(fmt::format("found a file of {} bytes, expected at most 12 MB", file.size()));
    }
    std::string of_png;
    if (file.starts_with("\x89PNG\r\n\x1A\n")) {
        const auto pixels = pixels_of_png(file);
        if (!pixels) {
            return Failed(pixels.error());
        }
        // As a JPEG close to the original, it is made smaller as any other.
        of_png = written(*pixels, 95, TJSAMP_444);
        file = of_png;
    } else if (!file.starts_with("\xFF\xD8")) {
        return Failed(fmt::format("found {}, expected a JPEG or PNG picture", kind_of(file)));
    }
    const auto pixels = pixels_of_jpeg(file);
    if (!pixels) {
        return Failed(pixels.error());
    }
    for (const int quality : {82, 65, 45, 25}) {
        std::string jpeg = written(*pixels, quality, TJSAMP_420);
        if (!jpeg.empty() && jpeg.size() <= longest_meal_photo) {
            return MealPhoto{std::move(jpeg)};
        }
    }
    return Failed("found a picture that stays longer than 1 MB, expected a photo of a meal");
}

}  // namespace tracewright
