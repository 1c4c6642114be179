#include "trace/wear_end_names.hpp"

#include <array>
#include <utility>

namespace tracewright {

namespace {

constexpr std::array<std::pair<std::string_view, WearEnd>, 6> ends = {{
    {"planned", WearEnd::planned},
    {"fell-off", WearEnd::fell_off},
    {"sensor-failed", WearEnd::sensor_failed},
    {"removed", WearEnd::removed},
    {"still-on", WearEnd::still_on},
    {"not-told", WearEnd::not_told},
}};

}  // namespace

std::string_view name_of(WearEnd end) {
    for (const auto& [called, one] : ends) {
        if (one == end) {
            return called;
        }
    }
    return "not-told";
}

std::optional<WearEnd> wear_end_called(std::string_view word) {
    for (const auto& [called, end] : ends) {
        if (word == called) {
            return end;
        }
    }
    return std::nullopt;
}

}  // namespace tracewright
