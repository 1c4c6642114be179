#pragma once

#include "diary/eaten_text.hpp"
#include "intake/message_words.hpp"
#include "time/zone_history.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// What a message is read by.
struct MessageOptions {
    CivilDate day;  ///< the day it tells of, unless it names another
    ZoneHistory zones{Zone::floating()};
    KnownFoods foods;
    GlucoseUnit unit = GlucoseUnit::mmol_per_l;  ///< of finger-pricks without a unit
    std::optional<Instant> as_of;                ///< later times are told
};

/// A diary entry that a part of a message is taken for. Nothing is stored by reading.
struct ProposedEntry {
    /// A time that is not written, or not without doubt, has `time_uncertain`: such an entry takes
    /// part in nothing that needs a time. A meal's carbohydrate is set only where the message says
    /// it; what its text amounts to stands in `eaten`.
    DiaryEntry entry;
    std::string written;             ///< its part of the message
    std::optional<EatenText> eaten;  ///< of a meal
    std::vector<Doubt> doubts;       ///< of kind, day, time and amounts; foods have their own

    bool time_missing = false;  ///< no time stands in the message for it
    bool sure() const;          ///< no doubt here nor about its foods
};

/// Reads what a client wrote: "8:10 porridge and banana, walked 20 min; slept 6h; felt tired".
/// Lines, semicolons and full stops part entries, and so do commas and verbs where another kind
/// begins; food behind a comma belongs to the meal before it. A time stands before what it is of,
/// or behind it with "at". Times: 8:10, 8.10, 8h10, 8am, 8:10 pm, noon; days: today, yesterday,
/// weekdays (the last such day), 2026-03-02, 02.03.2026, 2 March. What begins earlier in the day
/// than the entry before it, or "dinner 7:30", is taken for the afternoon with a doubt. Every part
/// becomes an entry, in the message's order: what is not understood, a note with a doubt. English;
/// any bytes are taken, of the first 20,000.
inline constexpr std::size_t longest_message = 4000;
std::vector<ProposedEntry> client_message(std::string_view text, const MessageOptions& options);

}  // namespace tracewright
