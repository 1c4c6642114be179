#include "coaching/ladder_rules.hpp"
#include "coaching/weight.hpp"
#include "diary/written_words.hpp"
#include "findings/edge_words.hpp"
#include "findings/wording.hpp"
#include "measures/episodes.hpp"
#include "measures/time_in_bands.hpp"
#include "trace/counted_trace.hpp"

#include <fmt/format.h>

#include <optional>
#include <span>

namespace tracewright {

namespace {

// Our own rule (safety rule 10).
constexpr double fall_mg_per_dl = 27;
constexpr std::size_t week = 7;
constexpr double share_to_compare = 0.7;
constexpr double leeway = 1e-6;  // a fall of 27 is one, whatever the binary neighbours

constexpr const char* whom_a_letter =
    "A letter to the prescriber now: glucose fell while a medicine that can cause lows is taken. "
    "Local guidance comes first.";
constexpr const char* whom_a_pressure_letter =
    "A letter to the prescriber: it came while blood-pressure tablets are taken, or while the list "
    "of medicines is not answered. Local guidance comes first.";

// A day of glucose: mg/dL times seconds, and seconds seen.
struct DaySum {
    CivilDay day;
    double sum = 0;
    double seen = 0;
};

std::vector<DaySum> day_sums_of(const LadderInput& input) {
    const CountedTrace trace = counted_trace(input.wears);
    std::vector<DaySum> sums;
    for (const CivilDay& day : input.clock.days(trace.window)) {
        DaySum& one = sums.emplace_back(DaySum{day});
        for_each_standing(cut(trace.view(), intersection(day.interval(), trace.window)),
                          [&](const Reading& reading, std::chrono::seconds stood) {
                              const auto weight = static_cast<double>(stood.count());
                              one.sum += weight * reading.value().in(GlucoseUnit::mg_per_dl);
                              one.seen += weight;
                          });
    }
    return sums;
}

// Empty where less than 70 % of the seven days was seen.
std::optional<double> mean_of_week(std::span<const DaySum> days) {
    double sum = 0;
    double seen = 0;
    double all = 0;
    for (const DaySum& day : days) {
        sum += day.sum;
        seen += day.seen;
        all += static_cast<double>(day.day.length().count());
    }
    return seen > 0 && seen >= share_to_compare * all ? std::optional(sum / seen) : std::nullopt;
}

std::optional<double> fall_of_week(std::span<const DaySum> fortnight) {
    const auto before = mean_of_week(fortnight.first(week));
    const auto later = mean_of_week(fortnight.last(week));
    return before && later ? std::optional(*before - *later) : std::nullopt;
}

// Seven whole days against the seven before, day after day. Days running are one event, at the
// first of them, so that later data don't ask about the same fall again; after a week of it,
// another.
void add_falling_weeks(const LadderInput& input, std::vector<Escalation>& all) {
    const std::vector<DaySum> days = day_sums_of(input);
    std::size_t told_at = 0;
    bool running = false;
    for (std::size_t i = 2 * week; i <= days.size(); ++i) {
        const auto fall = fall_of_week(std::span(days).subspan(i - 2 * week, 2 * week));
        const CivilDay& last = days[i - 1].day;
        const MedicineRisks risks = input.medicines.risks_in({days[i - week].day.from, last.to});
        const bool fell =
            fall && *fall >= fall_mg_per_dl - leeway && (risks.insulin || risks.secretagogue);
        if (fell && (!running || i - told_at >= week)) {
            told_at = i;
            all.push_back(
                {Rung::this_week, event_key("weekly_mean_down", last.from), last.from,
                 fmt::format("the average of the seven days to {} is down by {} against "
                             "the seven before",
                             day_words(last.date, input.clock.writing()),
                             glucose_words(converted(*fall, GlucoseUnit::mg_per_dl, input.unit),
                                           input.unit)),
                 whom_a_letter});
        }
        running = fell;
    }
}

// A fall of weight and dizziness have no reading beside them: dates of the practice's own facts.
void add_weight_down(const LadderInput& input, std::vector<Escalation>& all) {
    const auto weights = weights_of(input.labs);
    const auto fall = weight_fall(weights, CivilDate::max());
    if (!fall) {
        return;
    }
    const CivilDay day = input.clock.day_of(fall->to.on);
    const MedicineRisks risks = input.medicines.risks_in(day.interval());
    const bool pressure = on_blood_pressure_tablets(input.medicines, day.interval());
    if (!risks.insulin && !risks.secretagogue && !pressure) {
        return;
    }
    all.push_back({Rung::this_week, event_key("weight_down", day.from), day.from,
                   fmt::format("weight down by {} since {}", percent_words(fall->percent),
                               full_date(fall->from.on, input.clock.writing())),
                   risks.insulin || risks.secretagogue ? whom_a_letter : whom_a_pressure_letter});
}

void add_dizziness(const LadderInput& input, std::vector<Escalation>& all) {
    for (const DiaryEntry& entry : input.diary) {
        if (tells_how_they_are(entry) &&
            speaks_of(entry, {"dizz", "light-headed", "lightheaded", "light headed", "faint"}) &&
            on_blood_pressure_tablets(input.medicines,
                                      {entry.at, entry.at + std::chrono::seconds{1}})) {
            all.push_back({Rung::this_week, event_key("dizzy", entry), entry.at,
                           "the diary says '" + entry.text + "', on blood-pressure tablets",
                           whom_a_pressure_letter});
        }
    }
}

void add_lows_after_a_change(const LadderInput& input, std::vector<Escalation>& all) {
    if (!input.change_agreed) {
        return;
    }
    const auto add = [&](Instant at, const std::string& what) {
        const MedicineRisks risks = input.medicines.risks_at(at);
        if (at >= *input.change_agreed && (risks.insulin || risks.secretagogue)) {
            all.push_back({Rung::this_week, event_key("low_after_change", at), at,
                           fmt::format("{} (below {}) after a change was agreed", what,
                                       edge_words(70, input.unit)),
                           whom_a_letter});
        }
    };
    for (const Wear& wear : input.wears) {
        for (const Episode& episode :
             wear.empty() ? std::vector<Episode>{} : episodes_of(wear.view())) {
            if (episode.kind == EpisodeKind::low) {
                add(episode.from, "a low stretch");
            }
        }
    }
    for (const DiaryEntry& entry : input.diary) {
        if (entry.kind == DiaryKind::finger_prick && entry.glucose &&
            band_of(Reading{entry.at, *entry.glucose, std::chrono::seconds{1}}) < Band::in_range) {
            add(entry.at, "a low finger-prick");
        }
    }
}

}  // namespace

std::vector<Escalation> improvement_on_the_ladder(const LadderInput& input) {
    std::vector<Escalation> all;
    add_falling_weeks(input, all);
    add_lows_after_a_change(input, all);
    add_weight_down(input, all);
    add_dizziness(input, all);
    return all;
}

}  // namespace tracewright
