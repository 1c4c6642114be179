#include "intake/cell_content.hpp"

#include "intake/clock_text.hpp"
#include "intake/loose_clock.hpp"
#include "intake/number_text.hpp"
#include "intake/plain_text.hpp"
#include "intake/serial_time.hpp"

#include <algorithm>
#include <charconv>

namespace tracewright {

namespace {

std::optional<double> as_double(const std::string& text) {
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc{} && end == text.data() + text.size() ? std::optional{value}
                                                                    : std::nullopt;
}

Content content_of_time(const WrittenTime& time) {
    return time.has_date && time.has_clock ? Content::time
           : time.has_date                 ? Content::date
                                           : Content::clock;
}

}  // namespace

bool time_like(Content content) {
    return content == Content::time || content == Content::date || content == Content::clock;
}

CellContent content_of(const std::string& cell, CellForm form, const SourceFacts& facts) {
    if (cell.empty() || is_separator(cell)) {
        return {};
    }
    const auto time = time_with_abbreviation(cell);
    CellContent result;
    result.unix_time = time && time->instant;
    const auto number = [&] {
        return written_number(cell, cell.find(',') != std::string::npos ? ',' : '.');
    };
    if (form == CellForm::date) {
        const auto serial = as_double(cell);
        const auto day = serial ? serial_time(*serial, facts.serial_1904) : std::nullopt;
        result.content = day ? content_of_time(*day) : Content::number;
        if (const auto n = day ? std::nullopt : number()) {
            result.number = n->value();
        }
        return result;
    }
    if (time && !time->instant) {
        result.content = content_of_time(*time);
    } else if (const auto n = number(); n && n->tail.size() <= 8) {
        result.content = Content::number;
        result.number = n->value();
    } else {
        result.content = written_glucose(cell, '.').level ? Content::limit_word : Content::text;
    }
    return result;
}

bool ColumnContent::mostly(Content content) const {
    const auto found = counts.find(content);
    return found != counts.end() && 2 * found->second > filled;
}

double ColumnContent::median() const {
    std::vector<double> sorted = numbers;
    std::sort(sorted.begin(), sorted.end());
    return sorted.empty() ? 0 : sorted[sorted.size() / 2];
}

ColumnContent column_content(const std::vector<SampleRow>& sample, std::size_t from,
                             std::size_t column, const SourceFacts& facts) {
    ColumnContent result;
    for (std::size_t i = from; i < sample.size(); ++i) {
        if (column >= sample[i].cells.size()) {
            continue;
        }
        const std::string& cell = sample[i].cells[column];
        const auto [content, unix_time, number] = content_of(cell, sample[i].forms[column], facts);
        if (content == Content::empty) {
            continue;
        }
        ++result.filled;
        ++result.counts[content];
        result.unix_times += unix_time ? 1U : 0U;
        result.loose_clocks += content == Content::text && loose_clock(cell) ? 1U : 0U;
        if (number) {
            result.numbers.push_back(*number);
        }
    }
    return result;
}

bool glucose_like(const ColumnContent& content) {
    const bool numbers = 2 * content.numbers.size() > content.filled && content.numbers.size() >= 3;
    const double median = content.median();
    return numbers && ((median >= 2 && median <= 25) || (median >= 40 && median <= 400));
}

}  // namespace tracewright
