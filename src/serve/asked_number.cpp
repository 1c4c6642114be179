#include "serve/asked_number.hpp"

#include <charconv>

namespace tracewright {

std::optional<std::int64_t> asked_number(const std::string& text) {
    std::int64_t number = 0;
    const char* end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, number);
    return read.ec == std::errc{} && read.ptr == end && number > 0 ? std::optional(number)
                                                                   : std::nullopt;
}

Reply no_such_number() {
    return problem(404, "not_found", "There is no such thing", "found no number of one of them");
}

}  // namespace tracewright
