#include "diary/medicine_text.hpp"

#include "diary/medicine_words.hpp"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <map>

namespace tracewright {

namespace {

using Words = std::vector<std::string>;

struct Spelt {
    Words words;
    const Medicine* medicine;
};

// Every spelling by its first word, the longest first.
const std::map<std::string, std::vector<Spelt>>& spellings_by_first_word() {
    static const auto by_first = [] {
        std::map<std::string, std::vector<Spelt>> result;
        for (const MedicineSpelling& spelling : medicine_spellings()) {
            Words words = medicine_words(spelling.spelling);
            const Medicine* medicine = medicine_named(spelling.name);
            if (!words.empty() && medicine != nullptr) {
                std::string first = words.front();
                result[first].push_back({std::move(words), medicine});
            }
        }
        for (auto& [first, all] : result) {
            std::stable_sort(all.begin(), all.end(), [](const Spelt& a, const Spelt& b) {
                return a.words.size() > b.words.size();
            });
        }
        return result;
    }();
    return by_first;
}

// The longest spelling that stands at `from`, or null.
const Spelt* spelling_at(const Words& words, std::size_t from) {
    const auto found = spellings_by_first_word().find(words[from]);
    if (found == spellings_by_first_word().end()) {
        return nullptr;
    }
    for (const Spelt& spelt : found->second) {
        if (spelt.words.size() <= words.size() - from &&
            std::equal(spelt.words.begin(), spelt.words.end(),
                       words.begin() + static_cast<std::ptrdiff_t>(from))) {
            return &spelt;
        }
    }
    return nullptr;
}

bool parts_clauses(const std::string& word) {
    return word == "," || word == "+" || word == "and" || word == "or";
}

// One stretch of the text between commas, plus signs and 'and'.
struct Clause {
    bool names = false;
    std::vector<std::string> standing;
    std::vector<std::string> foreign;
};

bool has_any(const Words& words, std::initializer_list<const char*> wanted) {
    return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
        return std::any_of(wanted.begin(), wanted.end(),
                           [&](const char* one) { return word == one; });
    });
}

bool has_phrase(const Words& words, std::initializer_list<const char*> phrase) {
    return std::search(words.begin(), words.end(), phrase.begin(), phrase.end(),
                       [](const std::string& a, const char* b) { return a == b; }) != words.end();
}

bool says_none(const Words& words) {
    static const std::array<Words, 12> forms{{{"none"},
                                              {"nothing"},
                                              {"no", "medicines"},
                                              {"no", "medicine"},
                                              {"no", "medication"},
                                              {"no", "meds"},
                                              {"no", "tablets"},
                                              {"not", "on", "anything"},
                                              {"none", "at", "all"},
                                              {"no", "medicines", "at", "all"},
                                              {"takes", "none"},
                                              {"taking", "none"}}};
    Words bare;
    std::copy_if(words.begin(), words.end(), std::back_inserter(bare),
                 [](const std::string& word) { return word != ","; });
    return std::find(forms.begin(), forms.end(), bare) != forms.end();
}

bool says_change(const Words& words) {
    const bool stops = has_any(words, {"stopped", "paused", "off", "longer"});
    const bool starts =
        has_any(words, {"started", "restarted"}) || has_phrase(words, {"back", "on"});
    const bool moves = has_any(words, {"up", "down", "from"}) && has_any(words, {"to"});
    return has_any(words, {"switched", "swapped", "changed", "increased", "decreased", "reduced",
                           "raised", "lowered", "halved", "doubled", "instead"}) ||
           (stops && starts) || moves;
}

bool says_stop(const Words& words) {
    return has_any(words, {"stopped", "discontinued", "quit", "paused"}) ||
           has_phrase(words, {"no", "longer"}) || has_phrase(words, {"ran", "out"}) ||
           has_phrase(words, {"came", "off"});
}

bool says_unsure(const Words& words) {
    return has_any(words, {"forgot", "missed", "wants", "next", "might", "maybe", "will", "would",
                           "planned", "thinking", "never", "wife's", "husband's", "mother's",
                           "father's", "wife", "husband", "his", "her"}) ||
           has_phrase(words, {"not", "on"}) || has_phrase(words, {"not", "taking"});
}

// Something of how much, how often or what for: it is being taken.
bool says_taking(const Words& words) {
    return has_any(words, {"daily", "bd",     "od",        "tds",   "qds",   "bid",   "tid",
                           "qid",   "weekly", "once",      "twice", "nocte", "mane",  "every",
                           "for",   "since",  "injection", "jab",   "take",  "takes", "taking"}) ||
           std::any_of(words.begin(), words.end(),
                       [](const std::string& w) { return is_amount(w); });
}

MedicineDoing doing_of(const Words& words, const MedicineText& text) {
    if (text.says_none) {
        return MedicineDoing::unclear;
    }
    if (says_unsure(words)) {
        return MedicineDoing::unclear;
    }
    if (says_change(words)) {
        return MedicineDoing::changed;
    }
    if (says_stop(words)) {
        const bool plain = text.recognised.size() == 1 && !text.unrecognised;
        return plain ? MedicineDoing::stopped : MedicineDoing::unclear;
    }
    return !text.recognised.empty() || says_taking(words) ? MedicineDoing::take
                                                          : MedicineDoing::unclear;
}

void take(MedicineText& text, const Medicine* medicine) {
    if (std::find(text.recognised.begin(), text.recognised.end(), medicine) ==
        text.recognised.end()) {
        text.recognised.push_back(medicine);
    }
}

void close(MedicineText& text, Clause& clause) {
    auto& words = text.unrecognised_words;
    words.insert(words.end(), clause.foreign.begin(), clause.foreign.end());
    if (!clause.names && clause.foreign.empty()) {
        words.insert(words.end(), clause.standing.begin(), clause.standing.end());
    }
    clause = {};
}

}  // namespace

const char* name_of(MedicineDoing doing) {
    switch (doing) {
        case MedicineDoing::take:
            return "take";
        case MedicineDoing::stopped:
            return "stopped";
        case MedicineDoing::changed:
            return "changed";
        case MedicineDoing::unclear:
            return "unclear";
    }
    return "unclear";
}

MedicineText medicine_text(std::string_view written) {
    MedicineText text;
    text.written = std::string(written);
    const Words words = medicine_words(written);
    text.says_none = says_none(words);
    Clause clause;
    for (std::size_t i = 0; i < words.size() && !text.says_none;) {
        const std::string& word = words[i];
        if (const Spelt* spelt = spelling_at(words, i)) {
            take(text, spelt->medicine);
            clause.names = true;
            i += spelt->words.size();
            continue;
        }
        if (parts_clauses(word)) {
            close(text, clause);
        } else if (stands_for_medicine(word)) {
            clause.standing.push_back(word);
        } else if (word != "/" && !is_amount(word) && !is_plain_word(word)) {
            clause.foreign.push_back(word);
        }
        ++i;
    }
    close(text, clause);
    text.unrecognised =
        !text.unrecognised_words.empty() || (text.recognised.empty() && !text.says_none);
    text.doing = doing_of(words, text);
    return text;
}

}  // namespace tracewright
