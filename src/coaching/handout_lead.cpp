#include "coaching/handout_lead.hpp"

#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

namespace tracewright {

namespace {

// A client can do one thing at once: who rings today tells the clinic the rest. Ours.
constexpr std::size_t most_sentences = 2;

// In the order in which they stand.
enum class Lead { emergency, very_low, very_high, same_day, this_week };

Lead lead_of(const Escalation& escalation) {
    const std::string& event = escalation.event;
    if (escalation.rung == Rung::emergency_now) {
        return Lead::emergency;
    }
    if (event.starts_with("very_low")) {
        return Lead::very_low;
    }
    if (event.starts_with("above_")) {
        return Lead::very_high;
    }
    return escalation.rung == Rung::same_day ? Lead::same_day : Lead::this_week;
}

const char* part_of_day(WallTime at, const HandoutWords& words) {
    const auto hour =
        std::chrono::floor<std::chrono::hours>(at - std::chrono::floor<std::chrono::days>(at));
    return hour.count() < 6    ? words.at_night
           : hour.count() < 12 ? words.in_the_morning
           : hour.count() < 18 ? words.in_the_afternoon
                               : words.in_the_evening;
}

std::string sentence_of(const StandingEscalation& standing, Lead lead, const ZoneHistory& clock,
                        const HandoutWords& words) {
    const std::string day = day_words(clock.date_at(standing.escalation.at), clock.writing());
    const auto filled = [&](const char* sentence) {
        return fmt::format(fmt::runtime(sentence), day,
                           part_of_day(clock.wall_time(standing.escalation.at), words));
    };
    switch (lead) {
        case Lead::emergency:
            return filled(words.can_be_an_emergency);
        case Lead::very_low:
            return filled(standing.answer.empty() ? words.very_low : words.very_low_answered);
        case Lead::very_high:
            return filled(words.very_high);
        case Lead::same_day:
            return filled(words.same_day);
        case Lead::this_week:
            break;
    }
    return words.this_week;
}

}  // namespace

std::vector<std::string> handout_lead(const PaperClient& client, const HandoutWords& words) {
    std::array<const StandingEscalation*, 5> latest{};
    for (const StandingEscalation& standing : client.escalations) {
        const Lead lead = lead_of(standing.escalation);
        // A finger-prick may come after the sensor's last reading.
        const bool of_these_days = standing.escalation.at >= client.review.trace.window.from &&
                                   standing.escalation.at <= client.review.input.as_of;
        if (!standing.answer.empty() && (lead != Lead::very_low || !of_these_days)) {
            continue;
        }
        const StandingEscalation*& of_kind = latest[static_cast<std::size_t>(lead)];
        // What nobody answered goes before what somebody did, then the later.
        const auto rank = [](const StandingEscalation& one) {
            return std::pair{one.answer.empty(), one.escalation.at};
        };
        if (of_kind == nullptr || rank(standing) > rank(*of_kind)) {
            of_kind = &standing;
        }
    }
    std::vector<std::string> sentences;
    for (std::size_t i = 0; i < latest.size(); ++i) {
        // What is not named by what it is adds nothing to a sentence that already says whom to
        // ring.
        const bool named = static_cast<Lead>(i) < Lead::same_day;
        if (latest[i] != nullptr && sentences.size() < most_sentences &&
            (named || sentences.empty())) {
            sentences.push_back(
                sentence_of(*latest[i], static_cast<Lead>(i), client.review.input.zones, words));
        }
    }
    return sentences;
}

}  // namespace tracewright
