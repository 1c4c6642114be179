#pragma once

#include "diary/meal_photo.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <string>
#include <string_view>

namespace tracewright {

/// The longest file that is taken as a photo, in bytes: the largest of a usual phone has about 8
/// MB.
inline constexpr std::size_t longest_photo_file = 12UL * 1024 * 1024;
/// The longest side of a photo as kept, in pixels: enough to read a label by.
inline constexpr int longest_photo_side = 1600;

/// The pixels of a JPEG or PNG written anew: upright as its orientation says, no side longer than
/// `longest_photo_side`, at most `longest_meal_photo` bytes. Nothing else of the file is in it:
/// neither place, device, time, comments, small pictures nor colour profile; what was clear in a
/// PNG is white. Error: a sentence that says what was found and what was expected, of a file that
/// is no JPEG or PNG, damaged, cut short, beyond 12 MB, 12,000 pixels a side or 40 million in all
/// (20 million as PNG or progressive JPEG, which are held whole), or in the colours of print.
tl::expected<MealPhoto, std::string> photo_anew(std::string_view file);

}  // namespace tracewright
