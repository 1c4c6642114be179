// Any bytes as a photo: one written anew, which is a whole JPEG with nothing told in it, or an
// error.
#include "intake/jpeg_outline.hpp"
#include "intake/photo.hpp"

#include <cstdint>
#include <cstdlib>

using namespace tracewright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (const auto photo = photo_anew({reinterpret_cast<const char*>(data), size})) {
        const auto outline = jpeg_outline(photo->jpeg);
        if (!outline || outline->orientation != 1 || photo->jpeg.size() > longest_meal_photo) {
            std::abort();
        }
    }
    return 0;
}
