#include "intake/table_shape.hpp"

#include "intake/cell_content.hpp"
#include "intake/cut_decimals.hpp"
#include "intake/glucose_beside_diary.hpp"
#include "intake/likeliest_glucose.hpp"
#include "intake/meal_and_sleep_columns.hpp"
#include "intake/plain_text.hpp"
#include "intake/serial_columns.hpp"
#include "intake/spelled_cells.hpp"
#include "intake/table_outline.hpp"

#include <algorithm>
#include <charconv>
#include <span>

namespace tracewright {

bool names_column(const std::string& wanted, const std::string& title, std::size_t index) {
    std::size_t number = 0;
    const auto [end, error] = std::from_chars(wanted.data(), wanted.data() + wanted.size(), number);
    const bool is_number = error == std::errc{} && end == wanted.data() + wanted.size();
    return (is_number && number == index + 1) || lower_case(plain(wanted)) == lower_case(title);
}

namespace {

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
        settle_own_times(shape_, contents_);
        try_unclear_titles();
        keep_unread_clock();
        leave_out_cut_values();
        settle_lone_clock(shape_);
        settle_times();
        settle_meals(shape_);
        settle_kinds();
        settle_glucose();
        settle_finger_pricks();
        settle_units();
        settle_movement();
        settle_persons();
        if (!options_.glucose_column) {
            shape_.cut_decimals = cut_decimals(sample_, data_, titles_, shape_, facts_);
        }
        mark_untitled();
        what_there_is();
        return shape_;
    }

  private:
    std::span<const SampleRow> data() const { return std::span(sample_).subspan(data_); }

    void find_data() {
        const TableOutline outline = outline_of(sample_, facts_, options_.header_line);
        header_ = outline.header;
        data_ = outline.data;
        units_ = outline.units;
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
        titles_ = titles.size();
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
            column.offset = meaning.offset;
            column.names = meaning.meal;
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
            if (column.role == Role::offset || offsets_stand_in(data(), c)) {
                const bool time = content.mostly(Content::time) || content.mostly(Content::date);
                column.role = content.filled == 0 ? Role::ignored
                              : time              ? *time_role(content)
                                                  : Role::offset;
            } else if (column.role == Role::time || column.role == Role::date ||
                       column.role == Role::clock) {
                const bool clock = rough_clock(content) ||
                                   (column.role != Role::date && are_clocks_by_title(data(), c));
                column.role = time_role(content).value_or(clock ? Role::clock : Role::ignored);
            } else if (column.role == Role::end_time) {
                column.role = time_role(content) ? Role::end_time : Role::ignored;
            } else if (column.role == Role::sleep_start || column.role == Role::sleep_end ||
                       column.role == Role::meal_time) {
                column.role = tells_times(c) ? column.role : Role::ignored;
            } else if (names_meal_alone(c)) {
                const auto role = time_role(content);
                const bool times =
                    role == Role::time || role == Role::clock || rough_clock(content);
                column.role = times                           ? Role::meal_time
                              : content.mostly(Content::text) ? Role::meal_text
                                                              : Role::ignored;
            } else if (column.role == Role::ignored && column.title.empty()) {
                column.role = time_role(content).value_or(
                    content.mostly(Content::text) ? Role::note : Role::ignored);
            } else if (column.role == Role::ignored && shape_.header_rows > 0 &&
                       time_role(content)) {
                column.role = *time_role(content);
            }
        }
    }

    // Times of day, with a date or without.
    bool tells_times(std::size_t c) const {
        const auto role = time_role(contents_[c]);
        return role == Role::time || role == Role::clock || rough_clock(contents_[c]) ||
               are_clocks_by_title(data(), c);
    }

    // "Breakfast" stands above what was eaten, or when.
    bool names_meal_alone(std::size_t c) const {
        const auto& meal = shape_.columns[c].names;
        return meal && meal->alone && !shape_.columns[c].unit;
    }

    // Where no title leads to a time, a title was taken for something it isn't ("Date of result"):
    // what stands in the columns decides.
    void try_unclear_titles() {
        if (shape_.first(Role::time) || shape_.first(Role::date)) {
            return;
        }
        for (std::size_t c = 0; c < shape_.columns.size(); ++c) {
            const auto role = time_role(contents_[c]);
            if (role && *role != Role::clock && are_more_than_digits(data(), c)) {
                shape_.columns[c].role = *role;
                shape_.columns[c].by_title = false;
            }
        }
    }

    // Fields past the last title are columns whose titles are missing. Numbers there, in a file
    // that commas cut, are rather the decimals of a value before: rows that have them are refused.
    void leave_out_cut_values() {
        if (titles_ == 0 || facts_.encoding.empty() || facts_.dialect.delimiter != ',') {
            return;
        }
        for (std::size_t c = titles_; c < shape_.columns.size(); ++c) {
            const bool named = shape_.columns[c].by_title;
            if (!named && shape_.columns[c].role == Role::ignored && contents_[c].filled > 0) {
                shape_.fields = c;
                shape_.columns.resize(c);
                contents_.resize(c);
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

    // Beside dates a column that its title calls the time of day is that, read or not: what is
    // wrong with a row stands there.
    void keep_unread_clock() {
        if (shape_.first(Role::time) || shape_.first(Role::clock) || !shape_.first(Role::date)) {
            return;
        }
        for (std::size_t c = 0; c < shape_.columns.size(); ++c) {
            ColumnGuess& column = shape_.columns[c];
            const std::string title = lower_case(column.title);
            const bool titled =
                title_meaning(title).role == Role::clock || title == "time" || title == "zeit";
            if (titled && column.role == Role::ignored && contents_[c].filled > 0) {
                column.role = Role::clock;
                column.unread_clock = true;
                return;
            }
        }
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
        for (const Role role : {Role::time, Role::clock, Role::date}) {
            const auto column = shape_.first(role);
            if (column && shape_.columns[*column].offset && !shape_.offset_by_title) {
                shape_.offset_by_title = column;
            }
        }
    }

    // The client's own clock before the same times in UTC.
    int rank(std::size_t column) const {
        const bool local = std::ranges::any_of(shape_.columns, [](const ColumnGuess& other) {
            const std::string title = lower_case(other.title);
            return other.role == Role::time && (title.find("local") != std::string::npos ||
                                                title.find("lokal") != std::string::npos);
        });
        const ColumnGuess& of = shape_.columns[column];
        return (of.by_title ? 0 : 1) + (local && of.offset ? 2 : 0);
    }

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
        if (diary_by_title) {
            take_glucose(glucose_beside_diary(shape_, contents_, data()));
        } else {
            glucose_by_content();
        }
    }

    // The column that says most for itself; those that say as much are kept to be asked about.
    void glucose_by_content() { take_glucose(likeliest_glucose(shape_.columns, contents_)); }

    void take_glucose(const std::vector<std::size_t>& likeliest) {
        if (!likeliest.empty()) {
            shape_.columns[likeliest.front()].role = Role::glucose;
        }
        if (likeliest.size() > 1) {
            shape_.may_be_glucose = likeliest;
        }
    }

    // A column that says of each row how its glucose was measured, whatever its title.
    void settle_kinds() {
        for (std::size_t c = 0; !shape_.first(Role::kind) && c < shape_.columns.size(); ++c) {
            ColumnGuess& column = shape_.columns[c];
            const bool free = column.role == Role::ignored || column.role == Role::device;
            std::size_t filled = 0;
            const bool all = std::all_of(sample_.begin() + static_cast<std::ptrdiff_t>(data_),
                                         sample_.end(), [&](const SampleRow& row) {
                                             const std::string_view cell =
                                                 c < row.cells.size() ? trimmed(row.cells[c]) : "";
                                             filled += cell.empty() ? 0U : 1U;
                                             return cell.empty() || says_how_measured(cell);
                                         });
            if (free && all && filled > 0) {
                column.role = Role::kind;
            }
        }
    }

    // Beside a column that says it is the sensor's, blood glucose is a meter's.
    void settle_finger_pricks() {
        const auto sensed = shape_.all(Role::glucose);
        const bool sensor = std::any_of(sensed.begin(), sensed.end(), [&](std::size_t c) {
            return names_sensed_glucose(shape_.columns[c].title);
        });
        for (std::size_t c = 0; (sensor || options_.by_meter) && c < shape_.columns.size(); ++c) {
            ColumnGuess& column = shape_.columns[c];
            if (options_.by_meter && column.role == Role::glucose) {
                column.role = Role::finger_prick;
            }
            const bool glucose = column.role == Role::glucose ||
                                 (column.role == Role::ignored && glucose_like(contents_[c]));
            const bool asked_for =
                options_.glucose_column && names_column(*options_.glucose_column, column.title, c);
            if (glucose && !asked_for && names_blood_glucose(column.title)) {
                column.role = Role::finger_prick;
            }
        }
    }

    // The one column that was named, or each in the unit of its own title.
    void settle_units() {
        std::optional<GlucoseUnit> first;
        for (const std::size_t c : shape_.all(Role::glucose)) {
            ColumnGuess& column = shape_.columns[c];
            if (options_.glucose_column &&
                !names_column(*options_.glucose_column, column.title, c)) {
                column.role = Role::ignored;
            } else if (column.unit) {
                first = first ? first : column.unit;
                shape_.unit_by_column = shape_.unit_by_column || column.unit != first;
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
        // Beside steps or minutes "walking" tells one movement from another.
        const bool known = std::any_of(
            sample_.begin() + static_cast<std::ptrdiff_t>(data_), sample_.end(),
            [&](const SampleRow& row) {
                const auto meaning =
                    *kind < row.cells.size() ? kind_meaning(row.cells[*kind]) : std::nullopt;
                return meaning && !(moves && meaning->diary == DiaryKind::movement);
            });
        if (!known) {
            // A number that stands for a kind says nothing to anyone who has no list of them.
            shape_.columns[*kind].role = contents_[*kind].mostly(Content::number) ? Role::ignored
                                         : moves ? Role::movement_text
                                                 : Role::note;
        }
    }

    // What bears a "name" beside no glucose, or on some rows only, is a dish or a walk as well.
    void settle_persons() {
        const bool long_form = shape_.first(Role::kind) && shape_.first(Role::value);
        const bool glucose =
            shape_.first(Role::glucose) || shape_.first(Role::finger_prick) || long_form;
        for (const std::size_t c : shape_.all(Role::person)) {
            const std::string title = lower_case(shape_.columns[c].title);
            const bool throughout = 2 * contents_[c].filled > sample_.size() - data_;
            if (may_number_rows(title) && title != "id" && !(glucose && throughout)) {
                shape_.columns[c].role = Role::ignored;
            }
        }
    }

    void mark_untitled() {
        for (std::size_t c = titles_; titles_ > 0 && c < shape_.columns.size(); ++c) {
            shape_.columns[c].numbers_untitled =
                shape_.columns[c].role == Role::ignored && !contents_[c].numbers.empty();
        }
    }

    void what_there_is() {
        for (const ColumnGuess& column : shape_.columns) {
            shape_.has_glucose = shape_.has_glucose || column.role == Role::glucose;
            shape_.has_diary = shape_.has_diary || column.role == Role::finger_prick ||
                               column.role == Role::ketones || column.role == Role::kind ||
                               (column.role >= Role::end_time && column.role <= Role::meal_time) ||
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
    std::size_t titles_ = 0;  // how many there are
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

TableShape table_shape(const std::vector<SampleRow>& sample, const SourceFacts& facts,
                       const ShapeOptions& options) {
    TableShape shape = Shaper(sample, facts, options).shape();
    if (shape.has_time) {
        return shape;
    }
    // Numbers that count days are times only where nothing else is.
    if (const auto serials = serial_columns(sample)) {
        TableShape counted = Shaper(serials->sample, facts, options).shape();
        if (counted.has_time) {
            counted.serial_times = serials->first;
            return counted;
        }
    }
    return shape;
}

}  // namespace tracewright
