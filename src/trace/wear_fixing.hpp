#pragma once

#include <optional>
#include <string>

namespace tracewright {

/// How a sensor sat on the skin, as told: what its life is compared by.
struct WearFixing {
    std::optional<bool> overpatch;  ///< whether an adhesive cover was put over it; empty: not told
    std::string site;               ///< where it sat, in the coach's words; empty: not told

    bool told() const { return overpatch.has_value() || !site.empty(); }
    bool operator==(const WearFixing&) const = default;
};

}  // namespace tracewright
