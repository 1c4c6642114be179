#include "coaching/ladder_rules.hpp"
#include "diary/alarm_words.hpp"
#include "findings/disputed_low_words.hpp"
#include "findings/edge_words.hpp"
#include "findings/finger_prick_words.hpp"
#include "findings/wording.hpp"
#include "measures/episodes.hpp"
#include "measures/time_in_bands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace tracewright {

namespace {

constexpr std::chrono::hours seven_days{7 * 24};
// A finger-prick within a low that a sensor sees, or soon after another, is the same low.
constexpr std::chrono::minutes one_low{60};

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
    for (const DisputedLow& low : disputed_very_lows(wear)) {
        add("very_low_disputed", low.stretch.from, disputed_low_words(low, input.unit));
    }
    for (const Reading& reading : wear.readings) {
        if (reading.implausible() && below_very_low(reading.value())) {
            add("very_low_value", reading.at,
                fmt::format("a value of {}, too low to be believed and too low to be passed over",
                            glucose_words(reading.value().in(input.unit), input.unit)));
        }
    }
}

bool below_low(const Glucose& glucose) {
    return band_of(Reading{{}, glucose, std::chrono::seconds{1}}) < Band::in_range;
}

// Lows of all wears and finger-pricks, one for each start, in order.
std::vector<Instant> lows_in_order(const LadderInput& input) {
    std::vector<Interval> lows;
    for (const Wear& wear : input.wears) {
        for (const Episode& episode : episodes_of(wear.view())) {
            if (episode.kind == EpisodeKind::low) {
                lows.push_back({episode.from, episode.to});
            }
        }
    }
    for (const DiaryEntry& entry : input.diary) {
        if (entry.kind == DiaryKind::finger_prick && entry.glucose && below_low(*entry.glucose)) {
            lows.push_back({entry.at, entry.at + one_low});
        }
    }
    std::ranges::sort(lows, {}, &Interval::from);
    std::vector<Instant> starts;
    Instant end_of_last{};
    for (const Interval& low : lows) {
        if (starts.empty() || low.from >= end_of_last) {  // two sensors see one low
            starts.push_back(low.from);
        }
        end_of_last = std::max(end_of_last, low.to);
    }
    return starts;
}

bool on_what_causes_lows(const LadderInput& input, Instant at) {
    const MedicineRisks risks = input.medicines.risks_at(at);
    return risks.insulin || risks.secretagogue;
}

// A chain of lows, each within 7 days of the one before, is one event at its latest: another low is
// another event and asks again, whenever it comes.
void add_repeated_lows(const LadderInput& input, std::vector<Escalation>& all) {
    const auto lows = lows_in_order(input);
    std::optional<Escalation> chain;
    int count = 1;
    const auto tell = [&] {
        if (chain) {
            all.push_back(std::move(*chain));
            chain.reset();
        }
    };
    for (std::size_t i = 1; i < lows.size(); ++i) {
        if (lows[i] - lows[i - 1] > seven_days) {
            tell();
            count = 1;
            continue;
        }
        ++count;
        if (on_what_causes_lows(input, lows[i]) || on_what_causes_lows(input, lows[i - 1])) {
            chain = Escalation{
                Rung::same_day, event_key("lows_in_7_days", lows[i]), lows[i],
                fmt::format("the last of {} lows (below {}), each within 7 days of the one before",
                            count, edge_words(70, input.unit)),
                whom_for_a_low(input, lows[i])};
        }
    }
    tell();
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
            all.push_back({Rung::same_day, event_key("very_low_finger_prick", entry), entry.at,
                           finger_prick_words(entry, input.unit), whom_for_a_low(input, entry.at)});
        }
        if (tells_of_help(entry)) {
            all.push_back({Rung::same_day, event_key("needed_help", entry), entry.at,
                           "the diary speaks of help by another person: '" + entry.text + "'",
                           whom_for_a_low(input, entry.at)});
        }
    }
    add_repeated_lows(input, all);
    return all;
}

}  // namespace tracewright
