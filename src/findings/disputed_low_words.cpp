#include "findings/disputed_low_words.hpp"

#include "findings/edge_words.hpp"

#include <fmt/format.h>

namespace tracewright {

std::string disputed_low_words(const DisputedLow& low, GlucoseUnit unit) {
    const bool one = low.moments == 1;
    return fmt::format("{}several levels for one moment, {} below {}: which {} right is not known",
                       one ? "" : fmt::format("{} times ", low.moments),
                       low.all_below ? "all" : "not all", edge_words(54, unit), one ? "is" : "are");
}

}  // namespace tracewright
