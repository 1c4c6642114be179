#include "intake/message_kind.hpp"

#include "diary/written_words.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

namespace tracewright {

namespace {

struct KindWord {
    std::string_view word;
    DiaryKind kind;
};

constexpr std::array kind_words{KindWord{"ketones", DiaryKind::ketones},
                                KindWord{"ketone", DiaryKind::ketones},
                                KindWord{"fingerprick", DiaryKind::finger_prick},
                                KindWord{"prick", DiaryKind::finger_prick},
                                KindWord{"pricked", DiaryKind::finger_prick},
                                KindWord{"glucose", DiaryKind::finger_prick},
                                KindWord{"bg", DiaryKind::finger_prick},
                                KindWord{"mmol/l", DiaryKind::finger_prick},
                                KindWord{"mmol", DiaryKind::finger_prick},
                                KindWord{"mg/dl", DiaryKind::finger_prick},
                                KindWord{"sensor", DiaryKind::sensor},
                                KindWord{"dizzy", DiaryKind::symptom},
                                KindWord{"shaky", DiaryKind::symptom},
                                KindWord{"shaking", DiaryKind::symptom},
                                KindWord{"trembling", DiaryKind::symptom},
                                KindWord{"sweaty", DiaryKind::symptom},
                                KindWord{"sweating", DiaryKind::symptom},
                                KindWord{"headache", DiaryKind::symptom},
                                KindWord{"nausea", DiaryKind::symptom},
                                KindWord{"nauseous", DiaryKind::symptom},
                                KindWord{"thirsty", DiaryKind::symptom},
                                KindWord{"faint", DiaryKind::symptom},
                                KindWord{"blurred", DiaryKind::symptom},
                                KindWord{"hypo", DiaryKind::symptom},
                                KindWord{"drowsy", DiaryKind::symptom},
                                KindWord{"palpitations", DiaryKind::symptom},
                                KindWord{"pain", DiaryKind::symptom},
                                KindWord{"fever", DiaryKind::illness},
                                KindWord{"flu", DiaryKind::illness},
                                KindWord{"ill", DiaryKind::illness},
                                KindWord{"sick", DiaryKind::illness},
                                KindWord{"cough", DiaryKind::illness},
                                KindWord{"vomiting", DiaryKind::illness},
                                KindWord{"vomited", DiaryKind::illness},
                                KindWord{"diarrhoea", DiaryKind::illness},
                                KindWord{"diarrhea", DiaryKind::illness},
                                KindWord{"infection", DiaryKind::illness},
                                KindWord{"antibiotics", DiaryKind::medicine},
                                KindWord{"tablet", DiaryKind::medicine},
                                KindWord{"tablets", DiaryKind::medicine},
                                KindWord{"pill", DiaryKind::medicine},
                                KindWord{"pills", DiaryKind::medicine},
                                KindWord{"medicine", DiaryKind::medicine},
                                KindWord{"meds", DiaryKind::medicine},
                                KindWord{"injected", DiaryKind::medicine},
                                KindWord{"injection", DiaryKind::medicine},
                                KindWord{"injections", DiaryKind::medicine},
                                KindWord{"steroid", DiaryKind::medicine},
                                KindWord{"steroids", DiaryKind::medicine},
                                KindWord{"cortisone", DiaryKind::medicine},
                                KindWord{"slept", DiaryKind::sleep},
                                KindWord{"sleep", DiaryKind::sleep},
                                KindWord{"asleep", DiaryKind::sleep},
                                KindWord{"nap", DiaryKind::sleep},
                                KindWord{"napped", DiaryKind::sleep},
                                KindWord{"bed", DiaryKind::sleep},
                                KindWord{"woke", DiaryKind::sleep},
                                KindWord{"walk", DiaryKind::movement},
                                KindWord{"walked", DiaryKind::movement},
                                KindWord{"walking", DiaryKind::movement},
                                KindWord{"run", DiaryKind::movement},
                                KindWord{"ran", DiaryKind::movement},
                                KindWord{"running", DiaryKind::movement},
                                KindWord{"jog", DiaryKind::movement},
                                KindWord{"jogged", DiaryKind::movement},
                                KindWord{"cycled", DiaryKind::movement},
                                KindWord{"cycling", DiaryKind::movement},
                                KindWord{"bike", DiaryKind::movement},
                                KindWord{"swim", DiaryKind::movement},
                                KindWord{"swam", DiaryKind::movement},
                                KindWord{"swimming", DiaryKind::movement},
                                KindWord{"gym", DiaryKind::movement},
                                KindWord{"yoga", DiaryKind::movement},
                                KindWord{"pilates", DiaryKind::movement},
                                KindWord{"steps", DiaryKind::movement},
                                KindWord{"danced", DiaryKind::movement},
                                KindWord{"dancing", DiaryKind::movement},
                                KindWord{"gardening", DiaryKind::movement},
                                KindWord{"gardened", DiaryKind::movement},
                                KindWord{"hike", DiaryKind::movement},
                                KindWord{"hiked", DiaryKind::movement},
                                KindWord{"exercise", DiaryKind::movement},
                                KindWord{"exercised", DiaryKind::movement},
                                KindWord{"workout", DiaryKind::movement},
                                KindWord{"stairs", DiaryKind::movement},
                                KindWord{"tennis", DiaryKind::movement},
                                KindWord{"football", DiaryKind::movement},
                                KindWord{"stressed", DiaryKind::mood},
                                KindWord{"stress", DiaryKind::mood},
                                KindWord{"stressful", DiaryKind::mood},
                                KindWord{"tense", DiaryKind::mood},
                                KindWord{"worried", DiaryKind::mood},
                                KindWord{"anxious", DiaryKind::mood},
                                KindWord{"tired", DiaryKind::mood},
                                KindWord{"relaxed", DiaryKind::mood},
                                KindWord{"calm", DiaryKind::mood},
                                KindWord{"happy", DiaryKind::mood},
                                KindWord{"sad", DiaryKind::mood},
                                KindWord{"angry", DiaryKind::mood},
                                KindWord{"mood", DiaryKind::mood},
                                KindWord{"felt", DiaryKind::mood},
                                KindWord{"feeling", DiaryKind::mood},
                                KindWord{"feel", DiaryKind::mood},
                                KindWord{"ate", DiaryKind::meal},
                                KindWord{"eaten", DiaryKind::meal},
                                KindWord{"drank", DiaryKind::meal},
                                KindWord{"snacked", DiaryKind::meal}};

struct TwoWords {
    std::string_view first;
    std::string_view second;
};

constexpr std::array ill_in_two_words{TwoWords{"loose", "stools"}, TwoWords{"loose", "stool"},
                                      TwoWords{"loose", "bowels"}, TwoWords{"watery", "stools"},
                                      TwoWords{"the", "runs"},     TwoWords{"threw", "up"},
                                      TwoWords{"throwing", "up"}};

constexpr std::array beginnings{
    KindWord{"walked", DiaryKind::movement},   KindWord{"ran", DiaryKind::movement},
    KindWord{"jogged", DiaryKind::movement},   KindWord{"cycled", DiaryKind::movement},
    KindWord{"swam", DiaryKind::movement},     KindWord{"hiked", DiaryKind::movement},
    KindWord{"danced", DiaryKind::movement},   KindWord{"exercised", DiaryKind::movement},
    KindWord{"gardened", DiaryKind::movement}, KindWord{"slept", DiaryKind::sleep},
    KindWord{"napped", DiaryKind::sleep},      KindWord{"woke", DiaryKind::sleep},
    KindWord{"felt", DiaryKind::mood},         KindWord{"feeling", DiaryKind::mood},
    KindWord{"took", DiaryKind::medicine},     KindWord{"injected", DiaryKind::medicine},
    KindWord{"had", DiaryKind::meal},          KindWord{"ate", DiaryKind::meal},
    KindWord{"drank", DiaryKind::meal}};

// What is asked for first: a symptom stands beside a mood's "felt", a medicine beside food's "had".
constexpr std::array order{DiaryKind::ketones, DiaryKind::finger_prick, DiaryKind::sensor,
                           DiaryKind::symptom, DiaryKind::illness,      DiaryKind::medicine,
                           DiaryKind::sleep,   DiaryKind::movement,     DiaryKind::mood,
                           DiaryKind::meal,    DiaryKind::note};

bool is_ill_in_two(std::string_view first, std::string_view second) {
    return std::ranges::any_of(ill_in_two_words, [&](const TwoWords& one) {
        return one.first == first && one.second == second;
    });
}

template <std::size_t N>
std::optional<DiaryKind> kind_in(const std::array<KindWord, N>& words, std::string_view word) {
    const auto found = std::find_if(words.begin(), words.end(),
                                    [&](const KindWord& one) { return one.word == word; });
    return found == words.end() ? std::nullopt : std::optional(found->kind);
}

}  // namespace

std::optional<DiaryKind> kind_of_word(std::string_view word) {
    return slot_of_word(word).empty() ? kind_in(kind_words, word) : DiaryKind::meal;
}

std::optional<DiaryKind> kind_begun_by(std::string_view word) {
    return kind_in(beginnings, word);
}

std::optional<DiaryKind> kind_of_words(std::span<const MessageWord> words) {
    std::string before;
    std::vector<DiaryKind> told;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool ill = i + 1 < words.size() && is_ill_in_two(words[i].text, words[i + 1].text);
        if (const auto kind =
                ill ? std::optional(DiaryKind::illness) : kind_of_word(words[i].text)) {
            const bool well = *kind == DiaryKind::illness && denies_what_follows(before);
            told.push_back(well ? DiaryKind::note : *kind);
        }
        before += words[i].text + " ";
    }
    const auto first = std::ranges::find_if(
        order, [&](DiaryKind kind) { return std::ranges::find(told, kind) != told.end(); });
    return first == order.end() ? std::nullopt : std::optional(*first);
}

bool is_vaccination(std::span<const MessageWord> words) {
    constexpr std::array own_words{"vaccination", "vaccine", "vaccinated", "jab", "booster"};
    constexpr std::array of_flu{"injection", "injected", "shot"};
    const auto any_of = [&](const auto& wanted) {
        return std::ranges::any_of(words, [&](const MessageWord& word) {
            return std::ranges::find(wanted, word.text) != wanted.end();
        });
    };
    return any_of(own_words) || (any_of(std::array{"flu"}) && any_of(of_flu));
}

std::string_view slot_of_word(std::string_view word) {
    if (word == "breakfast" || word == "lunch" || word == "dinner" || word == "snack") {
        return word;
    }
    return word == "supper" ? "dinner" : word == "snacks" ? "snack" : "";
}

bool leaves_out(std::string_view word) {
    constexpr std::array words{"no", "skipped", "missed", "nothing", "none", "without", "skip"};
    return std::any_of(words.begin(), words.end(), [&](const char* one) { return word == one; });
}

bool is_alcohol(std::string_view word) {
    constexpr std::array drinks{"beer",   "beers",     "wine",     "wines", "gin",
                                "vodka",  "whisky",    "rum",      "cider", "cocktail",
                                "sherry", "champagne", "prosecco", "lager", "spirits"};
    return std::any_of(drinks.begin(), drinks.end(), [&](const char* one) { return word == one; });
}

}  // namespace tracewright
