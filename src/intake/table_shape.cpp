#include "intake/table_shape.hpp"

#include "intake/clock_text.hpp"
#include "intake/loose_clock.hpp"
#include "intake/number_text.hpp"
#include "intake/plain_text.hpp"
#include "intake/serial_time.hpp"

#include <algorithm>
#include <charconv>
#include <map>

namespace tracewright {

namespace {

enum class Content { empty, time, date, clock, number, limit_word, text };

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

// What one cell holds, read once.
struct CellContent {
    Content content = Content::empty;
    bool unix_time = false;  // a number until a title says time
    std::optional<double> number;
};

CellContent content_of(const std::string& cell, CellForm form, const SourceFacts& facts) {
    if (cell.empty() || is_separator(cell)) {
        return {};
    }
    const auto time = written_time(cell);
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

bool time_like(Content content) {
    return content == Content::time || content == Content::date || content == Content::clock;
}

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

struct ColumnContent {
    std::map<Content, std::size_t> counts;
    std::size_t filled = 0;
    std::size_t unix_times = 0;
    std::size_t loose_clocks = 0;  // "evening", "ca. 20:00"
    std::vector<double> numbers;

    bool mostly(Content content) const {
        const auto found = counts.find(content);
        return found != counts.end() && 2 * found->second > filled;
    }
    double median() const {
        std::vector<double> sorted = numbers;
        std::sort(sorted.begin(), sorted.end());
        return sorted.empty() ? 0 : sorted[sorted.size() / 2];
    }
};

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

bool names_column(const std::string& wanted, const std::string& title, std::size_t index) {
    std::size_t number = 0;
    const auto [end, error] = std::from_chars(wanted.data(), wanted.data() + wanted.size(), number);
    const bool is_number = error == std::errc{} && end == wanted.data() + wanted.size();
    return (is_number && number == index + 1) || lower_case(plain(wanted)) == lower_case(title);
}

class Shaper {
  public:
    Shaper(const std::vector<SampleRow>& sample, const SourceFacts& facts,
           const ShapeOptions& options)
        : sample_(sample), facts_(facts), options_(options) {}

    TableShape shape() {
        find_data();
        if (data_ >= sample_.size()) {
            return shape_;
        }
        shape_.first_data_line = sample_[data_].line;
        shape_.fields = usual_width(sample_, data_);
        read_titles();
        roles_by_content();
        settle_times();
        settle_glucose();
        settle_movement();
        what_there_is();
        return shape_;
    }

  private:
    void find_data() {
        if (options_.header_line) {
            header_ =
                static_cast<std::size_t>(std::find_if(sample_.begin(), sample_.end(),
                                                      [&](const SampleRow& row) {
                                                          return row.line >= *options_.header_line;
                                                      }) -
                                         sample_.begin());
            data_ = header_ + 1;
        } else {
            data_ = first_data_row(sample_, facts_);
            header_ = data_;
            for (std::size_t i = data_; i-- > 0;) {
                if (sample_[i].cells.empty()) {
                    continue;
                }
                const bool units = units_row(sample_[i]);
                if (units && i > 0) {
                    units_ = i;
                    continue;
                }
                header_ = header_like(sample_[i], facts_) ? i : data_;
                break;
            }
        }
        const std::size_t end = std::min(header_, data_);
        for (std::size_t i = 0; i < end && i < sample_.size(); ++i) {
            shape_.preamble_rows += sample_[i].cells.empty() || i == units_ ? 0U : 1U;
        }
        if (header_ < data_ && header_ < sample_.size()) {
            shape_.header_rows = units_ < sample_.size() ? 2 : 1;
            shape_.header_line = sample_[units_ < sample_.size() ? units_ : header_].line;
        }
    }

    void read_titles() {
        shape_.columns.resize(shape_.fields);
        if (header_ >= data_ || header_ >= sample_.size()) {
            return;
        }
        const auto& titles = sample_[header_].cells;
        // As many columns as titles, unless most rows have more: then titles are missing.
        std::size_t wider = 0;
        for (std::size_t i = data_; i < sample_.size(); ++i) {
            const auto& cells = sample_[i].cells;
            wider += std::any_of(cells.begin() + static_cast<std::ptrdiff_t>(
                                                     std::min(cells.size(), titles.size())),
                                 cells.end(), [](const std::string& cell) { return !cell.empty(); })
                         ? 1U
                         : 0U;
        }
        const bool titles_missing = 2 * wider > sample_.size() - data_;
        shape_.fields = titles_missing ? std::max(shape_.fields, titles.size()) : titles.size();
        shape_.columns.resize(shape_.fields);
        for (std::size_t c = 0; c < titles.size() && c < shape_.columns.size(); ++c) {
            ColumnGuess& column = shape_.columns[c];
            std::string whole = titles[c];
            column.title = whole;
            if (units_ < sample_.size() && c < sample_[units_].cells.size()) {
                whole += " (" + sample_[units_].cells[c] + ")";
            }
            const TitleMeaning meaning = title_meaning(whole);
            column.role = meaning.role;
            column.unit = meaning.unit;
            column.minutes_per_unit = meaning.minutes_per_unit;
            column.exchanges = meaning.exchanges;
            column.by_title = meaning.role != Role::ignored;
        }
    }

    void roles_by_content() {
        for (std::size_t c = 0; c < shape_.columns.size(); ++c) {
            contents_.push_back(column_content(sample_, data_, c, facts_));
            ColumnGuess& column = shape_.columns[c];
            const ColumnContent& content = contents_.back();
            if (options_.time_column && names_column(*options_.time_column, column.title, c)) {
                column.role = Role::time;
                column.by_title = true;
                continue;
            }
            if (options_.glucose_column &&
                names_column(*options_.glucose_column, column.title, c)) {
                column.role = Role::glucose;
                column.by_title = true;
                continue;
            }
            if (column.role == Role::time || column.role == Role::date ||
                column.role == Role::clock) {
                column.role =
                    time_role(content).value_or(rough_clock(content) ? Role::clock : Role::ignored);
            } else if (column.role == Role::end_time) {
                column.role = time_role(content) ? Role::end_time : Role::ignored;
            } else if (column.role == Role::ignored && column.title.empty()) {
                column.role = time_role(content).value_or(
                    content.mostly(Content::text) ? Role::note : Role::ignored);
            } else if (column.role == Role::ignored && shape_.header_rows > 0 &&
                       time_role(content)) {
                column.role = *time_role(content);
            }
        }
    }

    static std::optional<Role> time_role(const ColumnContent& content) {
        if (content.filled == 0) {
            return std::nullopt;
        }
        if (content.mostly(Content::time) || 2 * content.unix_times > content.filled) {
            return Role::time;
        }
        if (content.mostly(Content::date)) {
            return Role::date;
        }
        return content.mostly(Content::clock) ? std::optional{Role::clock} : std::nullopt;
    }

    // Titled as time, and times of day are told in words as well.
    static bool rough_clock(const ColumnContent& content) {
        const auto clocks = content.counts.find(Content::clock);
        const std::size_t sharp = clocks == content.counts.end() ? 0 : clocks->second;
        return 2 * (sharp + content.loose_clocks) > content.filled;
    }

    // One time column counts: a named one first; else date and clock together.
    void settle_times() {
        std::vector<std::size_t> times = shape_.all(Role::time);
        std::stable_sort(times.begin(), times.end(),
                         [&](std::size_t a, std::size_t b) { return rank(a) < rank(b); });
        if (options_.time_column) {
            const auto named = std::find_if(times.begin(), times.end(), [&](std::size_t c) {
                return names_column(*options_.time_column, shape_.columns[c].title, c);
            });
            if (named != times.end()) {
                std::rotate(times.begin(), named, named + 1);
            }
        }
        for (std::size_t i = 1; i < times.size(); ++i) {
            shape_.columns[times[i]].role = Role::ignored;
        }
        if (!times.empty()) {
            for (const Role role : {Role::date, Role::clock}) {
                for (const std::size_t c : shape_.all(role)) {
                    shape_.columns[c].role = Role::ignored;
                }
            }
        }
        shape_.has_time = !times.empty() || shape_.first(Role::date).has_value();
    }

    int rank(std::size_t column) const { return shape_.columns[column].by_title ? 0 : 1; }

    void settle_glucose() {
        // A value column beside a kind column is what the kind says.
        const bool long_form = shape_.first(Role::kind) && shape_.first(Role::value);
        for (const std::size_t c : shape_.all(Role::glucose)) {
            const ColumnContent& content = contents_[c];
            const std::size_t limits = content.counts.contains(Content::limit_word)
                                           ? content.counts.at(Content::limit_word)
                                           : 0;
            if (content.filled > 0 && content.numbers.size() + limits == 0) {
                shape_.columns[c].role = Role::ignored;
            }
        }
        if (shape_.first(Role::glucose) || long_form || shape_.first(Role::finger_prick)) {
            return;
        }
        const bool diary_by_title = std::any_of(
            shape_.columns.begin(), shape_.columns.end(), [](const ColumnGuess& column) {
                return column.by_title && column.role >= Role::meal_text &&
                       column.role <= Role::note;
            });
        for (std::size_t c = 0; c < shape_.columns.size() && !diary_by_title; ++c) {
            ColumnGuess& column = shape_.columns[c];
            const bool free = column.role == Role::ignored || column.role == Role::value;
            if (free && glucose_like(contents_[c])) {
                column.role = Role::glucose;
                return;
            }
        }
    }

    // A "type" whose words are no kinds of entry describes the movement beside it.
    void settle_movement() {
        const auto kind = shape_.first(Role::kind);
        const bool value = shape_.first(Role::value).has_value();
        const bool moves = shape_.first(Role::steps) || shape_.first(Role::minutes);
        const bool eats = shape_.first(Role::meal_text) || shape_.first(Role::carbohydrate);
        if (moves && !eats) {  // what was burned is not what was eaten
            for (const std::size_t c : shape_.all(Role::energy)) {
                shape_.columns[c].role = Role::ignored;
            }
        }
        if (!kind || value) {
            return;
        }
        const bool known =
            std::any_of(sample_.begin() + static_cast<std::ptrdiff_t>(data_), sample_.end(),
                        [&](const SampleRow& row) {
                            return *kind < row.cells.size() && kind_meaning(row.cells[*kind]);
                        });
        if (!known) {
            shape_.columns[*kind].role = moves ? Role::movement_text : Role::note;
        }
    }

    void what_there_is() {
        for (const ColumnGuess& column : shape_.columns) {
            shape_.has_glucose = shape_.has_glucose || column.role == Role::glucose;
            shape_.has_diary = shape_.has_diary || column.role == Role::finger_prick ||
                               column.role == Role::ketones || column.role == Role::kind ||
                               column.role == Role::end_time ||
                               (column.role >= Role::meal_text && column.role <= Role::note);
        }
    }

    const std::vector<SampleRow>& sample_;
    const SourceFacts& facts_;
    const ShapeOptions& options_;
    TableShape shape_;
    std::vector<ColumnContent> contents_;
    std::size_t data_ = 0;
    std::size_t header_ = 0;
    std::size_t units_ = static_cast<std::size_t>(-1);
};

}  // namespace

std::optional<std::size_t> TableShape::first(Role role) const {
    const auto found = std::find_if(columns.begin(), columns.end(),
                                    [&](const ColumnGuess& column) { return column.role == role; });
    return found == columns.end()
               ? std::nullopt
               : std::optional{static_cast<std::size_t>(found - columns.begin())};
}

std::vector<std::size_t> TableShape::all(Role role) const {
    std::vector<std::size_t> found;
    for (std::size_t c = 0; c < columns.size(); ++c) {
        if (columns[c].role == role) {
            found.push_back(c);
        }
    }
    return found;
}

std::vector<SampleRow> sample_of(RowSource& source, std::size_t most) {
    source.rewind();
    std::vector<SampleRow> sample;
    Row row;
    while (sample.size() < most && source.next(row)) {
        SampleRow& copy = sample.emplace_back();
        copy.line = row.line;
        copy.fault = row.fault;
        copy.cells.reserve(row.cells.size());
        copy.forms.reserve(row.cells.size());
        for (const Cell& cell : row.cells) {
            copy.cells.push_back(plain(cell.text));
            copy.forms.push_back(cell.form);
        }
    }
    source.rewind();
    return sample;
}

TableShape table_shape(const std::vector<SampleRow>& sample, const SourceFacts& facts,
                       const ShapeOptions& options) {
    return Shaper(sample, facts, options).shape();
}

}  // namespace tracewright
