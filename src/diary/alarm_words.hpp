#pragma once

#include "diary/diary_entry.hpp"

#include <string_view>

namespace tracewright {

// What people write when something serious has happened, whatever their entry was filed under.
// English, ours, no source. Denials are not understood: a reader is asked rather than spared.

/// Confused, fitting, unconscious; chest pain; fast deep breathing; can't keep fluids down.
bool tells_an_emergency(const DiaryEntry& entry);

/// Nausea, vomiting, belly pain, breathlessness: beside an SGLT2 inhibitor an emergency.
bool tells_a_ketoacidosis_sign(const DiaryEntry& entry);

/// Vomiting or diarrhoea, also as "loose stools" or "the runs".
bool tells_losing_fluids(const DiaryEntry& entry);

/// Words of being ill ("flu", "unwell"), or losing fluids. Alone they may be of another thing
/// ("sick of it"): the kind of the entry, or how long it lasts, says more.
bool tells_of_being_ill(const DiaryEntry& entry);

/// Another person's help in a low.
bool tells_of_help(const DiaryEntry& entry);

/// An emergency or another's help, in a text of no kind yet.
bool tells_an_alarm(std::string_view text);

}  // namespace tracewright
