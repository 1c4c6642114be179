#include "serve/trial_json.hpp"

#include "coaching/gates.hpp"
#include "coaching/trial_report.hpp"
#include "findings/question_sentences.hpp"
#include "findings/wording.hpp"
#include "time/day_text.hpp"

#include <fmt/format.h>

#include <array>

namespace tracewright {

namespace {

constexpr std::array done_names = {"not_known", "a", "b", "neither"};  // in the order of ArmDone

const std::string& arm(const Trial& trial, bool a) {
    return a ? trial.a : trial.b;
}

Json number_or_null(std::optional<int> value) {
    return value ? Json(*value) : Json(nullptr);
}

// One way of reading the pairs, worded.
Json words_of(const PairsRead& read, const Trial& trial, GlucoseUnit unit) {
    Json json{{"pairs", read.pairs},
              {"estimate", difference_words(read.estimate, trial.outcome, unit)}};
    const auto interval = [&](const std::optional<std::array<double, 2>>& ends) {
        return ends ? Json(interval_words(*ends, trial.outcome, unit)) : Json(nullptr);
    };
    json["interval"] = interval(read.interval95);
    json["t_interval"] = interval(read.t95);
    return json;
}

}  // namespace

Json json_of_trial_plan(const TrialPlan& plan, const TrialWish& wish, Licence licence,
                        WayOfWriting way) {
    const TrialTemplate& made_from = *wish.made_from;
    Json json{{"question", made_from.question},
              {"gates", gates_for_coach(plan.gates, licence)},
              {"refused_because",
               plan.refused_because.empty() ? Json(nullptr) : Json(plan.refused_because)},
              {"can_be_drawn", plan.trial.has_value()},
              {"sentences", plan.gates.empty() ? plan.sentences : std::vector<std::string>{}}};
    json["pairs_needed"] = number_or_null(plan.gates.empty() ? plan.length.blocks : std::nullopt);
    json["pairs"] = plan.trial ? Json(plan.trial->blocks.size()) : Json(nullptr);
    json["days"] = plan.trial
                       ? Json(date_range(plan.trial->first_day(), plan.trial->last_day(), way))
                       : Json();
    return json;
}

Json json_of_kept_trial(const KeptTrial& kept, CivilDate today, const std::vector<Gate>& gates,
                        Licence licence, WayOfWriting way) {
    const Trial& trial = kept.trial;
    Json json{{"number", kept.number},
              {"question", trial.question},
              {"a", trial.a},
              {"b", trial.b},
              {"state", name_of(state_of(kept, today))},
              {"dates", date_range(trial.first_day(), trial.last_day(), way)},
              {"seed", trial.seed},
              {"pairs", trial.blocks.size()},
              {"not_told", not_told(kept, today).size()},
              {"gates", gates_for_coach(gates, licence)}};
    const auto now = allotted_a(trial, today);
    // Behind a closed gate no arm is to be done.
    json["today"] =
        now && goes_on(kept, today) && gates.empty() ? Json(arm(trial, *now)) : Json(nullptr);
    json["stopped"] = kept.stopped_on ? Json{{"on", day_words(*kept.stopped_on, way)},
                                             {"because", kept.stopped_because}}
                                      : Json(nullptr);
    json["days"] = Json::array();
    int pair = 0;
    for (const TrialBlock& block : trial.blocks) {
        ++pair;
        for (const CivilDate day : block.days) {
            const bool a = day == block.day_of_a();
            const auto told = kept.done.find(day);
            json["days"].push_back(
                {{"day", day_text(day)},
                 {"label", day_words(day, way)},
                 {"pair", pair},
                 {"allotted", a ? "a" : "b"},
                 {"has_come", day <= today},
                 {"done", told == kept.done.end()
                              ? Json(nullptr)
                              : Json(done_names.at(static_cast<std::size_t>(told->second)))}});
        }
    }
    return json;
}

Json json_of_trial_reading(const KeptTrial& kept, const TrialReading& reading,
                           const ReviewInput& input) {
    const Trial& trial = kept.trial;
    Json days = Json::array();
    for (const TrialDay& day : reading.days) {
        days.push_back(
            {{"label", day_words(day.date, input.zones.writing())},
             {"allotted", day.allotted_a ? "a" : "b"},
             {"done", done_names.at(static_cast<std::size_t>(day.done))},
             {"value",
              day.value ? Json(size_words(*day.value, trial.outcome, input.unit)) : Json(nullptr)},
             {"none_because", day.value ? Json(nullptr) : Json(day.none_because)}});
    }
    Json json{{"ended", reading.ended}, {"days", std::move(days)}};
    json["as_allotted"] =
        reading.ended ? words_of(reading.as_allotted, trial, input.unit) : Json(nullptr);
    if (reading.ended) {
        json["as_allotted"]["p"] = fmt::format("{:.4f}", reading.as_allotted.p);
        json["as_allotted"]["orders"] =
            fmt::format("{} of {}", reading.as_allotted.at_least, reading.as_allotted.patterns);
    }
    json["as_done"] =
        reading.as_done ? words_of(*reading.as_done, trial, input.unit) : Json(nullptr);
    json["finding"] = json_of(reading.finding);
    json["report"] = Json::array();
    for (const ReportItem& item : report_items(trial, reading, input)) {
        json["report"].push_back({{"item", item.item}, {"text", item.text}});
    }
    return json;
}

}  // namespace tracewright
