#include "coaching/wears_apart.hpp"

#include <chrono>

namespace tracewright {

namespace {

// One sensor is often put on before the last comes off; no day can be read by both in this time.
constexpr std::chrono::hours change_of_sensors{12};

bool ends_later(const Wear& a, const Wear& b) {
    return a.sensed_span().to > b.sensed_span().to;
}

bool at_once(const Wear& a, const Wear& b) {
    return !is_before(a, b) && !is_before(b, a);
}

// Of the wears beside the last one, the last that a coach chose; else itself.
std::size_t counted_beside(std::span<const Wear> wears, std::size_t last) {
    std::size_t found = last;
    for (std::size_t i = 0; i < wears.size(); ++i) {
        const bool chosen = !wears[i].empty() && wears[i].chosen && at_once(wears[i], wears[last]);
        if (chosen && (!wears[found].chosen || ends_later(wears[i], wears[found]))) {
            found = i;
        }
    }
    return found;
}

std::optional<std::size_t> last_before(std::span<const Wear> wears, std::size_t after) {
    std::optional<std::size_t> found;
    for (std::size_t i = 0; i < wears.size(); ++i) {
        if (is_before(wears[i], wears[after]) && (!found || ends_later(wears[i], wears[*found]))) {
            found = i;
        }
    }
    return found;
}

}  // namespace

bool is_before(const Wear& before, const Wear& after) {
    return !before.empty() && !after.empty() &&
           before.sensed_span().from < after.sensed_span().from &&
           before.sensed_span().to < after.sensed_span().to &&
           before.sensed_span().to - after.sensed_span().from < change_of_sensors;
}

std::optional<BeforeAndAfter> last_two_apart(std::span<const Wear> wears) {
    std::optional<std::size_t> last;
    for (std::size_t i = 0; i < wears.size(); ++i) {
        if (!wears[i].empty() && (!last || ends_later(wears[i], wears[*last]))) {
            last = i;
        }
    }
    if (!last) {
        return std::nullopt;
    }
    const std::size_t after = counted_beside(wears, *last);
    const auto before = last_before(wears, after);
    return before ? std::optional{BeforeAndAfter{*before, after}} : std::nullopt;
}

}  // namespace tracewright
