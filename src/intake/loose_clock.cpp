#include "intake/loose_clock.hpp"

#include "intake/message_words.hpp"
#include "intake/plain_text.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

struct Word {
    std::string_view word;
    std::string_view slot;
    std::chrono::minutes clock{0};  // 0: the middle of the slot
};

constexpr std::array words{Word{"breakfast", "breakfast"},
                           Word{"fruehstueck", "breakfast"},
                           Word{"fr\xC3\xBChst\xC3\xBC"
                                "ck",
                                "breakfast"},
                           Word{"lunch", "lunch"},
                           Word{"mittagessen", "lunch"},
                           Word{"dinner", "dinner"},
                           Word{"supper", "dinner"},
                           Word{"abendessen", "dinner"},
                           Word{"abendbrot", "dinner"},
                           Word{"snack", "snack"},
                           Word{"morning", {}, 8h},
                           Word{"morgens", {}, 8h},
                           Word{"vormittags", {}, 10h},
                           Word{"noon", {}, 12h},
                           Word{"midday", {}, 12h},
                           Word{"mittags", {}, 12h},
                           Word{"afternoon", {}, 15h},
                           Word{"nachmittags", {}, 15h},
                           Word{"evening", {}, 19h},
                           Word{"abends", {}, 19h},
                           Word{"night", {}, 22h},
                           Word{"nachts", {}, 22h},
                           Word{"bedtime", {}, 22h}};

constexpr std::array about{"circa",  "ca.",   "ca ",  "c.", "about", "around", "approx.",
                           "approx", "gegen", "etwa", "um", "~",     "at"};

}  // namespace

std::chrono::minutes middle_of(std::string_view slot) {
    return slot == "breakfast" ? 8h : slot == "lunch" ? 13h : slot == "dinner" ? 19h : 16h;
}

std::optional<LooseClock> loose_clock(std::string_view text) {
    const std::string small = lower_case(text);
    const auto word = std::ranges::find(words, small, &Word::word);
    if (word != words.end()) {
        return LooseClock{word->slot.empty() ? word->clock : middle_of(word->slot), word->slot};
    }
    for (const std::string_view before : about) {
        if (small.starts_with(before)) {
            const auto rest = message_words(std::string_view(small).substr(before.size()));
            const auto told = message_clock(rest);
            if (told && told->words == rest.size()) {
                return LooseClock{told->clock, {}};
            }
        }
    }
    return std::nullopt;
}

}  // namespace tracewright
