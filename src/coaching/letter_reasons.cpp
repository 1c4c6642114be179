#include "coaching/letter_reasons.hpp"

#include "coaching/restricted_eating.hpp"
#include "coaching/type_signs.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <string_view>

namespace tracewright {

namespace {

constexpr std::chrono::days lately{14};

// Kinds of events in the order of what a prescriber must read first; what is not named stands
// between the very highs and the improvement.
constexpr std::array<std::string_view, 4> first_kinds = {"very_low", "needed_help",
                                                         "lows_in_7_days", "above_"};
constexpr std::array<std::string_view, 5> last_kinds = {"low_after_change", "weekly_mean_down",
                                                        "mostly_above_250", "weight_down", "dizzy"};

std::size_t place_of(const Escalation& escalation) {
    if (escalation.rung == Rung::emergency_now) {
        return 0;
    }
    const auto starts = [&](std::string_view kind) { return escalation.event.starts_with(kind); };
    for (std::size_t i = 0; i < first_kinds.size(); ++i) {
        if (starts(first_kinds[i])) {
            return 1 + i;
        }
    }
    for (std::size_t i = 0; i < last_kinds.size(); ++i) {
        if (starts(last_kinds[i])) {
            return 2 + first_kinds.size() + i;
        }
    }
    return 1 + first_kinds.size();
}

std::string kind_of(const Escalation& escalation) {
    const std::string kind = escalation.event.substr(0, escalation.event.find('@'));
    return kind.starts_with("very_low") ? "very_low" : kind.starts_with("above_") ? "above" : kind;
}

bool concerns(const PaperClient& client, const StandingEscalation& one, const LetterAbout& about) {
    if (about.escalation) {
        return one.number == *about.escalation;
    }
    return one.answer.empty() || client.review.input.as_of - one.escalation.at <= lately;
}

// All of one kind, the latest first. A prescriber can look up what is dated: of many the latest
// three and the first.
std::string dates_of_kind(const PaperClient& client,
                          const std::vector<const StandingEscalation*>& kind) {
    constexpr std::size_t dated = 3;
    const auto when = [&](const StandingEscalation* one) {
        return day_and_time(client.review.input.zones.wall_time(one->escalation.at),
                            client.review.input.zones.writing());
    };
    const bool many = kind.size() > dated;
    std::string text = fmt::format(" In all {} of this kind{}", kind.size(),
                                   many ? ", of which the latest three are dated here: " : ": ");
    for (std::size_t i = 0; i < std::min(kind.size(), dated); ++i) {
        text += (i == 0 ? "" : ", ") + when(kind[i]);
    }
    return text + (many ? ". The first was " + when(kind.back()) + "." : ".");
}

// Where a very low is the letter's reason, its list of medicines that can cause lows belongs to it.
std::string reason_of(const PaperClient& client,
                      const std::vector<const StandingEscalation*>& kind) {
    const StandingEscalation& latest = *kind.front();
    std::string reason = escalation_sentence(latest.escalation, client.review.input.zones,
                                             latest.first_seen, client.review.input.as_of);
    if (kind.size() > 1) {
        reason += dates_of_kind(client, kind);
    }
    if (!latest.answer.empty()) {
        reason += " Done so far: " + latest.answer + ".";
    }
    return reason;
}

void add_escalations(const PaperClient& client, const LetterAbout& about, LetterReasons& letter) {
    std::vector<const StandingEscalation*> all;
    std::map<std::string, std::vector<const StandingEscalation*>> kinds;
    for (const StandingEscalation& one : client.escalations) {
        if (concerns(client, one, about)) {
            all.push_back(&one);
        }
    }
    std::ranges::stable_sort(all, [](const StandingEscalation* a, const StandingEscalation* b) {
        const auto place_a = place_of(a->escalation);
        const auto place_b = place_of(b->escalation);
        return place_a != place_b ? place_a < place_b : a->escalation.at > b->escalation.at;
    });
    for (const StandingEscalation* one : all) {
        kinds[kind_of(one->escalation)].push_back(one);
    }
    for (const StandingEscalation* one : all) {
        const auto& kind = kinds[kind_of(one->escalation)];
        if (kind.front() == one) {
            letter.reasons.push_back(reason_of(client, kind));
        }
    }
    if (!letter.reasons.empty()) {
        letter.asked.emplace_back(
            "Please look at this, and tell the client and me what is to be done, if anything.");
    }
}

// What is asked of the prescriber where a gate is closed; empty: a question to the client alone.
const char* question_of(GateKind kind) {
    switch (kind) {
        case GateKind::may_be_under_18:
            return "I take on nobody under 18: who looks after the client?";
        case GateKind::pregnancy:
            return "No goal or plan of mine is set in pregnancy or while planning one: please "
                   "lead.";
        case GateKind::names_a_medicine:
            return "The words name a medicine or supplement, or how it is taken. I do not advise "
                   "on it and leave it to "
                   "you.";
        case GateKind::type_to_be_checked:
            return "Has the type been checked?";
        case GateKind::sglt2:
        case GateKind::insulin:
        case GateKind::secretagogue:
            return "May it be done beside the medicines taken, and within which limits?";
        case GateKind::medicines_not_answered:
            return "Which medicines does the client take? My list is not complete.";
        case GateKind::eating:
        case GateKind::eating_signs:
            return "I set no food change and offer a referral: is one under way?";
        case GateKind::frail:
            return "Is the client well enough for it?";
        case GateKind::eyes:
            return "When were the eyes last checked, and is a check needed before glucose falls?";
        case GateKind::lows_with_medicine:
            return "There were lows beside a medicine that can cause them: may the client walk "
                   "after meals?";
        case GateKind::beta_blocker:
        case GateKind::feet:
        case GateKind::chest:
            return "May the client walk after meals, and within which limits?";
        case GateKind::what_it_does:
            break;
    }
    return "";
}

const char* not_known_yet(GateKind kind) {
    switch (kind) {
        case GateKind::may_be_under_18:
            return "the year of birth";
        case GateKind::pregnancy:
            return "whether the client is pregnant or planning to be";
        case GateKind::type_to_be_checked:
            return "which type the client was told";
        case GateKind::medicines_not_answered:
            return "all the medicines taken";
        case GateKind::eating:
            return "the answer to a screen on eating";
        case GateKind::frail:
            return "whether the client is frail";
        case GateKind::eyes:
            return "the state of the eyes and their last check";
        case GateKind::feet:
            return "whether there are numb feet or a foot wound";
        case GateKind::chest:
            return "whether there are chest symptoms";
        case GateKind::lows_with_medicine:
        case GateKind::beta_blocker:
        case GateKind::sglt2:
        case GateKind::insulin:
        case GateKind::secretagogue:
        case GateKind::eating_signs:
        case GateKind::names_a_medicine:
        case GateKind::what_it_does:
            break;
    }
    return "all the medicines taken";
}

// For the prescriber, without the coach's own to-do. Empty: the question alone says it.
std::string closed_words(const Gate& gate) {
    switch (gate.kind) {
        case GateKind::eating:
            return "A screen on eating was positive.";
        case GateKind::eating_signs:
            return "Signs around eating were seen.";
        case GateKind::names_a_medicine:
        case GateKind::pregnancy:  // told by itself, whatever the letter is about
            return {};
        case GateKind::type_to_be_checked:
            return "What was seen does not fit the usual course.";
        default:
            return gate.for_coach.record;
    }
}

std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (const std::string& part : parts) {
        text += (text.empty() ? "" : "; ") + part;
    }
    return text;
}

void add_once(const std::string& sentence, std::vector<std::string>& sentences) {
    if (!sentence.empty() && std::ranges::find(sentences, sentence) == sentences.end()) {
        sentences.push_back(sentence);
    }
}

void add_type(const PaperClient& client, LetterReasons& letter) {
    const CareInput care = client.care();
    const auto signs = type_signs(care);
    if (!are_for_the_prescriber(care, signs)) {
        return;
    }
    std::vector<std::string> seen;
    for (const TypeSignSeen& sign : signs) {
        seen.push_back(sign.seen);
    }
    letter.reasons.push_back("This does not fit the usual course: " + joined(seen) + ".");
    add_once(question_of(GateKind::type_to_be_checked), letter.asked);
    letter.answer_opens = true;
}

void add_pregnancy(const PaperClient& client, LetterReasons& letter) {
    switch (client.facts.cautions.pregnancy) {
        case Pregnancy::not_answered:
        case Pregnancy::no:
            return;
        case Pregnancy::pregnant:
            letter.reasons.emplace_back("The client is pregnant, as I was told.");
            break;
        case Pregnancy::planning:
            letter.reasons.emplace_back("The client plans a pregnancy, as I was told.");
            break;
        case Pregnancy::unsure:
            letter.reasons.emplace_back("The client may be pregnant and is not sure.");
            break;
    }
    add_once(question_of(GateKind::pregnancy), letter.asked);
}

void add_little_food(const PaperClient& client, LetterReasons& letter) {
    // What to do is for the coach; the prescriber is told what was seen.
    if (const auto told = restricted_eating_to_tell(client.care())) {
        letter.reasons.push_back(told->seen);
        letter.asked.emplace_back(
            "May the client go on eating like this beside the medicines taken?");
        letter.answer_opens = true;
    }
}

void add_gates(const PaperClient& client, const LetterAbout& about, LetterReasons& letter) {
    const std::string named =
        about.words.empty() ? name_of(*about.proposed) : "\"" + about.words + "\"";
    const auto gates = gates_before_offer(*about.proposed, about.words, client.care());
    if (gates.empty()) {
        return;
    }
    // Such words are not quoted: a letter proposes no dose, no medicine and no supplement.
    if (std::ranges::find(gates, GateKind::names_a_medicine, &Gate::kind) != gates.end()) {
        letter.reasons.emplace_back(
            "Something was thought of that touches a medicine, how it is taken, or a supplement. "
            "That is not mine to propose: the client will ask you.");
        return;
    }
    letter.reasons.push_back("The client and I think of " + named +
                             ". Before it is set, this is open:");
    std::vector<std::string> open;
    for (const Gate& gate : gates) {
        if (gate.open_question) {
            add_once(not_known_yet(gate.kind), open);
        } else {
            add_once(closed_words(gate), letter.reasons);
            add_once(question_of(gate.kind), letter.asked);
        }
        letter.answer_opens = letter.answer_opens || gate.prescriber_opens ||
                              gate.kind == GateKind::type_to_be_checked;
    }
    if (!open.empty()) {
        letter.reasons.push_back("Not known to me yet: " + joined(open) + ".");
        letter.asked.emplace_back("What do you know of that?");
    }
}

}  // namespace

const char* name_of(Proposed proposed) {
    switch (proposed) {
        case Proposed::low_carbohydrate:
            return "less carbohydrate (below 130 g a day)";
        case Proposed::fasting:
            return "more than 12 hours without food";
        case Proposed::meal_skipping:
            return "leaving out a meal";
        case Proposed::weight_loss:
            return "losing weight";
        case Proposed::food_change:
            return "a change of food";
        case Proposed::walking:
            return "walking after meals";
        case Proposed::other:
            break;
    }
    return "a change of habit";
}

std::string closed_since_words(const std::vector<Gate>& gates) {
    std::vector<std::string> told;
    for (const Gate& gate : gates) {
        if (gate.kind == GateKind::pregnancy) {
            add_once("The client is pregnant or may be: the maternity or diabetes clinic leads.",
                     told);
        } else if (gate.kind == GateKind::names_a_medicine) {
            add_once("Its words touch a medicine, which is never a change of mine.", told);
        } else if (gate.kind != GateKind::what_it_does) {
            add_once(closed_words(gate), told);
        }
    }
    std::string words;
    for (const std::string& sentence : told) {
        words += (words.empty() ? "" : " ") + sentence;
    }
    return words;
}

LetterReasons letter_reasons(const PaperClient& client, const LetterAbout& about) {
    LetterReasons letter;
    add_escalations(client, about, letter);
    add_pregnancy(client, letter);
    if (!about.escalation) {
        if (about.proposed) {
            add_gates(client, about, letter);
        }
        add_type(client, letter);
        add_little_food(client, letter);
    }
    return letter;
}

}  // namespace tracewright
