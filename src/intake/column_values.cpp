#include "intake/column_values.hpp"

#include <charconv>

namespace tracewright {

namespace {

constexpr std::uint64_t rows_to_tell_by = 6;
// Persons taken turn about count on as well, but there are few of them.
constexpr std::size_t many_values = 12;

std::optional<std::int64_t> whole_number(const std::string& text) {
    std::int64_t value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc{} && end == text.data() + text.size() ? std::optional{value}
                                                                    : std::nullopt;
}

}  // namespace

void ColumnValues::see(const std::string& text) {
    ++filled_;
    if (values_.size() < most) {
        values_.insert(text);
    }
    const auto number = whole_number(text);
    const bool on = number && previous_ && (*number - *previous_ == 1 || *previous_ - *number == 1);
    counted_on_ += on ? 1U : 0U;
    previous_ = number;
}

bool ColumnValues::number_the_rows() const {
    if (filled_ < rows_to_tell_by) {
        return false;
    }
    const bool each_its_own = values_.size() == most || 2 * values_.size() > filled_;
    return each_its_own || (values_.size() > many_values && 4 * counted_on_ >= 3 * (filled_ - 1));
}

}  // namespace tracewright
