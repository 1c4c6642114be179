#pragma once

#include "access/sealing.hpp"
#include "time/instant.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>

namespace tracewright {

/// An instant as the tables keep it: seconds since 1970, UTC.
inline std::int64_t seconds(Instant at) {
    return at.time_since_epoch().count();
}
inline Instant instant(std::int64_t seconds_since_1970) {
    return Instant{std::chrono::seconds{seconds_since_1970}};
}

/// An instant that may be missing; NULL where it is.
inline std::optional<std::int64_t> seconds(const std::optional<Instant>& at) {
    return at ? std::optional(seconds(*at)) : std::nullopt;
}
inline std::optional<Instant> instant(const std::optional<std::int64_t>& at) {
    return at ? std::optional(instant(*at)) : std::nullopt;
}

/// The text sealed for `place`. std::runtime_error, without any of the text, where it was altered
/// or belongs elsewhere.
std::string opened_text(const Seal& seal, std::span<const std::uint8_t> sealed,
                        const std::string& place);

}  // namespace tracewright
