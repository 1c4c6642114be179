#pragma once

#include "intake/cell_content.hpp"
#include "intake/table_shape.hpp"

#include <span>

namespace tracewright {

/// Beside other times those of sleep and of meals are their own; alone the first of them is the
/// row's. `contents` by column.
void settle_own_times(TableShape& shape, std::span<const ColumnContent> contents);

/// Beside a date the one time of a meal or a bed is the row's, where no other time of day stands.
void settle_lone_clock(TableShape& shape);

/// Tells the meals apart that titles name, numbered ones where one has a time of its own; and
/// whether a row's own time is that of going to bed.
void settle_meals(TableShape& shape);

}  // namespace tracewright
