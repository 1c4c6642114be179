#include "intake/own_times.hpp"

#include "intake/cell_time.hpp"
#include "intake/titled_clock.hpp"
#include "intake/told_offset.hpp"

namespace tracewright {

namespace {

constexpr std::chrono::hours day{24};

bool bears_a_date(const RowCells& cells, const ReadingPlan& plan, std::size_t column) {
    const auto time = column_time(cells, plan, column);
    return time && time->has_date;
}

}  // namespace

std::optional<WrittenTime> column_time(const RowCells& cells, const ReadingPlan& plan,
                                       std::size_t column) {
    const ColumnGuess& guess = plan.shape.columns[column];
    const auto time = guess.unread_clock
                          ? written_time(cells.text(column))
                          : cell_time(cells.text(column), cells.form(column), plan.serial_1904);
    const bool titled = guess.by_title && cells.form(column) != CellForm::number;
    return time || !titled ? time : titled_clock(cells.text(column));
}

std::optional<OwnTime> own_time(const RowCells& cells, const ReadingPlan& plan, std::size_t column,
                                std::optional<CivilDate> date) {
    const auto time = column_time(cells, plan, column);
    if (!time || !time->has_clock) {
        return std::nullopt;
    }
    const auto on = time->has_date ? time->date(plan.date_order) : date;
    const auto offset = told_offset(*time, column, cells, plan);
    return on ? std::optional{OwnTime{*on + time->clock,
                                      offset ? std::optional{offset->east} : std::nullopt}}
              : std::nullopt;
}

SleptSpan slept_span(const RowCells& cells, const ReadingPlan& plan, const ReadRow& row) {
    const auto start = cells.filled_of(Role::sleep_start);
    const auto stop = cells.filled_of(Role::sleep_end);
    SleptSpan span;
    span.begin = start ? own_time(cells, plan, *start, row.date) : std::nullopt;
    std::optional<WallTime> begun;
    if (span.begin || plan.shape.times_begin_sleep) {
        begun = span.begin ? span.begin->wall : row.wall;
    }
    span.end = stop ? own_time(cells, plan, *stop, row.date) : std::nullopt;
    if (!span.end || bears_a_date(cells, plan, *stop)) {
        return span;
    }
    if (begun && (!start || bears_a_date(cells, plan, *start))) {
        span.end->wall += std::chrono::floor<std::chrono::days>(*begun) -
                          std::chrono::floor<std::chrono::days>(span.end->wall);
    }
    if (begun && span.end->wall <= *begun) {
        span.end->wall += day;
    }
    // Written down in the morning, a night began the day before.
    const bool clocks = span.begin && !bears_a_date(cells, plan, *start);
    if (clocks && row.clock_told && span.end->wall > row.wall && span.end->wall - day <= row.wall) {
        span.begin->wall -= day;
        span.end->wall -= day;
    }
    return span;
}

}  // namespace tracewright
