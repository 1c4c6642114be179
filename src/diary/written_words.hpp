#pragma once

#include "diary/diary_entry.hpp"

#include <initializer_list>
#include <string>
#include <string_view>

namespace tracewright {

/// Latin letters A to Z made small and the typographic apostrophe plain; all else as it is.
std::string small_letters(std::string_view text);

/// Whether the entry's text holds one of the words or phrases (given in small letters) anywhere,
/// also within a longer word. Denials are not understood: "not thirsty" holds "thirst", and a
/// reader is asked rather than spared.
bool speaks_of(const DiaryEntry& entry, std::initializer_list<std::string_view> words);

/// Whether the last word of `before` denies what comes next, over the small words that may stand
/// between: "no", "not on", "no longer any". English, ours, no source.
bool denies_what_follows(std::string_view before);

/// As speaks_of, but a mention that is denied doesn't count: "no steroid injection". For figures,
/// never for alarms.
bool speaks_of_undenied(const DiaryEntry& entry, std::initializer_list<std::string_view> words);

/// Whether the entry is one in which people say how they are: symptom, illness, mood, note.
bool tells_how_they_are(const DiaryEntry& entry);

}  // namespace tracewright
