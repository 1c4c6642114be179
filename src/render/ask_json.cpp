#include "render/ask_json.hpp"

#include "time/day_text.hpp"

#include <cmath>

namespace tracewright {

namespace {

const char* code_of(DriverGate gate) {
    switch (gate) {
        case DriverGate::open:
            return "open";
        case DriverGate::too_few:
            return "too_few";
        case DriverGate::too_many_drivers:
            return "too_many_causes";
        case DriverGate::flat_outcome:
            return "flat_outcome";
        case DriverGate::no_contrast:
            return "no_contrast";
        case DriverGate::inseparable:
            return "inseparable";
    }
    return "";
}

// Effects of others and of both are told in the unit shown.
class Shown {
  public:
    Shown(Outcome outcome, GlucoseUnit unit)
        : glucose_(facts_of(outcome).unit == OutcomeUnit::glucose), unit_(unit) {}
    double value(double of) const {
        return glucose_ ? converted(of, GlucoseUnit::mg_per_dl, unit_) : of;
    }
    Json telling(const std::optional<NormalTelling>& of) const {
        if (!of) {
            return nullptr;
        }
        return {{"mean", value(of->mean)}, {"deviation", value(of->deviation)}};
    }
    const char* unit() const { return glucose_ ? name_of(unit_) : "h"; }

  private:
    bool glucose_;
    GlucoseUnit unit_;
};

Json number_or_null(double value) {
    return std::isfinite(value) ? Json(value) : Json(nullptr);
}

Json json_of(const QuestionFinding& told, const QuestionAnswers& answers, const Shown& shown) {
    Json json = tracewright::json_of(told.finding);
    const DriverResult& result = told.result;
    json["cause"] = facts_of(told.cause).code;
    json["change"] = facts_of(told.cause).change;
    json["gate"] = code_of(result.gate);
    json["probability_beyond"] = result.beyond;
    json["probability_within"] = result.within;
    json["p"] = result.p;
    json["p_adjusted"] = answers.scan ? told.scan_p : result.p_adjusted;
    json["variance_inflation"] = number_or_null(result.vif);
    json["more_needed"] = result.more_rows ? Json(*result.more_rows) : Json(nullptr);
    json["others"] = Json::array();
    for (const PublishedEffect& effect : told.others.rows) {
        json["others"].push_back({{"habit", effect.habit},
                                  {"outcome", effect.outcome},
                                  {"effect", effect.effect},
                                  {"units", effect.units},
                                  {"spread", effect.spread},
                                  {"people", effect.people},
                                  {"source", effect.source},
                                  {"confirmed", effect.confirmed}});
    }
    json["others_prior"] = shown.telling(told.others.prior);
    json["both"] = shown.telling(told.both);
    return json;
}

Json json_of(const DriverFit& fit, const QuestionAnswers& answers, const Shown& shown) {
    Json json = {{"condition_index", number_or_null(fit.largest_condition_index)},
                 {"correlation_of_neighbours", fit.correlation},
                 {"explained", fit.shares.all},
                 {"shared", fit.shares.shared},
                 {"unique", fit.shares.unique},
                 {"pair_correlation", fit.pair_correlation}};
    json["pair"] = Json::array();
    if (fit.pair_correlation != 0) {
        for (const std::size_t i : fit.pair) {
            json["pair"].push_back(facts_of(answers.findings[i].cause).code);
        }
    }
    json["together"] = nullptr;
    if (fit.joint) {
        json["together"] = {
            {"value", shown.value(*fit.joint)},
            {"unit", shown.unit()},
            {"interval95", {shown.value(fit.joint95[0]), shown.value(fit.joint95[1])}}};
    }
    return json;
}

}  // namespace

Json json_of_answers(const QuestionAnswers& answers, const ReviewInput& input) {
    const OutcomeFacts& facts = facts_of(answers.outcome);
    const Shown shown(answers.outcome, input.unit);
    Json json = {
        {"version", ask_json_version},
        {"about", {{"code", facts.code}, {"words", facts.words}, {"means", facts.means}}},
        {"scan", answers.scan},
        {"worth_acting_on", {{"value", shown.value(answers.worth)}, {"unit", shown.unit()}}},
        {"used", answers.rows},
        {"seed", input.seed},
        {"zone", input.zones.zone_at(input.as_of).name()}};
    json["left_out"] = Json::array();
    for (const LeftOut& one : answers.left_out) {
        json["left_out"].push_back({{"date", day_text(one.date)}, {"why", one.why}});
    }
    json["findings"] = Json::array();
    for (const QuestionFinding& told : answers.findings) {
        json["findings"].push_back(json_of(told, answers, shown));
    }
    json["fit"] = answers.fit ? json_of(*answers.fit, answers, shown) : Json(nullptr);
    return json;
}

}  // namespace tracewright
