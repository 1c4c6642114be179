#pragma once

#include "intake/entry_writer.hpp"

namespace tracewright {

/// Adds the meals of a row, each that titles name apart ("Breakfast carbs", "Dinner carbs") with
/// its own time, carbohydrate and text. One without a time of its own is held to be uncertain, at
/// the middle of its hours; never at the time of another, or of sleep. True if the row's notes
/// became the text of its only meal.
bool add_meals(EntryWriter& writer);

/// Whether a cell's text says that something was eaten but not described.
bool says_not_described(std::string_view text);

}  // namespace tracewright
