#include "serve/trust_json.hpp"

#include "findings/first_review.hpp"
#include "findings/wording.hpp"
#include "trace/left_out.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

// Of which both answers are told.
constexpr std::array compared{"in_range", "average", "lows"};

struct Stretch {
    Interval span{};
    std::string name;
    std::string seen;
    std::string wear;  ///< empty: of all
    bool marked = true;
    bool countable = true;                ///< an implausible value never is
    const StretchRecord* told = nullptr;  ///< the coach's word on it
};

// With what is counted after all; what a coach marked once, whatever the wears.
std::vector<Stretch> stretches_of(const ReviewInput& input, Interval window,
                                  const std::vector<StretchRecord>& records) {
    SuspectRules untold = input.suspect;
    untold.told.clear();
    std::vector<Stretch> stretches;
    for (const Wear& wear : input.wears) {
        for (const Mark& mark : suspect_stretches(wear, untold)) {
            stretches.push_back({mark.stretch, name_of(mark.reason), mark.seen, wear.label, true,
                                 mark.reason != MarkReason::implausible});
        }
    }
    for (const StretchRecord& record : records) {
        const ToldStretch& one = record.told;
        if (one.suspect) {
            if (intersection(one.stretch, window).length().count() > 0) {
                stretches.push_back(
                    {one.stretch, name_of(MarkReason::told), one.why, "", true, false, &record});
            }
            continue;
        }
        for (Stretch& stretch : stretches) {
            if (stretch.countable && stretch.told == nullptr && stretch.span == one.stretch) {
                stretch.marked = false;
                stretch.told = &record;
            }
        }
    }
    std::ranges::stable_sort(stretches, {}, [](const Stretch& one) { return one.span.from; });
    return stretches;
}

ReviewInput left_out(const ReviewInput& input, const std::vector<Stretch>& stretches) {
    ReviewInput without = input;
    for (Wear& wear : without.wears) {
        std::vector<Interval> marked;
        for (const Stretch& stretch : stretches) {
            if (stretch.marked && (stretch.wear.empty() || stretch.wear == wear.label)) {
                marked.push_back(stretch.span);
            }
        }
        wear = without_stretches(std::move(wear), marked);
    }
    std::erase_if(without.wears, [](const Wear& wear) { return wear.empty(); });
    return without;
}

std::string sentence_of(const FirstReview& review, std::string_view code) {
    const auto found = std::ranges::find(review.findings, code, &Finding::code);
    return found == review.findings.end() ? "Nothing can be said of it." : found->sentence;
}

Json both_answers(const FirstReview& with, const FirstReview& without) {
    Json list = Json::array();
    for (const char* code : compared) {
        list.push_back({{"code", code},
                        {"with_all", sentence_of(with, code)},
                        {"without_marked", sentence_of(without, code)}});
    }
    return list;
}

// Sensors worn at once: which one is counted, and why.
Json at_once(const FirstReview& review) {
    const ZoneHistory& clock = review.input.zones;
    Json list = Json::array();
    for (const CountedTrace::Choice& choice : review.trace.choices) {
        Json others = Json::array();
        for (const std::size_t other : choice.not_counted) {
            others.push_back(review.input.wears[other].label);
        }
        const Wear& counted = review.input.wears[choice.counted];
        list.push_back(
            {{"from", day_and_time(clock.wall_time(choice.overlap.from), clock.writing())},
             {"to", day_and_time(clock.wall_time(choice.overlap.to), clock.writing())},
             {"counted", counted.label},
             {"why", choice.why},
             {"chosen", counted.chosen},
             {"others", std::move(others)}});
    }
    return list;
}

// How far the sensors agree, with what can't be told from that.
Json agreement_of(const FirstReview& review) {
    const auto found =
        std::ranges::find(review.findings, std::string_view("two_sensors"), &Finding::code);
    if (found == review.findings.end()) {
        return {};
    }
    std::string words = found->sentence;
    for (const Caveat& caveat : found->caveats) {
        words += " " + caveat.sentence;
    }
    return words;
}

}  // namespace

Json json_of_trust(const ReviewInput& input, const std::vector<StretchRecord>& records) {
    const ZoneHistory clock = input.zones;
    const FirstReview with = first_review(input);
    const auto stretches = stretches_of(input, with.trace.window, records);
    const FirstReview without = first_review(left_out(input, stretches));
    Json json;
    const auto trust = std::ranges::find(with.findings, std::string_view("trust"), &Finding::code);
    json["sentence"] = trust == with.findings.end() ? "" : trust->sentence;
    json["caveats"] = Json::array();
    if (trust != with.findings.end()) {
        for (const Caveat& caveat : trust->caveats) {
            json["caveats"].push_back(caveat.sentence);
        }
    }
    json["needs"] = Json::array();
    for (const Sufficiency& one : with.sufficiency) {
        json["needs"].push_back({{"enough", one.enough}, {"sentence", one.sentence}});
    }
    json["stretches"] = Json::array();
    for (const Stretch& one : stretches) {
        json["stretches"].push_back(
            {{"from", day_and_time(clock.wall_time(one.span.from), clock.writing())},
             {"to", day_and_time(clock.wall_time(one.span.to), clock.writing())},
             {"begins", one.span.from.time_since_epoch().count()},
             {"ends", one.span.to.time_since_epoch().count()},
             {"name", one.name},
             {"seen", one.seen},
             {"wear", one.wear.empty() ? Json() : Json(one.wear)},
             {"marked", one.marked},
             {"countable", one.countable},
             {"telling", one.told != nullptr ? Json(one.told->id) : Json()},
             {"why", one.told != nullptr ? Json(one.told->told.why) : Json()}});
    }
    json["at_once"] = at_once(with);
    json["agreement"] = agreement_of(with);
    json["answers"] = both_answers(with, without);
    json["last_reading"] = with.last_reading;
    return json;
}

}  // namespace tracewright
