#include "coaching/ladder_rules.hpp"
#include "findings/edge_words.hpp"
#include "findings/finger_prick_words.hpp"
#include "findings/wording.hpp"
#include "measures/time_in_bands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace tracewright {

namespace {

// From memory, as the ladder says: 300 and 240 mg/dL with their trade counterparts.
constexpr std::int32_t edge_300[] = {30'000, 1'670};
constexpr std::int32_t edge_240[] = {24'000, 1'330};
constexpr double raised_ketones = 0.6;  // mmol/L; from memory
constexpr std::chrono::hours near_a_ketone{4};
constexpr std::chrono::hours enough_of_a_day{12};

bool above(const Reading& reading, const std::int32_t (&edges)[2]) {
    return reading.limit() == Limit::above ||
           reading.hundredths() > edges[static_cast<std::size_t>(reading.unit())];
}

constexpr const char* whom_today =
    "Tell the client and the prescriber today. Drowsy, vomiting, breathing fast or unable to keep "
    "fluids down: emergency now. Local guidance comes first.";

// A higher hundred of the same day is another event: it asks again.
std::string key_of_a_day_above_300(const Reading& highest, Instant day) {
    const int hundred =
        std::max(300, static_cast<int>(highest.value().in(GlucoseUnit::mg_per_dl) / 100) * 100);
    const std::string kind =
        highest.limit() == Limit::above ? "above_limit" : fmt::format("above_{}", hundred);
    return event_key(kind.c_str(), day);
}

// One event for a day of the client's clock, at its highest reading.
void add_days_above_300(const LadderInput& input, const Wear& wear, std::vector<Escalation>& all) {
    std::map<CivilDate, const Reading*> highest;
    for (const Reading& reading : wear.readings) {
        if (!above_300(reading)) {
            continue;
        }
        const Reading*& day = highest[input.clock.date_at(reading.at)];
        const auto rank = [](const Reading& r) {
            return std::pair{r.limit() == Limit::above, r.value().in(GlucoseUnit::mg_per_dl)};
        };
        if (day == nullptr || rank(reading) > rank(*day)) {
            day = &reading;
        }
    }
    for (const auto& [date, reading] : highest) {
        all.push_back(
            {Rung::same_day, key_of_a_day_above_300(*reading, input.clock.day_of(date).from),
             reading->at,
             fmt::format("above {}, highest of the day {}{} ({})", edge_words(300, input.unit),
                         reading->limit() == Limit::above ? "above " : "",
                         glucose_words(reading->value().in(input.unit), input.unit), wear.label),
             whom_today});
    }
}

void add_finger_pricks_above_300(const LadderInput& input, std::vector<Escalation>& all) {
    for (const DiaryEntry& entry : input.diary) {
        if (entry.kind == DiaryKind::finger_prick && entry.glucose &&
            above_300(Reading{entry.at, *entry.glucose, std::chrono::seconds{1}})) {
            all.push_back({Rung::same_day, event_key("above_300_finger_prick", entry), entry.at,
                           finger_prick_words(entry, input.unit), whom_today});
        }
    }
}

void add_days_mostly_above_250(const LadderInput& input, const Wear& wear,
                               std::vector<Escalation>& all) {
    for (const CivilDay& day : input.clock.days(wear.sensed_span())) {
        const TimeInBands bands = time_in_bands(cut(wear.view(), day.interval()));
        if (bands.sensed() >= enough_of_a_day && bands.share(Band::very_high).value_or(0) > 0.5) {
            all.push_back({Rung::this_week, event_key("mostly_above_250", day.from), day.from,
                           fmt::format("above {} for {} of the {} seen that day ({})",
                                       edge_words(250, input.unit),
                                       hours_and_minutes(bands.in(Band::very_high)),
                                       hours_and_minutes(bands.sensed()), wear.label),
                           "Tell the prescriber this week. With weight loss or thirst, the clinic "
                           "soon. Local guidance comes first."});
        }
    }
}

bool above_240_near(const LadderInput& input, Instant at) {
    const auto near = [&](Instant other) { return std::chrono::abs(other - at) <= near_a_ketone; };
    for (const Wear& wear : input.wears) {
        for (const Reading& reading : wear.readings) {
            if (near(reading.at) && above(reading, edge_240)) {
                return true;
            }
        }
    }
    return std::ranges::any_of(input.diary, [&](const DiaryEntry& entry) {
        return entry.kind == DiaryKind::finger_prick && entry.glucose && near(entry.at) &&
               above(Reading{entry.at, *entry.glucose, std::chrono::seconds{1}}, edge_240);
    });
}

void add_above_240_with_ketones(const LadderInput& input, std::vector<Escalation>& all) {
    for (const DiaryEntry& entry : input.diary) {
        if (entry.kind != DiaryKind::ketones || entry.number.value_or(0) < raised_ketones) {
            continue;
        }
        if (above_240_near(input, entry.at)) {
            all.push_back({Rung::same_day, event_key("above_240_with_ketones", entry), entry.at,
                           fmt::format("above {} with blood ketones of {:.1f} mmol/L",
                                       edge_words(240, input.unit), *entry.number),
                           whom_today});
        }
    }
}

}  // namespace

bool above_300(const Reading& reading) {
    return above(reading, edge_300);
}

std::vector<Escalation> highs_on_the_ladder(const LadderInput& input) {
    std::vector<Escalation> all;
    for (const Wear& wear : input.wears) {
        if (!wear.empty()) {
            add_days_above_300(input, wear, all);
            add_days_mostly_above_250(input, wear, all);
        }
    }
    add_finger_pricks_above_300(input, all);
    add_above_240_with_ketones(input, all);
    return all;
}

}  // namespace tracewright
