#include "coaching/ladder_rules.hpp"
#include "findings/edge_words.hpp"
#include "findings/wording.hpp"
#include "measures/episodes.hpp"
#include "trace/counted_trace.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

// Our own rule (safety rule 10).
constexpr double fall_mg_per_dl = 27;
constexpr std::chrono::hours week{7 * 24};
constexpr double share_to_compare = 0.7;

constexpr const char* whom_a_letter =
    "A letter to the prescriber now: glucose fell while a medicine that can cause lows is taken. "
    "Local guidance comes first.";

struct WeekMean {
    double mean = 0;
    bool enough = false;
};

WeekMean mean_of(const TraceView& view) {
    double sum = 0;
    double seconds = 0;
    for_each_standing(view, [&](const Reading& reading, std::chrono::seconds stood) {
        sum += reading.value().in(GlucoseUnit::mg_per_dl) * static_cast<double>(stood.count());
        seconds += static_cast<double>(stood.count());
    });
    return {seconds > 0 ? sum / seconds : 0,
            seconds >= share_to_compare * static_cast<double>(std::chrono::seconds{week}.count())};
}

// Weeks back to back from the last reading on, each against the one before it.
void add_falling_weeks(const LadderInput& input, std::vector<Escalation>& all) {
    const CountedTrace trace = counted_trace(input.wears);
    if (trace.readings.empty()) {
        return;
    }
    for (Instant end = trace.window.to; end - week > trace.window.from; end -= week) {
        const WeekMean later = mean_of(cut(trace.view(), {end - week, end}));
        const WeekMean before = mean_of(cut(trace.view(), {end - 2 * week, end - week}));
        const MedicineRisks risks = input.medicines.risks_in({end - week, end});
        if (later.enough && before.enough && before.mean - later.mean >= fall_mg_per_dl &&
            (risks.insulin || risks.secretagogue)) {
            const double shown =
                converted(before.mean - later.mean, GlucoseUnit::mg_per_dl, input.unit);
            all.push_back({Rung::this_week, event_key("weekly_mean_down", end), end,
                           fmt::format("the week's average is down by {} against the week before",
                                       glucose_words(shown, input.unit)),
                           whom_a_letter});
        }
    }
}

void add_lows_after_a_change(const LadderInput& input, std::vector<Escalation>& all) {
    if (!input.change_agreed) {
        return;
    }
    for (const Wear& wear : input.wears) {
        for (const Episode& episode :
             wear.empty() ? std::vector<Episode>{} : episodes_of(wear.view())) {
            const MedicineRisks risks = input.medicines.risks_at(episode.from);
            if (episode.kind == EpisodeKind::low && episode.from >= *input.change_agreed &&
                (risks.insulin || risks.secretagogue)) {
                all.push_back({Rung::this_week, event_key("low_after_change", episode.from),
                               episode.from,
                               fmt::format("a low stretch (below {}) after a change was agreed",
                                           edge_words(70, input.unit)),
                               whom_a_letter});
            }
        }
    }
}

}  // namespace

std::vector<Escalation> improvement_on_the_ladder(const LadderInput& input) {
    std::vector<Escalation> all;
    add_falling_weeks(input, all);
    add_lows_after_a_change(input, all);
    return all;
}

}  // namespace tracewright
