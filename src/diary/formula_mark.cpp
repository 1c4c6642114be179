#include "diary/formula_mark.hpp"

namespace tracewright {

bool begins_a_formula(std::string_view text) {
    constexpr std::string_view signs = "=+-@\t\r";
    const std::size_t first = text.find_first_not_of('\'');
    return first != std::string_view::npos && signs.find(text[first]) != std::string_view::npos;
}

std::string_view without_formula_mark(std::string_view text) {
    return text.starts_with('\'') && begins_a_formula(text) ? text.substr(1) : text;
}

}  // namespace tracewright
