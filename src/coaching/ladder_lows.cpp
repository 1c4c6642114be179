#include "coaching/ladder_rules.hpp"
#include "findings/edge_words.hpp"
#include "findings/wording.hpp"
#include "measures/episodes.hpp"
#include "measures/time_in_bands.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::chrono::hours seven_days{7 * 24};

bool below_very_low(const Glucose& glucose) {
    return band_of(Reading{{}, glucose, std::chrono::seconds{1}}) == Band::very_low;
}

std::string whom_for_a_low(const LadderInput& input, Instant at) {
    std::string whom =
        "Tell the client and the prescriber today, with date and time. A finger-prick when it "
        "feels "
        "low, and if it comes again, tells more.";
    if (const std::string medicines = lows_by_medicine(input, at); !medicines.empty()) {
        whom += " " + medicines;
    }
    return whom + " Local guidance comes first.";
}

std::string lowest_words(const Reading& extreme, GlucoseUnit unit) {
    return fmt::format("lowest {}{}", extreme.limit() == Limit::below ? "below " : "",
                       glucose_words(extreme.value().in(unit), unit));
}

void add_very_lows_of(const LadderInput& input, const Wear& wear, std::vector<Escalation>& all) {
    const auto add = [&](const char* kind, Instant at, std::string what) {
        all.push_back({Rung::same_day, event_key(kind, at), at,
                       std::move(what) + fmt::format(" ({})", wear.label),
                       whom_for_a_low(input, at)});
    };
    for (const Episode& episode : episodes_of(wear.view())) {
        if (episode.kind == EpisodeKind::very_low) {
            add(episode.end_not_seen ? "very_low_end_not_seen" : "very_low", episode.from,
                fmt::format("{} below {}, {}{}", hours_and_minutes(episode.lasted),
                            edge_words(54, input.unit), lowest_words(episode.extreme, input.unit),
                            episode.end_not_seen ? ", end not seen" : ""));
        }
    }
    for (const Episode& cut : cut_short_very_lows(wear.view())) {
        add("very_low_end_not_seen", cut.from,
            fmt::format("below {}, {}, {} seen, {}", edge_words(54, input.unit),
                        lowest_words(cut.extreme, input.unit), hours_and_minutes(cut.lasted),
                        cut.end_not_seen ? "end not seen" : "start not seen"));
    }
    for (const Reading& reading : wear.readings) {
        if (reading.implausible() && below_very_low(reading.value())) {
            add("very_low_value", reading.at,
                fmt::format("a value of {}, too low to be believed and too low to be passed over",
                            glucose_words(reading.value().in(input.unit), input.unit)));
        }
    }
}

// Low episodes of all wears, one for each start, in order.
std::vector<Instant> lows_in_order(const LadderInput& input) {
    std::vector<Episode> lows;
    for (const Wear& wear : input.wears) {
        for (const Episode& episode : episodes_of(wear.view())) {
            if (episode.kind == EpisodeKind::low) {
                lows.push_back(episode);
            }
        }
    }
    std::ranges::sort(lows, {}, &Episode::from);
    std::vector<Instant> starts;
    Instant end_of_last{};
    for (const Episode& low : lows) {
        if (starts.empty() || low.from >= end_of_last) {  // two sensors see one low
            starts.push_back(low.from);
        }
        end_of_last = std::max(end_of_last, low.to);
    }
    return starts;
}

// Weeks that begin with a low, one after the other. Another low in the week is another event: it
// asks again.
void add_repeated_lows(const LadderInput& input, std::vector<Escalation>& all) {
    const auto lows = lows_in_order(input);
    for (auto first = lows.begin(); first != lows.end();) {
        const auto end =
            std::find_if(first, lows.end(), [&](Instant at) { return at - *first >= seven_days; });
        const Instant last = *std::prev(end);
        const MedicineRisks risks = input.medicines.risks_at(last);
        if (end - first >= 2 && (risks.insulin || risks.secretagogue)) {
            all.push_back({Rung::same_day, event_key("lows_in_7_days", last), last,
                           fmt::format("the last of {} low stretches (below {}) within 7 days",
                                       end - first, edge_words(70, input.unit)),
                           whom_for_a_low(input, last)});
        }
        first = end;
    }
}

bool tells_of_help(const std::string& text) {
    for (const char* words : {"needed help", "helped me", "glucagon", "ambulance", "passed out",
                              "unconscious", "found me"}) {
        if (text.find(words) != std::string::npos) {
            return true;
        }
    }
    return false;
}

}  // namespace

std::vector<Escalation> lows_on_the_ladder(const LadderInput& input) {
    std::vector<Escalation> all;
    for (const Wear& wear : input.wears) {
        if (!wear.empty()) {
            add_very_lows_of(input, wear, all);
        }
    }
    for (const DiaryEntry& entry : input.diary) {
        if (entry.kind == DiaryKind::finger_prick && entry.glucose &&
            below_very_low(*entry.glucose)) {
            all.push_back(
                {Rung::same_day, event_key("very_low_finger_prick", entry.at), entry.at,
                 "a finger-prick of " + glucose_words(entry.glucose->in(input.unit), input.unit),
                 whom_for_a_low(input, entry.at)});
        }
        if (tells_of_help(entry.text)) {
            all.push_back({Rung::same_day, event_key("needed_help", entry.at), entry.at,
                           "the diary speaks of help by another person: '" + entry.text + "'",
                           whom_for_a_low(input, entry.at)});
        }
    }
    add_repeated_lows(input, all);
    return all;
}

}  // namespace tracewright
