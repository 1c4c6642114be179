#pragma once

#include "intake/message_words.hpp"
#include "time/instant.hpp"

#include <optional>
#include <span>
#include <string>

namespace tracewright {

/// A day that a message names.
struct MessageDay {
    CivilDate date;
    std::size_t words = 1;  ///< how many words it took
    bool sure = true;       ///< false where a weekday or a date without its year was placed
    bool by_today = false;  ///< "today", "yesterday": may stand anywhere
};

/// The day that begins at words[0]: today, yesterday, a weekday (the last such day, today among
/// them), 2026-03-02, 02.03.2026, 2 March, March 2 (the year may follow; else the last such date).
/// Weekdays and months are taken only where a part begins: "sun", "may" and "march" are words too.
/// Empty for anything else, 31.02.2026 among it.
std::optional<MessageDay> message_day(std::span<const MessageWord> words, CivilDate today,
                                      bool part_begins);

}  // namespace tracewright
