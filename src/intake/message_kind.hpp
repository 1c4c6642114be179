#pragma once

#include "diary/diary_entry.hpp"
#include "intake/message_words.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace tracewright {

/// What a word of a client's message says of its kind; empty if nothing. English, ours, no source.
std::optional<DiaryKind> kind_of_word(std::string_view word);

/// A verb that begins something new: "walked", "slept", "felt", "took", "had".
std::optional<DiaryKind> kind_begun_by(std::string_view word);

/// The kind of a part of a message by its words: alarms and measurements before moods, sleep and
/// movement, these before food. An illness that is denied ("no fever") is a note. Empty where no
/// word tells.
std::optional<DiaryKind> kind_of_words(std::span<const MessageWord> words);

/// "flu jab", "vaccination": neither illness nor a medicine for one.
bool is_vaccination(std::span<const MessageWord> words);

/// "breakfast", "lunch", "dinner" (also "supper"), "snack"; empty for any other word.
std::string_view slot_of_word(std::string_view word);

/// "no", "skipped", "missed", "nothing": the meal was not eaten.
bool leaves_out(std::string_view word);

/// Whether the word names a drink with alcohol.
bool is_alcohol(std::string_view word);

}  // namespace tracewright
