#include "client_files.hpp"

#include "number_words.hpp"

#include <algorithm>
#include <chrono>

namespace tracewright {

namespace {

using Cells = std::vector<std::string>;

struct Parts {
    std::chrono::year_month_day date;
    std::chrono::hh_mm_ss<std::chrono::seconds> clock;
    explicit Parts(WallTime at)
        : date(std::chrono::year_month_day{std::chrono::floor<std::chrono::days>(at)}),
          clock(at - std::chrono::floor<std::chrono::days>(at)) {}
    int year() const { return static_cast<int>(date.year()); }
    unsigned month() const { return static_cast<unsigned>(date.month()); }
    unsigned day() const { return static_cast<unsigned>(date.day()); }
    long hour() const { return clock.hours().count(); }
    long minute() const { return clock.minutes().count(); }
};

std::string date_words(const Parts& at, DateStyle style) {
    switch (style) {
        case DateStyle::day_first_dots:
            return padded(at.day(), 2) + "." + padded(at.month(), 2) + "." + padded(at.year(), 4);
        case DateStyle::month_first_slashes:
            return padded(at.month(), 2) + "/" + padded(at.day(), 2) + "/" + padded(at.year(), 4);
        default:
            return padded(at.year(), 4) + "-" + padded(at.month(), 2) + "-" + padded(at.day(), 2);
    }
}

std::string clock_words(const Parts& at, DateStyle style) {
    if (style != DateStyle::month_first_slashes) {
        return padded(at.hour(), 2) + ":" + padded(at.minute(), 2);
    }
    const long twelve = at.hour() % 12 == 0 ? 12 : at.hour() % 12;
    return std::to_string(twelve) + ":" + padded(at.minute(), 2) + (at.hour() < 12 ? " AM" : " PM");
}

std::string offset_words(std::chrono::seconds offset) {
    const auto minutes = offset.count() / 60;
    const auto size = minutes < 0 ? -minutes : minutes;
    return (minutes < 0 ? "-" : "+") + padded(size / 60, 2) + ":" + padded(size % 60, 2);
}

// One table with the columns that a dialect and its contents ask for.
class TableMaker {
  public:
    TableMaker(const ClientLife& life, const FileDialect& dialect, bool readings, bool diary)
        : life_(life), dialect_(dialect), readings_(readings), diary_(diary) {}

    Cells columns(GlucoseUnit unit) const {
        const bool de = dialect_.german;
        Cells cells;
        if (dialect_.date_and_clock_apart) {
            cells = de ? Cells{"Datum", "Uhrzeit"} : Cells{"Date", "Clock"};
        } else {
            cells = {de ? "Zeitpunkt" : "Time"};
        }
        if (readings_) {
            cells.push_back((de ? "Glukose (" : "Glucose (") + std::string(name_of(unit)) + ")");
        }
        if (diary_) {
            const Cells english{"Eaten", "Carbohydrate (g)", "Moved", "Minutes", "Slept (h)",
                                "Mood",  "Medicine",         "Note"};
            const Cells german{"Gegessen",   "Kohlenhydrate (g)", "Bewegung",   "Dauer (min)",
                               "Schlaf (h)", "Stimmung",          "Medikament", "Notiz"};
            cells.insert(cells.end(), de ? german.begin() : english.begin(),
                         de ? german.end() : english.end());
            if (pricks()) {
                cells.push_back((de ? "Kapillar (" : "Finger-prick (") +
                                std::string(name_of(life_.story.unit)) + ")");
            }
        }
        return cells;
    }

    Cells reading_row(const SensorReading& reading, const SensorKind& kind) const {
        Cells cells = time_cells(life_.zones.wall_time(reading.at),
                                 life_.zones.zone_at(reading.at).offset_at(reading.at));
        cells.push_back(reading.beyond == SensorReading::Beyond::low    ? dialect_.low_text
                        : reading.beyond == SensorReading::Beyond::high ? dialect_.high_text
                                                                        : level(reading, kind));
        cells.resize(cells.size() + (diary_ ? 8 + (pricks() ? 1 : 0) : 0));
        return cells;
    }

    Cells diary_row(const DiaryLine& line) const {
        const Instant at = life_.zones.resolve(line.at).first;
        Cells cells = time_cells(line.at, life_.zones.zone_at(at).offset_at(at));
        if (readings_) {
            cells.emplace_back();
        }
        for (const std::string& cell : {line.eaten, line.carbohydrate, line.moved, line.minutes,
                                        mark(line.slept), line.mood, line.medicine, line.note}) {
            cells.push_back(cell);
        }
        if (pricks()) {
            cells.push_back(mark(line.finger_prick));
        }
        return cells;
    }

  private:
    const ClientLife& life_;
    const FileDialect& dialect_;
    bool readings_;
    bool diary_;

    bool pricks() const { return life_.story.diary.finger_prick_chance > 0; }
    std::string mark(const std::string& number) const {
        return dialect_.decimal_comma && !dialect_.workbook ? with_comma(number) : number;
    }
    std::string level(const SensorReading& reading, const SensorKind& kind) const {
        return mark(pricked_words(reading.mg_per_dl, kind.unit));
    }
    Cells time_cells(WallTime wall, std::chrono::seconds offset) const {
        const Parts parts(wall);
        const std::string date = date_words(parts, dialect_.date_style);
        const std::string clock = clock_words(parts, dialect_.date_style);
        if (dialect_.date_style == DateStyle::iso_with_offset) {
            return {date + "T" + clock + ":00" + offset_words(offset)};
        }
        return dialect_.date_and_clock_apart ? Cells{date, clock} : Cells{date + " " + clock};
    }
};

void add_titles(ClientFile& file, const ClientStory& story, const std::string& what) {
    if (file.dialect.title_rows) {
        file.table.titles = {"Invented for the demo practice: no real person", story.name, what};
    }
    file.table.footer = file.dialect.footer;
}

// What goes wrong between a sensor and a coach's mail box.
void make_messy(ClientFile& file) {
    auto& rows = file.table.rows;
    if (file.dialect.row_of_abc && rows.size() > 400) {
        const std::size_t value_column = file.dialect.date_and_clock_apart ? 2 : 1;
        auto& cell = rows[400][value_column];
        if (!cell.empty()) {
            cell = "abc";
            --file.readings;
            ++file.unreadable_rows;
        }
    }
    for (int i = 0; i < file.dialect.repeated_rows; ++i) {
        const auto at =
            static_cast<std::ptrdiff_t>(rows.size()) * (i + 1) / (file.dialect.repeated_rows + 1);
        rows.insert(rows.begin() + at, Cells(rows[static_cast<std::size_t>(at)]));
        ++file.repeated_rows;
    }
    if (file.dialect.newest_first) {
        std::reverse(rows.begin(), rows.end());
    }
}

ClientFile wear_file(const ClientLife& life, const LivedWear& wear) {
    ClientFile file{.name = "invented-" + wear.plan.label,
                    .holds = wear.plan.diary_within ? "readings and diary" : "readings",
                    .wear = wear.plan.label,
                    .dialect = wear.plan.dialect};
    std::replace(file.name.begin(), file.name.end(), ' ', '-');
    file.name += file.dialect.workbook ? ".xlsx" : file.dialect.delimiter == '\t' ? ".txt" : ".csv";
    add_titles(file, life.story, wear.plan.kind.name);
    const TableMaker maker(life, file.dialect, true, wear.plan.diary_within);
    file.table.columns = maker.columns(wear.plan.kind.unit);
    std::size_t written = 0;
    const auto write_diary_until = [&](Instant until) {
        for (; wear.plan.diary_within && written < wear.diary.size() &&
               life.zones.resolve(wear.diary[written].at).first <= until;
             ++written) {
            file.table.rows.push_back(maker.diary_row(wear.diary[written]));
            ++file.entries;
        }
    };
    for (const SensorReading& reading : wear.readings) {
        write_diary_until(reading.at);
        file.table.rows.push_back(maker.reading_row(reading, wear.plan.kind));
        ++file.readings;
    }
    write_diary_until(wear.worn.to);
    make_messy(file);
    return file;
}

ClientFile diary_file(const ClientLife& life) {
    ClientFile file{.name = "invented-diary",
                    .holds = "diary",
                    .wear = "",
                    .dialect = life.story.diary_dialect};
    file.name += file.dialect.workbook ? ".xlsx" : file.dialect.delimiter == '\t' ? ".txt" : ".csv";
    add_titles(file, life.story, "Diary");
    const TableMaker maker(life, file.dialect, false, true);
    file.table.columns = maker.columns(life.story.unit);
    WallTime last_end{};
    for (const LivedWear& wear : life.wears) {
        for (const DiaryLine& line : wear.diary) {
            // Two sensors at once: one diary.
            if (!wear.plan.diary_within && line.at > last_end) {
                file.table.rows.push_back(maker.diary_row(line));
                ++file.entries;
            }
        }
        last_end = std::max(last_end, wear.diary.empty() ? last_end : wear.diary.back().at);
    }
    make_messy(file);
    return file;
}

}  // namespace

std::vector<ClientFile> client_files(const ClientLife& life) {
    std::vector<ClientFile> files;
    for (const LivedWear& wear : life.wears) {
        files.push_back(wear_file(life, wear));
    }
    if (std::any_of(life.wears.begin(), life.wears.end(),
                    [](const LivedWear& wear) { return !wear.plan.diary_within; })) {
        files.push_back(diary_file(life));
    }
    return files;
}

}  // namespace tracewright
