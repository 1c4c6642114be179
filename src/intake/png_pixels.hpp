#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace tracewright {

/// The PNG again with what its pixels need and nothing else: size, palette, clear colour, gamma,
/// pixels, end. Words, profiles, times and small pictures are left out unread, as are checks of
/// what is left (the decoder's). Chunks by PNG (ISO/IEC 15948:2004), 5.3. Empty: no PNG, or one
/// that ends before its end is marked.
std::optional<std::string> png_pixels_alone(std::string_view bytes);

}  // namespace tracewright
