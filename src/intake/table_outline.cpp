#include "intake/table_outline.hpp"

#include "intake/cell_content.hpp"
#include "intake/column_title.hpp"
#include "intake/number_text.hpp"
#include "intake/plain_text.hpp"

#include <algorithm>
#include <map>

namespace tracewright {

namespace {

struct RowContent {
    std::uint64_t time_columns = 0;  // a bit for each of the first 64
    std::size_t filled = 0;
    std::size_t times = 0;
    std::size_t texts = 0;
    std::size_t unix_times = 0;
};

RowContent row_content(const SampleRow& row, const SourceFacts& facts) {
    RowContent result;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        const auto [content, unix_time, number] = content_of(row.cells[i], row.forms[i], facts);
        result.filled += content != Content::empty ? 1U : 0U;
        result.times += time_like(content) ? 1U : 0U;
        result.texts += content == Content::text ? 1U : 0U;
        result.unix_times += unix_time ? 1U : 0U;
        if (i < 64 && (time_like(content) || unix_time)) {
            result.time_columns |= std::uint64_t{1} << i;
        }
    }
    return result;
}

// The first of two neighbouring rows that both begin like data: a time and at least one cell more.
std::size_t first_data_row(const std::vector<SampleRow>& sample, const SourceFacts& facts) {
    std::optional<std::size_t> before;
    std::uint64_t time_columns_before = 0;
    for (std::size_t i = 0; i < sample.size(); ++i) {
        const RowContent content = row_content(sample[i], facts);
        if (content.time_columns == 0 || content.filled < 2) {
            continue;
        }
        // A single time in the title block ("created 2 March 2026") is no data.
        if (before && i - *before <= 3 && (content.time_columns & time_columns_before) != 0) {
            return *before;
        }
        before = i;
        time_columns_before = content.time_columns;
    }
    return before.value_or(sample.size());
}

// A row of nothing but times of the kinds that stand in these columns of data: a sensor that had no
// level to tell yet.
bool only_times_of(const SampleRow& row, const SampleRow& data, const SourceFacts& facts) {
    const RowContent content = row_content(row, facts);
    if (content.filled == 0 || content.texts > 0) {
        return false;
    }
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        const CellContent cell = content_of(row.cells[i], row.forms[i], facts);
        if (cell.content == Content::empty) {
            continue;
        }
        if (!(time_like(cell.content) || cell.unix_time) || i >= data.cells.size()) {
            return false;
        }
        const CellContent below = content_of(data.cells[i], data.forms[i], facts);
        // A sheet's midnight looks like a date.
        const bool of_sheet = row.forms[i] == CellForm::date && data.forms[i] == CellForm::date &&
                              time_like(below.content);
        if (below.content != cell.content && !of_sheet) {
            return false;
        }
    }
    return true;
}

// The first data row, or those right above it that only tell a time.
std::size_t first_timed_row(const std::vector<SampleRow>& sample, const SourceFacts& facts) {
    const std::size_t data = first_data_row(sample, facts);
    std::size_t first = data;
    for (std::size_t i = data; data < sample.size() && i-- > 0;) {
        if (only_times_of(sample[i], sample[data], facts)) {
            first = i;
        } else if (row_content(sample[i], facts).filled > 0) {
            break;
        }
    }
    return first;
}

// Looks like titles: texts, no times and hardly a number.
bool header_like(const SampleRow& row, const SourceFacts& facts) {
    const RowContent content = row_content(row, facts);
    return content.filled >= 1 && content.times == 0 && content.texts >= 1 &&
           2 * content.texts >= content.filled;
}

// A second header row holds nothing but units.
bool units_row(const SampleRow& row) {
    bool any = false;
    for (const std::string& cell : row.cells) {
        if (cell.empty()) {
            continue;
        }
        const std::string word = lower_case(cell);
        const bool unit = unit_named(cell) || word == "g" || word == "kcal" || word == "h" ||
                          word == "min" || word == "s" || word == "(g)" || word == "[g]" ||
                          word == "%" || word == "iu";
        const bool format = word.find("yyyy") != std::string::npos ||
                            word.find("jjjj") != std::string::npos ||
                            word.find("hh:mm") != std::string::npos || word == "-";
        if (!unit && !format) {
            return false;
        }
        any = any || unit;
    }
    return any;
}

// Words that say of each column how it is written ("text", "local"), the unit of glucose among
// them, right below the titles: a row of units that names more than units.
bool units_below(const SampleRow& titles, const SampleRow& row, const SourceFacts& facts) {
    if (!header_like(titles, facts) || !header_like(row, facts)) {
        return false;
    }
    const std::size_t both = std::min(titles.cells.size(), row.cells.size());
    for (std::size_t c = 0; c < both; ++c) {
        const Role role = title_meaning(titles.cells[c]).role;
        if (is_unit_alone(row.cells[c]) && (role == Role::glucose || role == Role::finger_prick)) {
            return true;
        }
    }
    return false;
}

}  // namespace

TableOutline outline_of(const std::vector<SampleRow>& sample, const SourceFacts& facts,
                        std::optional<std::uint32_t> header_line) {
    TableOutline outline;
    if (header_line) {
        outline.header = static_cast<std::size_t>(
            std::find_if(sample.begin(), sample.end(),
                         [&](const SampleRow& row) { return row.line >= *header_line; }) -
            sample.begin());
        outline.data = outline.header + 1;
    } else {
        outline.data = first_timed_row(sample, facts);
        outline.header = outline.data;
        for (std::size_t i = outline.data; i-- > 0;) {
            if (row_content(sample[i], facts).filled == 0) {
                continue;
            }
            const bool units =
                i > 0 && (units_row(sample[i]) || units_below(sample[i - 1], sample[i], facts));
            if (units) {
                outline.units = i;
                continue;
            }
            outline.header = header_like(sample[i], facts) ? i : outline.data;
            break;
        }
    }
    return outline;
}

std::optional<std::uint32_t> titles_without_data(const std::vector<SampleRow>& sample,
                                                 const SourceFacts& facts) {
    for (auto row = sample.rbegin(); row != sample.rend(); ++row) {
        if (row_content(*row, facts).filled == 0 || units_row(*row)) {
            continue;
        }
        const bool of_time =
            std::any_of(row->cells.begin(), row->cells.end(), [](const std::string& cell) {
                const Role role = title_meaning(cell).role;
                return role == Role::time || role == Role::date || role == Role::clock ||
                       role == Role::sleep_start || role == Role::meal_time;
            });
        const bool titles =
            header_like(*row, facts) && of_time && row_content(*row, facts).filled >= 2;
        return titles ? std::optional{row->line} : std::nullopt;
    }
    return std::nullopt;
}

std::size_t usual_width(const std::vector<SampleRow>& sample, std::size_t from) {
    std::map<std::size_t, std::size_t> times;
    std::size_t width = 0;
    for (std::size_t i = from; i < sample.size(); ++i) {
        const std::size_t n = ++times[sample[i].cells.size()];
        if (n > times[width] || (n == times[width] && sample[i].cells.size() > width)) {
            width = sample[i].cells.size();
        }
    }
    return width;
}

}  // namespace tracewright
