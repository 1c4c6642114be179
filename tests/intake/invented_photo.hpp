#pragma once

#include <png.h>
#include <turbojpeg.h>

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright::testing {

// Pictures of four coloured corners, invented: what is in a photo matters to nobody here.

using Colour = std::array<std::uint8_t, 3>;
inline constexpr Colour red{220, 20, 20};
inline constexpr Colour green{20, 200, 20};
inline constexpr Colour blue{20, 20, 220};
inline constexpr Colour white{250, 250, 250};

/// Top left, top right, bottom left, bottom right.
using Corners = std::array<Colour, 4>;
inline constexpr Corners corners{red, green, blue, white};

inline std::vector<std::uint8_t> pixels_of(int width, int height, const Corners& of) {
    std::vector<std::uint8_t> pixels;
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            const Colour& colour =
                of.at(static_cast<std::size_t>((2 * y >= height ? 2 : 0) + (2 * x >= width)));
            pixels.insert(pixels.end(), colour.begin(), colour.end());
        }
    }
    return pixels;
}

inline std::string jpeg_of(int width, int height, const Corners& of = corners, int flags = 0) {
    const auto pixels = pixels_of(width, height, of);
    void* turbo = tjInitCompress();
    unsigned char* bytes = nullptr;
    unsigned long size = 0;
    tjCompress2(turbo, pixels.data(), width, 0, height, TJPF_RGB, &bytes, &size, TJSAMP_420, 90,
                flags);
    std::string jpeg(reinterpret_cast<char*>(bytes), size);
    tjFree(bytes);
    tjDestroy(turbo);
    return jpeg;
}

inline std::string print_jpeg_of(int width, int height) {
    const std::vector<std::uint8_t> pixels(static_cast<std::size_t>(width * height * 4), 90);
    void* turbo = tjInitCompress();
    unsigned char* bytes = nullptr;
    unsigned long size = 0;
    tjCompress2(turbo, pixels.data(), width, 0, height, TJPF_CMYK, &bytes, &size, TJSAMP_444, 90,
                0);
    std::string jpeg(reinterpret_cast<char*>(bytes), size);
    tjFree(bytes);
    tjDestroy(turbo);
    return jpeg;
}

inline std::string png_of(int width, int height) {
    const auto pixels = pixels_of(width, height, corners);
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    image.width = static_cast<std::uint32_t>(width);
    image.height = static_cast<std::uint32_t>(height);
    image.format = PNG_FORMAT_RGB;
    png_alloc_size_t size = 0;
    png_image_write_to_memory(&image, nullptr, &size, 0, pixels.data(), 0, nullptr);
    std::string png(size, '\0');
    png_image_write_to_memory(&image, png.data(), &size, 0, pixels.data(), 0, nullptr);
    return png;
}

/// The same with a text beside the pixels that is packed to a thousandth of its `length`.
inline std::string png_with_text(int width, int height, std::size_t length) {
    std::string png;
    png_structp writer = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, nullptr, nullptr);
    png_infop about = png_create_info_struct(writer);
    const auto append = [](png_structp at, png_bytep bytes, std::size_t size) {
        static_cast<std::string*>(png_get_io_ptr(at))->append(reinterpret_cast<char*>(bytes), size);
    };
    png_set_write_fn(writer, &png, append, nullptr);
    png_set_IHDR(writer, about, static_cast<std::uint32_t>(width),
                 static_cast<std::uint32_t>(height), 8, PNG_COLOR_TYPE_RGB, PNG_INTERLACE_NONE,
                 PNG_COMPRESSION_TYPE_BASE, PNG_FILTER_TYPE_BASE);
    std::string key = "Invented";
    std::string words(length, 'i');
    png_text text{};
    text.compression = PNG_TEXT_COMPRESSION_zTXt;
    text.key = key.data();
    text.text = words.data();
    text.text_length = words.size();
    png_set_text(writer, about, &text, 1);
    png_write_info(writer, about);
    auto pixels = pixels_of(width, height, corners);
    for (int y = 0; y < height; ++y) {
        png_write_row(writer, &pixels[static_cast<std::size_t>(y * width * 3)]);
    }
    png_write_end(writer, about);
    png_destroy_write_struct(&writer, &about);
    return png;
}

inline std::string segment(unsigned marker, std::string_view content) {
    const std::size_t length = content.size() + 2;
    std::string bytes{'\xFF', static_cast<char>(marker), static_cast<char>(length >> 8U),
                      static_cast<char>(length & 0xFFU)};
    return bytes.append(content);
}

/// An Exif segment with a device's name and an orientation, in either order of bytes.
inline std::string exif_of(int orientation, bool big_first = true) {
    const auto number = [&](unsigned value, int bytes) {
        std::string text;
        for (int i = 0; i < bytes; ++i) {
            const int place = big_first ? bytes - 1 - i : i;
            text += static_cast<char>(value >> static_cast<unsigned>(8 * place) & 0xFFU);
        }
        return text;
    };
    std::string tiff = (big_first ? "MM" : "II") + number(42, 2) + number(8, 4) + number(2, 2);
    tiff += number(0x010F, 2) + number(2, 2) + number(16, 4) + number(38, 4);
    tiff += number(0x0112, 2) + number(3, 2) + number(1, 4) +
            number(static_cast<unsigned>(orientation), 2) + number(0, 2);
    tiff += number(0, 4) + std::string("Invented camera\0", 16);
    return segment(0xE1, std::string("Exif\0\0", 6) + tiff);
}

/// Segments put behind the JPEG's first marker.
inline std::string with_segments(const std::string& jpeg, const std::string& segments) {
    return jpeg.substr(0, 2) + segments + jpeg.substr(2);
}

}  // namespace tracewright::testing
