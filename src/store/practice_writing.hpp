#pragma once

#include "time/way_of_writing.hpp"
#include "units/glucose.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>

namespace tracewright {

/// How a practice writes what is read in it, on the page as on paper.
struct PracticeWriting {
    WayOfWriting way;
    GlucoseUnit unit = GlucoseUnit::mmol_per_l;  ///< for a new client whose own unit is not told

    bool operator==(const PracticeWriting&) const = default;
};

/// As one line of JSON (docs/formats/practice-writing.schema.json).
std::string writing_document(const PracticeWriting& writing);

/// `writing` changed by such a document; what it doesn't tell stays. Error: a sentence with the
/// key, what was found and what was expected.
tl::expected<PracticeWriting, std::string> writing_changed(const PracticeWriting& writing,
                                                           std::string_view document);

}  // namespace tracewright
