#include "intake/file_evidence.hpp"

#include "intake/offset_text.hpp"
#include "intake/plain_text.hpp"
#include "intake/titled_clock.hpp"

#include <algorithm>
#include <optional>
#include <vector>

namespace tracewright {

namespace {

bool is_number_role(Role role) {
    return role == Role::glucose || role == Role::finger_prick || role == Role::value ||
           (role >= Role::carbohydrate && role <= Role::energy);
}

// The text of a column's cell; empty if the shape has no such column or the row is too short.
std::string text_at(const Row& row, std::optional<std::size_t> column) {
    return column && *column < row.cells.size() ? plain(row.cells[*column].text) : "";
}

// Gathers what a file's rows say, row by row.
class Gatherer {
  public:
    explicit Gatherer(const TableShape& shape)
        : shape_(shape),
          time_(shape.first(Role::time)),
          date_(time_ ? time_ : shape.first(Role::date)),
          clock_(shape.first(Role::clock)),
          glucose_(shape.all(Role::glucose)),
          finger_pricks_(shape.all(Role::finger_prick)),
          persons_(shape.all(Role::person)),
          devices_(shape.all(Role::device)),
          offsets_(shape.all(Role::offset)),
          unit_(shape.first(Role::unit)),
          kind_(shape.first(Role::kind)),
          value_(shape.first(Role::value)) {}

    void see(const Row& row) {
        const bool header = shape_.header_line && row.line <= *shape_.header_line;
        if (row.line < shape_.first_data_line || header || row.fault != RowFault::none ||
            row.cells.empty()) {
            return;
        }
        ++evidence_.data_rows;
        see_numbers(row);
        see_time(row);
        see_persons(row);
        for (const std::size_t c : devices_) {
            if (const std::string text = text_at(row, c); !text.empty()) {
                evidence_.devices[c].see(text);
            }
        }
        if (unit_named(text_at(row, unit_))) {
            evidence_.unit_column_explains = true;
        }
        see_levels(row);
    }

    FileEvidence evidence() && { return std::move(evidence_); }

  private:
    void see_numbers(const Row& row) {
        for (std::size_t c = 0; c < row.cells.size() && c < shape_.columns.size(); ++c) {
            if (!is_number_role(shape_.columns[c].role) || row.cells[c].form == CellForm::number) {
                continue;
            }
            const std::string text = plain(row.cells[c].text);
            evidence_.mark.see(text);
            if (evidence_.mark_sample.empty() && mark_evidence(text) != MarkEvidence::none) {
                evidence_.mark_sample = text;
            }
        }
    }

    void see_time(const Row& row) {
        const std::string text = text_at(row, date_);
        auto time = time_with_abbreviation(text);
        if (!time) {
            return;
        }
        const auto clock = time_ ? std::nullopt : clock_of(row);
        if (clock && clock->has_clock) {
            time->clock = clock->clock;
            time->has_clock = true;
            time->twelve_hour = clock->twelve_hour;
        }
        ++(time->has_clock || time->instant ? evidence_.with_clock : evidence_.date_alone);
        evidence_.order.see(*time);
        evidence_.twelve_hour.see(*time);
        if (evidence_.date_sample.empty()) {
            evidence_.date_sample = text;
        }
        const bool open = time->has_date && !time->year_first && !time->instant;
        if (open && evidence_.open_date.empty()) {
            evidence_.open_date = text;
            evidence_.open_date_line = row.line;
        }
        see_offsets(row);
    }

    void see_offsets(const Row& row) {
        for (const std::size_t c : offsets_) {
            const std::string text = text_at(row, c);
            OffsetEvidence& seen = evidence_.offsets[c];
            if (offset_in_cell(text)) {
                ++seen.read;
            } else if (seen.unread.size() < OffsetEvidence::most_unread ||
                       seen.unread.contains(text)) {
                auto& unread = seen.unread[text];
                if (unread.rows++ == 0) {
                    unread.first_line = row.line;
                    unread.first_column = c < row.cells.size() ? row.cells[c].column : 0;
                }
            }
        }
    }

    std::optional<WrittenTime> clock_of(const Row& row) const {
        const std::string text = text_at(row, clock_);
        const auto clock = written_time(text);
        return clock || !clock_ || !shape_.columns[*clock_].by_title ? clock : titled_clock(text);
    }

    void see_persons(const Row& row) {
        std::vector<std::string> who;
        for (const std::size_t c : persons_) {
            const std::string text = text_at(row, c);
            if (!text.empty()) {
                evidence_.persons[c].see(text);
            }
            if (!may_number_rows(shape_.columns[c].title)) {
                who.push_back(text);
            }
        }
        if (!who.empty() && evidence_.people.size() < most_people) {
            evidence_.people.insert(std::move(who));
        }
    }

    void see_levels(const Row& row) {
        const auto meaning = kind_meaning(text_at(row, kind_));
        const bool of_meter = meaning && meaning->diary == DiaryKind::finger_prick;
        auto told = unit_named(text_at(row, unit_));
        if (!told && meaning) {
            told = meaning->unit;
        }
        for (const std::size_t c : glucose_) {
            see_level(text_at(row, c), of_meter ? evidence_.meter : evidence_.unit);
            see_told(text_at(row, c), told);
            if (shape_.unit_by_column && !of_meter) {
                see_level(text_at(row, c), evidence_.unit_of[c]);
            }
        }
        for (const std::size_t c : finger_pricks_) {
            see_level(text_at(row, c), evidence_.meter);
        }
        if (of_meter && value_ && !meaning->unit) {
            see_level(text_at(row, value_), evidence_.meter);
        }
        evidence_.kinds_name_a_sensor =
            evidence_.kinds_name_a_sensor || (meaning && meaning->sensed);
        if (meaning && meaning->glucose && value_) {
            see_level(text_at(row, value_), evidence_.unit);
            see_told(text_at(row, value_), told);
            evidence_.unit_column_explains =
                evidence_.unit_column_explains || meaning->unit.has_value();
        }
    }

    static GlucoseCell level_in(const std::string& text) {
        const bool comma =
            text.find(',') != std::string::npos && text.find('.') == std::string::npos;
        return written_glucose(text, comma ? ',' : '.');
    }

    // A level by the unit that its cell names, else its row.
    void see_told(const std::string& text, std::optional<GlucoseUnit> by_row) {
        const GlucoseCell cell = level_in(text);
        if (!cell.level || cell.level->limit != Limit::none) {
            return;
        }
        if (const auto told = cell.level->unit ? cell.level->unit : by_row) {
            evidence_.told_in[*told].see(cell.level->hundredths);
        }
    }

    static void see_level(const std::string& text, UnitEvidence& seen) {
        const GlucoseCell cell = level_in(text);
        if (cell.level && cell.level->limit == Limit::none && !cell.level->unit) {
            seen.see(cell.level->hundredths);
        }
    }

    const TableShape& shape_;
    std::optional<std::size_t> time_, date_, clock_;
    std::vector<std::size_t> glucose_, finger_pricks_;
    std::vector<std::size_t> persons_, devices_, offsets_;
    std::optional<std::size_t> unit_, kind_, value_;
    FileEvidence evidence_;
};

}  // namespace

FileEvidence evidence_of(RowSource& source, const TableShape& shape) {
    Gatherer gatherer(shape);
    source.rewind();
    for (Row row; source.next(row);) {
        gatherer.see(row);
    }
    source.rewind();
    return std::move(gatherer).evidence();
}

FileEvidence evidence_of(const PlainRows& rows) {
    FileEvidence evidence;
    evidence.unit = rows.unit;
    evidence.data_rows = rows.rows.size();
    evidence.date_sample = rows.first_time;
    if (!rows.point_sample.empty()) {
        evidence.mark.see(rows.point_sample);
        evidence.mark_sample = rows.point_sample;
    }
    if (const auto time = written_time(rows.first_time)) {
        evidence.order.see(*time);
    }
    return evidence;
}

}  // namespace tracewright
