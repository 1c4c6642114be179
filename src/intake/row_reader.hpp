#pragma once

#include "intake/named_zone.hpp"
#include "intake/read_row.hpp"

#include <optional>
#include <string_view>

namespace tracewright {

class RowCells;

/// Reads rows one by one by a plan. Remembers the date where it stands only on change of day.
class RowReader {
  public:
    explicit RowReader(const ReadingPlan& plan) : plan_(plan) {}
    ReadRow read(const Row& row);

  private:
    struct Reading;
    bool is_settled(Reading& reading);
    void find_time(Reading& reading);
    std::optional<WrittenTime> time_in(const RowCells& cells, std::size_t column) const;
    void find_usual_clock(Reading& reading) const;
    static void set_slot(Reading& reading);
    bool holds_an_item(const Reading& reading) const;
    std::optional<WrittenTime> carried_date(const RowCells& cells, std::size_t column);
    void find_glucose_columns(Reading& reading) const;
    bool bears_a_level(const Reading& reading, std::size_t column) const;
    bool place(Reading& reading);
    bool settles_by_zone(Reading& reading);
    static bool is_footer(const Reading& reading);
    void settle_timeless(Reading& reading) const;
    void find_end(Reading& reading) const;
    void find_glucose(Reading& reading) const;
    std::optional<GlucoseUnit> unit_of(const Reading& reading, std::size_t column,
                                       const WrittenGlucose& level) const;
    static void tell_usual_clock(Reading& reading);
    void conclude(Reading& reading) const;

    const ReadingPlan& plan_;
    std::optional<WrittenTime> carried_date_;
    NamedZone zones_;
    bool data_begun_ = false;
};

}  // namespace tracewright
