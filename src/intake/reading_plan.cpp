#include "intake/reading_plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

namespace tracewright {

namespace {

class Planner {
  public:
    Planner(const IntakeOptions& options, Intake& intake) : options_(options), intake_(intake) {}

    ReadingPlan plan(TableShape shape, const FileEvidence& evidence) {
        plan_.shape = std::move(shape);
        plan_.serial_1904 = intake_.facts.serial_1904;
        plan_.person = options_.person;
        plan_.date_is_midnight = 10 * evidence.date_alone <= evidence.with_clock;
        decimal_mark(evidence);
        cut_decimals();
        date_order(evidence);
        which_glucose();
        unit(evidence);
        twelve_hour(evidence);
        persons(evidence);
        sensors(evidence);
        offsets(evidence);
        return plan_;
    }

  private:
    void guess(std::string what, std::string found, std::string sure, std::string why) {
        intake_.guesses.push_back(
            {std::move(what), std::move(found), std::move(sure), std::move(why)});
    }
    void ask(std::string code, std::string sentence, std::string ours, std::string option) {
        intake_.questions.push_back(
            {std::move(code), std::move(sentence), std::move(ours), std::move(option)});
    }

    bool asked(std::string_view code) const {
        return std::ranges::any_of(intake_.questions,
                                   [&](const Question& q) { return q.code == code; });
    }

    void decimal_mark(const FileEvidence& evidence) {
        if (options_.decimal_mark) {
            plan_.decimal_mark = *options_.decimal_mark;
            guess("decimal mark", std::string(1, plan_.decimal_mark), "asked for by option", "");
            return;
        }
        plan_.decimal_mark = evidence.mark.mark();
        if (evidence.mark.contradictory()) {
            ask("decimal_mark",
                "Numbers are written with a decimal point and with a decimal comma in one file, "
                "such as '" +
                    evidence.mark_sample + "'. Which one is it?",
                "", "--decimal");
        } else if (evidence.mark.lone()) {
            ask("decimal_mark",
                "Is '" + evidence.mark_sample +
                    "' a number with three decimals, or a thousand and more?",
                "", "--decimal");
        } else if (evidence.mark.any()) {
            guess("decimal mark", std::string(1, plan_.decimal_mark), "certain",
                  "as in '" + evidence.mark_sample + "'");
        }
    }

    void cut_decimals() {
        if (const auto& cut = plan_.shape.cut_decimals) {
            ask("decimal_comma",
                fmt::format(
                    "Is '{}' (line {}) one number? Its comma parts two fields here, and what "
                    "stands behind it would be lost. If so, save the file with semicolons "
                    "between the fields or with such numbers in quotes.",
                    cut->sample, cut->line),
                "one number",
                fmt::format("a new file; or, if the first part is the whole value, "
                            "--glucose-column {}",
                            cut->column + 1));
        }
    }

    // A level cut in two by its comma is the same question, and asked as that.
    void which_glucose() {
        const auto& columns = plan_.shape.may_be_glucose;
        if (columns.empty() || plan_.shape.cut_decimals) {
            return;
        }
        std::string list;
        for (const std::size_t c : columns) {
            const std::string& title = plan_.shape.columns[c].title;
            list += (list.empty()          ? ""
                     : c == columns.back() ? " and "
                                           : ", ") +
                    std::to_string(c + 1) + (title.empty() ? "" : " ('" + title + "')");
        }
        ask("glucose_column",
            "The numbers of columns " + list +
                " could each be glucose, and no title says which. Which column is it?",
            "", "--glucose-column");
    }

    void date_order(const FileEvidence& evidence) {
        static const std::map<DateOrder, const char*> words = {
            {DateOrder::year_first, "year first"},
            {DateOrder::day_first, "day first"},
            {DateOrder::month_first, "month first"}};
        if (options_.date_order) {
            plan_.date_order = *options_.date_order;
            guess("date order", words.at(plan_.date_order), "asked for by option", "");
            return;
        }
        if (plan_.shape.serial_times) {
            plan_.date_order = DateOrder::year_first;
            guess("times", "numbers of days", "likely",
                  "such as '" + *plan_.shape.serial_times + "', counted from " +
                      (plan_.serial_1904 ? "1 January 1904 as this workbook does"
                                         : "30 December 1899 as spreadsheets do") +
                      "; --time-column names another column");
            return;
        }
        const auto answer = evidence.order.answer();
        if (answer.order) {
            plan_.date_order = *answer.order;
            guess("date order", words.at(plan_.date_order), answer.certain ? "certain" : "likely",
                  answer.why);
            return;
        }
        plan_.date_order = DateOrder::day_first;
        ask("date_order",
            "Is the first number of '" + evidence.open_date + "' (line " +
                std::to_string(evidence.open_date_line) + ") the day or the month? " +
                (answer.contradictory ? "Numbers above 12 stand in both places."
                                      : "Every such date fits both."),
            answer.contradictory ? "" : "day first", "--date-order");
    }

    std::optional<GlucoseUnit> titled_unit(Role role) const {
        for (const ColumnGuess& column : plan_.shape.columns) {
            if (column.role == role && column.unit) {
                return column.unit;
            }
        }
        return std::nullopt;
    }

    // Each column in the unit of its title. A unit asked for says which is taken first, and alone
    // where a title is not to be trusted.
    void unit_by_column(const FileEvidence& evidence) {
        std::vector<std::size_t> columns = plan_.shape.all(Role::glucose);
        std::erase_if(columns, [&](std::size_t c) { return !plan_.shape.columns[c].unit; });
        if (options_.unit) {
            std::ranges::stable_partition(columns, [&](std::size_t c) {
                return plan_.shape.columns[c].unit == options_.unit;
            });
        }
        plan_.glucose_first = columns.front();
        plan_.unit = *plan_.shape.columns[columns.front()].unit;
        intake_.unit = plan_.unit;
        std::string list;
        for (const std::size_t c : columns) {
            const GlucoseUnit titled = *plan_.shape.columns[c].unit;
            list +=
                fmt::format("{}{} in column {}", list.empty() ? "" : ", ", name_of(titled), c + 1);
            const auto of_column = evidence.unit_of.find(c);
            const auto by_values =
                of_column == evidence.unit_of.end() ? std::nullopt : of_column->second.by_median();
            if (!by_values || *by_values == titled) {
                continue;
            }
            if (options_.unit) {
                leave_other_units();
            } else if (!asked("unit")) {
                ask("unit",
                    fmt::format("The title of column {} says {}, its numbers (median {:.0f}) read "
                                "as {}, and another column's title says another unit. Of which "
                                "unit is the column to be taken?",
                                c + 1, name_of(titled), of_column->second.median(),
                                name_of(*by_values)),
                    "", "--unit");
            }
        }
        guess("unit", "of each column", "certain",
              fmt::format("the titles: {}; where a row has both, that of column {} is taken", list,
                          columns.front() + 1));
    }

    void leave_other_units() {
        for (const std::size_t c : plan_.shape.all(Role::glucose)) {
            if (plan_.shape.columns[c].unit != options_.unit) {
                plan_.shape.columns[c].role = Role::ignored;
            }
        }
    }

    static std::optional<GlucoseUnit> told_by_all_rows(const FileEvidence& evidence) {
        return evidence.told_in.size() == 1 ? std::optional(evidence.told_in.begin()->first)
                                            : std::nullopt;
    }

    // A unit that rows or cells name, whose numbers read as the other one's.
    static std::optional<GlucoseUnit> told_against_numbers(const FileEvidence& evidence) {
        for (const auto& [unit, levels] : evidence.told_in) {
            if (const auto by_values = levels.by_median(); by_values && *by_values != unit) {
                return unit;
            }
        }
        return std::nullopt;
    }

    void unit(const FileEvidence& evidence) {
        if (plan_.shape.unit_by_column) {
            unit_by_column(evidence);
            plan_.finger_prick_unit = plan_.unit;
            finger_prick_unit(evidence.meter);
            return;
        }
        const bool meter_alone = evidence.unit.seen() == 0;
        const UnitEvidence& levels = meter_alone ? evidence.meter : evidence.unit;
        const auto by_title = meter_alone && !titled_unit(Role::glucose)
                                  ? titled_unit(Role::finger_prick)
                                  : titled_unit(Role::glucose);
        const auto by_values = levels.by_median();
        const std::string median = fmt::format("median {:.0f}", levels.median());
        const auto told = told_by_all_rows(evidence);
        const auto against = told_against_numbers(evidence);
        if (options_.unit) {
            plan_.unit = *options_.unit;
            if (against && *against != plan_.unit) {
                plan_.unit_not_believed = against;
            }
            guess("unit", name_of(plan_.unit), "asked for by option", "");
        } else if (asked("glucose_column")) {  // of which column is open
            plan_.unit = by_title.value_or(by_values.value_or(GlucoseUnit::mg_per_dl));
        } else if (against) {
            const UnitEvidence& numbers = evidence.told_in.at(*against);
            plan_.unit = *numbers.by_median();
            ask("unit",
                fmt::format("The rows say {}, their numbers (median {:.0f}) read as {}. Which is "
                            "right?",
                            name_of(*against), numbers.median(), name_of(plan_.unit)),
                name_of(plan_.unit), "--unit");
        } else if (told && levels.seen() == 0) {
            plan_.unit = *told;
            guess("unit", name_of(plan_.unit), "certain", "each level bears it");
        } else if (levels.seen() == 0 || (meter_alone && by_title)) {
            plan_.unit = by_title.value_or(GlucoseUnit::mg_per_dl);
        } else if (levels.mixed() && !evidence.unit_column_explains) {
            plan_.unit = by_title.value_or(GlucoseUnit::mg_per_dl);
            ask("unit",
                "The glucose column holds numbers that read as mmol/L beside numbers that read as "
                "mg/dL, and "
                "nothing in the rows says which is which. What unit is it in?",
                "", "--unit");
        } else if (by_title && by_values && *by_title != *by_values) {
            plan_.unit = *by_values;
            ask("unit",
                std::string("The title says ") + name_of(*by_title) + ", the numbers (" + median +
                    ") read as " + name_of(*by_values) + ". Which is right?",
                name_of(*by_values), "--unit");
        } else if (by_title) {
            plan_.unit = *by_title;
            guess("unit", name_of(plan_.unit), "certain", "the column's title; " + median);
        } else if (evidence.unit_column_explains) {
            plan_.unit = told.value_or(by_values.value_or(GlucoseUnit::mg_per_dl));
            guess("unit", "row by row", "certain", "the rows name it");
        } else if (by_values) {
            plan_.unit = *by_values;
            guess("unit", name_of(plan_.unit), "likely", "from the numbers alone: " + median);
        } else {
            ask("unit",
                "Neither title nor numbers (" + median + ") tell the unit of glucose. What is it?",
                "", "--unit");
        }
        intake_.unit = plan_.unit;
        plan_.finger_prick_unit = plan_.unit;
        if (!meter_alone) {
            finger_prick_unit(evidence.meter);
        }
    }

    // Beside a sensor's column: the other unit where in the sensor's no meter shows such levels.
    void finger_prick_unit(const UnitEvidence& levels) {
        const auto by_values = levels.by_median();
        const bool mg = plan_.unit == GlucoseUnit::mg_per_dl;
        const bool impossible = mg ? levels.median() < 20 : levels.median() > 33.3;
        if (by_values && *by_values != plan_.unit && impossible &&
            !titled_unit(Role::finger_prick)) {
            plan_.finger_prick_unit = *by_values;
            guess("finger-prick unit", name_of(*by_values), "likely",
                  fmt::format("from the numbers alone: median {:.0f}", levels.median()));
        }
    }

    // Times that the client's clock showed twice, no farther back than it was set.
    bool set_back(const TwelveHourEvidence::Turn& turn) const {
        const auto date = turn.to.date(plan_.date_order);
        if (!date) {
            return false;
        }
        const WallResolution meaning = options_.zones.resolve(*date + turn.to.clock);
        return meaning.kind == WallResolution::Kind::repeated &&
               std::chrono::abs(turn.to.clock - turn.from) <= meaning.second - meaning.first;
    }

    void twelve_hour(const FileEvidence& evidence) {
        if (evidence.twelve_hour.suspicious(
                [this](const TwelveHourEvidence::Turn& turn) { return set_back(turn); })) {
            ask("twelve_hour_clock",
                "No hour is above 12 and times run backwards within a day, as on '" +
                    evidence.date_sample +
                    "': AM and PM seem to be missing. Can the file be written with a 24-hour "
                    "clock?",
                "", "a new file");
        }
    }

    // Two sensors in one file are two wears. A column that says sensor or serial number names them
    // rather than one of devices, which may be what showed the readings.
    void sensors(const FileEvidence& evidence) {
        plan_.kinds_name_a_sensor = evidence.kinds_name_a_sensor;
        plan_.by_meter = options_.measured_by == MeasuredBy::meter;
        for (const auto& [c, values] : evidence.devices) {
            const bool tells = values.differ() && !values.number_the_rows();
            const bool better = !plan_.sensor_column ||
                                (names_a_sensor(plan_.shape.columns[c].title) &&
                                 !names_a_sensor(plan_.shape.columns[*plan_.sensor_column].title));
            if (tells && better) {
                plan_.sensor_column = c;
            }
        }
        if (plan_.sensor_column) {
            plan_.sensors_certain = names_a_sensor(plan_.shape.columns[*plan_.sensor_column].title);
            guess("sensors",
                  std::to_string(evidence.devices.at(*plan_.sensor_column).values().size()),
                  "likely",
                  "named in column '" + plan_.shape.columns[*plan_.sensor_column].title +
                      "': the readings of each are kept apart");
        }
    }

    // The first column of offsets that has any stands for all.
    void offsets(const FileEvidence& evidence) {
        for (const auto& [c, seen] : evidence.offsets) {
            if (seen.read > 0 && !plan_.offset_column) {
                plan_.offset_column = c;
            }
        }
        if (const auto titled = plan_.shape.offset_by_title) {
            const ColumnGuess& column = plan_.shape.columns[*titled];
            guess("times", column.offset->utc ? "UTC" : Zone::fixed(column.offset->east).name(),
                  "certain", "the title '" + column.title + "' says so");
        } else if (plan_.offset_column) {
            guess("times", "each at its row's distance from UTC", "certain",
                  "told in column '" + plan_.shape.columns[*plan_.offset_column].title + "'");
        }
    }

    // How well a column of persons tells whom the rows are of: whether it holds the one asked for,
    // then how many it tells apart.
    std::pair<bool, std::size_t> telling(const ColumnValues& values) const {
        return {options_.person && values.values().contains(*options_.person),
                values.values().size()};
    }

    // Of several columns that name persons (surname and first name) the one that tells most stands
    // for all.
    void persons(const FileEvidence& evidence) {
        std::optional<std::size_t> kept;
        std::size_t place = most_people;  // of the kept one, in `people`
        std::size_t strong = 0;
        bool several = false;
        for (const std::size_t c : plan_.shape.all(Role::person)) {
            const bool weak = may_number_rows(plan_.shape.columns[c].title);
            const std::size_t here = weak ? most_people : strong++;
            const auto found = evidence.persons.find(c);
            if (found == evidence.persons.end() || (weak && found->second.number_the_rows())) {
                continue;
            }
            several = several || found->second.differ();
            if (!kept || telling(found->second) > telling(evidence.persons.at(*kept))) {
                kept = c;
                place = here;
            }
        }
        for (const std::size_t c : plan_.shape.all(Role::person)) {
            plan_.shape.columns[c].role = c == kept ? Role::person : Role::ignored;
        }
        if (several && !options_.person) {
            ask("person", "The file holds rows of more than one person. Whose are to be taken?", "",
                "--person");
        } else if (several && namesakes(evidence, place) > 1) {
            ask("person",
                "More than one person of the file bears the name asked for. Can the rows of each "
                "be put in a file of their own?",
                "", "a new file");
        }
    }

    // How many persons bear the name asked for in the column at `place` of `people`.
    std::size_t namesakes(const FileEvidence& evidence, std::size_t place) const {
        return static_cast<std::size_t>(std::count_if(
            evidence.people.begin(), evidence.people.end(),
            [&](const auto& who) { return place < who.size() && who[place] == *options_.person; }));
    }

    const IntakeOptions& options_;
    Intake& intake_;
    ReadingPlan plan_;
};

}  // namespace

ReadingPlan reading_plan(TableShape shape, const FileEvidence& evidence,
                         const IntakeOptions& options, Intake& intake) {
    return Planner(options, intake).plan(std::move(shape), evidence);
}

}  // namespace tracewright
