#include "intake/jpeg_outline.hpp"

#include <cstddef>
#include <cstdint>

namespace tracewright {

namespace {

constexpr unsigned start_of_scan = 0xDA;
constexpr unsigned end_of_image = 0xD9;
constexpr unsigned exif_segment = 0xE1;

// A frame's header: 0xC0 to 0xCF but for tables of codes, an extension and conditions of coding.
bool begins_a_frame(unsigned marker) {
    return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
}

bool is_progressive(unsigned frame) {
    return (frame & 3U) == 2;
}

unsigned byte_at(std::string_view bytes, std::size_t at) {
    return static_cast<std::uint8_t>(bytes[at]);
}

// A number of `size` bytes in the file's own order; empty beyond the end.
std::optional<std::size_t> number(std::string_view bytes, std::size_t at, std::size_t size,
                                  bool big_first) {
    if (at > bytes.size() || bytes.size() - at < size) {
        return std::nullopt;
    }
    std::size_t value = 0;
    for (std::size_t i = 0; i < size; ++i) {
        value = value << 8U | byte_at(bytes, at + (big_first ? i : size - 1 - i));
    }
    return value;
}

// 1 wherever the segment does not say it plainly.
int orientation_in(std::string_view segment) {
    constexpr std::string_view mark("Exif\0\0", 6);
    if (!segment.starts_with(mark)) {
        return 1;
    }
    const std::string_view tiff = segment.substr(mark.size());
    const bool big_first = tiff.starts_with("MM");
    const auto first = number(tiff, 4, 4, big_first);
    const auto entries = first ? number(tiff, *first, 2, big_first) : std::nullopt;
    if ((!big_first && !tiff.starts_with("II")) || !entries) {
        return 1;
    }
    for (std::size_t i = 0; i < *entries; ++i) {
        const std::size_t at = *first + 2 + 12 * i;
        const auto value = number(tiff, at + 8, 2, big_first);
        if (!value) {
            return 1;
        }
        if (number(tiff, at, 2, big_first) == std::size_t{0x0112}) {
            return *value >= 1 && *value <= 8 ? static_cast<int>(*value) : 1;
        }
    }
    return 1;
}

// From within coded pixels to the next marker that is none of theirs.
std::size_t after_pixels(std::string_view bytes, std::size_t at) {
    for (; at + 1 < bytes.size(); ++at) {
        const unsigned next = byte_at(bytes, at + 1);
        const bool of_the_pixels = next == 0 || (next >= 0xD0 && next <= 0xD7);
        if (byte_at(bytes, at) == 0xFF && !of_the_pixels) {
            return at;
        }
    }
    return bytes.size();
}

}  // namespace

std::optional<JpegOutline> jpeg_outline(std::string_view bytes) {
    if (!bytes.starts_with("\xFF\xD8")) {
        return std::nullopt;
    }
    JpegOutline outline;
    bool orientation_told = false;
    unsigned frame = 0;
    std::optional<std::size_t> colours;
    std::size_t at = 2;
    while (at + 1 < bytes.size() && byte_at(bytes, at) == 0xFF) {
        const unsigned marker = byte_at(bytes, at + 1);
        if (marker == 0xFF) {  // markers may be filled up with more of their first byte
            ++at;
            continue;
        }
        if (marker == end_of_image) {
            return outline;
        }
        at += 2;
        if (marker == 0x01 || (marker >= 0xD0 && marker <= 0xD7)) {
            continue;  // these have no length
        }
        const auto length = number(bytes, at, 2, true);
        if (!length || *length < 2 || bytes.size() - at < *length) {
            return std::nullopt;
        }
        const std::string_view segment = bytes.substr(at + 2, *length - 2);
        if (marker == exif_segment && !orientation_told && segment.starts_with("Exif")) {
            outline.orientation = orientation_in(segment);
            orientation_told = true;
        }
        if (begins_a_frame(marker)) {
            frame = marker;
            colours = number(segment, 5, 1, true);
        }
        at += *length;
        if (marker == start_of_scan) {
            if (outline.scans == 0) {
                outline.held_whole =
                    is_progressive(frame) || number(segment, 0, 1, true) != colours;
            }
            ++outline.scans;
            at = after_pixels(bytes, at);
        }
    }
    return std::nullopt;
}

}  // namespace tracewright
