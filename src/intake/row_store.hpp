#pragma once

#include "intake/bring_in.hpp"
#include "intake/row_reader.hpp"

namespace tracewright {

/// Gathers rows that were read, places them in time, tells duplicates and conflicts sensor by
/// sensor, and settles every row's fate in the ledger.
class RowStore {
  public:
    /// `sensors_certain`: rows of several sensors are that, and not of several devices that show
    /// one.
    RowStore(const IntakeOptions& options, bool sensors_certain)
        : options_(options), sensors_certain_(sensors_certain) {}

    void add(ReadRow row);
    /// Readings, diary and ledger into `intake`. Called once.
    void settle(Intake& intake);

  private:
    struct Timed {
        std::uint32_t sensor;
        std::uint32_t line;
        std::uint32_t time_column;
        Instant at;
        WallTime wall;
        bool told;                                   // the row said its own offset
        std::optional<std::chrono::seconds> offset;  // ... where it is not UTC's
        bool clock_told;
        bool uncertain = false;  // alone in a repeated hour
        bool dropped = false;    // settled for its time
        std::optional<RowGlucose> glucose;
        std::uint32_t first_entry;
        std::uint32_t entries;
        Fate fate = Fate::stored;
    };

    bool zone_is_asked_for(Intake& intake);
    void place(Intake& intake, std::uint32_t sensor);
    void drop(Timed& row, const char* code, std::string found, std::string expected);
    void check_years();
    bool too_many_in_the_future(Intake& intake);
    void limits_without_a_number();
    bool devices_take_turns() const;
    void join_devices();
    std::vector<Reading> readings_of(std::uint32_t sensor, Intake& intake);
    void tell_readings_apart(Intake& intake);
    Instant moment_of(const OwnTime& time, bool later) const;
    bool place_entry(const Timed& row, RowEntry& told);
    void tell_entries_apart(Intake& intake);
    void count_fates();

    const IntakeOptions& options_;
    bool sensors_certain_;
    std::vector<Timed> rows_;
    std::vector<RowEntry> entries_;
    Ledger ledger_;
    std::uint32_t sensors_ = 1;
    std::optional<std::int64_t> low_limit_;  // written in the file itself, in hundredths
    std::optional<std::int64_t> high_limit_;
};

}  // namespace tracewright
