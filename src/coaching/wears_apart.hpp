#pragma once

#include "trace/wear.hpp"

#include <cstddef>
#include <optional>
#include <span>

namespace tracewright {

/// `before` ended before `after` began, but for half a day in which one sensor followed
/// another. What was worn at once, or the other way about, is no before and after. An empty wear
/// has no place in time: false.
bool is_before(const Wear& before, const Wear& after);

/// Indices into the wears.
struct BeforeAndAfter {
    std::size_t before = 0;
    std::size_t after = 0;
};

/// The wear that ends last, where several are worn at once the one that a coach chose; and the one
/// that ended last before it. Empty: no two lie one after the other.
std::optional<BeforeAndAfter> last_two_apart(std::span<const Wear> wears);

}  // namespace tracewright
