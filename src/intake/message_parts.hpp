#pragma once

#include "diary/diary_entry.hpp"
#include "diary/doubt.hpp"
#include "intake/message_words.hpp"
#include "time/instant.hpp"
#include "time/way_of_writing.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// One part of a message about one thing, before it is anything.
struct MessagePart {
    std::vector<MessageWord> words;  ///< without times, days, and the name of its meal
    std::string text;                ///< these words as written
    std::string written;             ///< all of it as written
    std::uint32_t line = 1;
    std::optional<MessageClock> clock;
    std::optional<MessageClock> until;
    std::optional<MessageLength> length;
    std::string slot;                ///< "breakfast", ...; empty if none
    std::string beside;              ///< "after lunch": "lunch"
    std::optional<DiaryKind> begun;  ///< by its verb
    std::optional<CivilDate> day;    ///< where one is named, in it or before it
    bool last_night = false;
    bool soft = false;  ///< stands behind a comma, "then" or "and": may belong to the one before
    std::vector<Doubt> doubts;
};

/// The parts of a message in order; none is lost: a time with nothing behind it is a part of its
/// own. `way`: how a day that was placed is written in a doubt.
std::vector<MessagePart> message_parts(std::string_view text, CivilDate day, WayOfWriting way);

}  // namespace tracewright
