#include "intake/png_pixels.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>

namespace tracewright {

namespace {

constexpr std::string_view signature = "\x89PNG\r\n\x1A\n";
constexpr std::array<std::string_view, 7> of_the_pixels{"IHDR", "PLTE", "tRNS", "gAMA",
                                                        "sRGB", "IDAT", "IEND"};
constexpr std::size_t around = 12;  ///< bytes of a chunk beside its content: length, name, check

std::size_t length_at(std::string_view bytes) {
    std::size_t length = 0;
    for (const char byte : bytes.substr(0, 4)) {
        length = length << 8U | static_cast<std::uint8_t>(byte);
    }
    return length;
}

}  // namespace

std::optional<std::string> png_pixels_alone(std::string_view bytes) {
    if (!bytes.starts_with(signature)) {
        return std::nullopt;
    }
    std::string alone(signature);
    alone.reserve(bytes.size());
    bytes.remove_prefix(signature.size());
    while (bytes.size() >= around) {
        const std::size_t length = length_at(bytes);
        if (bytes.size() - around < length) {
            return std::nullopt;
        }
        const std::string_view chunk = bytes.substr(0, around + length);
        const std::string_view name = chunk.substr(4, 4);
        if (std::ranges::find(of_the_pixels, name) != of_the_pixels.end()) {
            alone += chunk;
        }
        if (name == "IEND") {
            return alone;
        }
        bytes.remove_prefix(chunk.size());
    }
    return std::nullopt;
}

}  // namespace tracewright
