#include "diary/alarm_words.hpp"

#include "diary/eaten_words.hpp"
#include "diary/written_words.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <string>

namespace tracewright {

namespace {

constexpr std::array<std::string_view, 47> emergencies{"chest pain",
                                                       "pain in my chest",
                                                       "pain in the chest",
                                                       "pain on my chest",
                                                       "chest hurts",
                                                       "chest hurt",
                                                       "tight chest",
                                                       "tight in the chest",
                                                       "tightness in my chest",
                                                       "tightness in the chest",
                                                       "chest is tight",
                                                       "chest was tight",
                                                       "chest feels tight",
                                                       "chest felt tight",
                                                       "pressure on my chest",
                                                       "pressure in my chest",
                                                       "pressure on the chest",
                                                       "chest pressure",
                                                       "heart attack",
                                                       "confused",
                                                       "not making sense",
                                                       "unconscious",
                                                       "lost consciousness",
                                                       "passed out",
                                                       "pass out",
                                                       "blacked out",
                                                       "fainted",
                                                       "fainting",
                                                       "collapsed",
                                                       "seizure",
                                                       "convuls",
                                                       "fitting",
                                                       "had a fit",
                                                       "having a fit",
                                                       "have a fit",
                                                       "had fits",
                                                       "having fits",
                                                       "a fit at",
                                                       "woke up on the floor",
                                                       "woke on the floor",
                                                       "can't keep fluids",
                                                       "cannot keep fluids",
                                                       "can't keep anything down",
                                                       "cannot keep anything down",
                                                       "can't keep water down",
                                                       "cannot keep water down",
                                                       "keep nothing down"};
// An exercise may be of them as well.
constexpr std::array<std::string_view, 4> breathing{"fast breathing", "breathing fast",
                                                    "deep breathing", "breathing deep"};
constexpr std::array<std::string_view, 23> ketoacidosis{
    "nausea",       "nauseous",   "vomit",         "threw up",    "throwing up",    "feeling sick",
    "felt sick",    "being sick", "been sick",     "was sick",    "puking",         "puked",
    "queasy",       "belly pain", "stomach pain",  "tummy pain",  "abdominal pain", "belly ache",
    "stomach ache", "tummy ache", "stomach cramp", "belly cramp", "tummy cramp"};
constexpr std::array<std::string_view, 5> breathless{
    "breathless", "short of breath", "out of breath", "can't breathe", "cannot breathe"};
constexpr std::array<std::string_view, 22> losing_fluids{
    "vomit",        "threw up",    "throwing up", "throw up",    "puking",        "puked",
    "being sick",   "been sick",   "diarrh",      "diarh",       "diahr",         "diarrohea",
    "dioreah",      "loose stool", "loose bowel", "loose poo",   "loose motions", "the runs",
    "watery stool", "runny stool", "runny poo",   "upset bowels"};
constexpr std::array<std::string_view, 10> ill{"ill",  "illness", "flu",       "fever",  "feverish",
                                               "sick", "cough",   "infection", "unwell", "poorly"};
constexpr std::array<std::string_view, 23> help{"needed help",
                                                "helped me",
                                                "had to help",
                                                "help me with a low",
                                                "help me with the low",
                                                "help me with my low",
                                                "glucagon",
                                                "ambulance",
                                                "paramedic",
                                                "passed out",
                                                "unconscious",
                                                "found me",
                                                "gave me juice",
                                                "gave me sugar",
                                                "gave me glucose",
                                                "gave me sweets",
                                                "give me juice",
                                                "give me sugar",
                                                "give me glucose",
                                                "give me sweets",
                                                "brought me juice",
                                                "brought me sugar",
                                                "got me juice"};

// The phrase begins a word; that word may go on.
bool tells_any(std::string_view text, std::span<const std::string_view> phrases) {
    const std::string small = small_letters(text);
    return std::ranges::any_of(phrases, [&](std::string_view phrase) {
        for (auto at = small.find(phrase); at != std::string::npos;
             at = small.find(phrase, at + 1)) {
            if (at == 0 || small[at - 1] < 'a' || small[at - 1] > 'z') {
                return true;
            }
        }
        return false;
    });
}

}  // namespace

bool tells_an_emergency(const DiaryEntry& entry) {
    return tells_any(entry.text, emergencies) ||
           (entry.kind != DiaryKind::movement && tells_any(entry.text, breathing));
}

bool tells_a_ketoacidosis_sign(const DiaryEntry& entry) {
    return tells_any(entry.text, ketoacidosis) ||
           (entry.kind != DiaryKind::movement && tells_any(entry.text, breathless));
}

bool tells_losing_fluids(const DiaryEntry& entry) {
    return entry.kind != DiaryKind::movement && tells_any(entry.text, losing_fluids);
}

bool tells_of_being_ill(const DiaryEntry& entry) {
    return tells_losing_fluids(entry) ||
           std::ranges::any_of(eaten_words(entry.text), [](const EatenWord& word) {
               return std::ranges::find(ill, word.text) != ill.end();
           });
}

bool tells_of_help(const DiaryEntry& entry) {
    return tells_any(entry.text, help);
}

bool tells_an_alarm(std::string_view text) {
    return tells_any(text, emergencies) || tells_any(text, help);
}

}  // namespace tracewright
