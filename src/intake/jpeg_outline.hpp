#pragma once

#include <optional>
#include <string_view>

namespace tracewright {

/// What a JPEG says of itself outside its pixels, as far as they can't be shown rightly without.
struct JpegOutline {
    /// How the pixels lie, 1 (upright) to 8. Exif 2.32 (CIPA DC-008, 2019), 4.6.4, tag 274.
    int orientation = 1;
    int scans = 0;  ///< how often the pixels are gone through: many in a progressive file
    /// What is coded of the picture has to be held whole until the last scan: the first one does
    /// not tell all of it.
    bool held_whole = false;
};

/// Walks the segments of ITU-T T.81 (1992), annex B, and decodes none of them. Empty: no JPEG, or
/// one that ends before its end is marked.
std::optional<JpegOutline> jpeg_outline(std::string_view bytes);

}  // namespace tracewright
