#pragma once

#include "intake/entry_writer.hpp"

namespace tracewright {

/// Whether the row's stretch of time is sleep because its kind or a cell says so.
bool span_is_sleep(const EntryWriter& writer);

/// Adds the sleep that a row tells: from when to when by the columns of sleep, as its stretch of
/// time, or how many hours. Of one end alone the other is worked out by the hours, or it is told
/// as not read.
void add_sleep(EntryWriter& writer);

/// Adds sleep where nothing in the row says what its stretch of time was and it is like a night.
void add_untold_night(EntryWriter& writer);

}  // namespace tracewright
