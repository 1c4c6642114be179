#include "render/plan_json.hpp"

#include "coaching/agreed_change.hpp"
#include "time/day_text.hpp"

#include <array>

namespace tracewright {

namespace {

Json day_of(const std::optional<CivilDate>& day) {
    return day ? Json(day_text(*day)) : Json(nullptr);
}

Json telling_of(const std::optional<NormalTelling>& told) {
    return told ? Json{{"mean", told->mean}, {"deviation", told->deviation}} : Json(nullptr);
}

Json json_of_candidate(const RankedCandidate& candidate) {
    constexpr std::array says = {"worth_agreeing", "find_out_first", "not_worth_it"};
    const CandidateChange& change = *candidate.change;
    const bool sized = candidate.both && change.cause;
    Json json = {
        {"code", change.code},
        {"words", change.words},
        {"says", says.at(static_cast<std::size_t>(candidate.says))},
        {"hours", sized ? Json(candidate.hours) : Json(nullptr)},
        {"hours95", sized ? Json{candidate.hours95[0], candidate.hours95[1]} : Json(nullptr)},
        {"probability", sized ? Json(candidate.probability) : Json(nullptr)},
        {"room_on", candidate.days_touched},
        {"read", candidate.days_read},
        {"effort", name_of(effort_of(change.effort))},
        {"trial", *change.trial != '\0' ? Json(change.trial) : Json(nullptr)}};
    json["own"] = candidate.own ? json_of(candidate.own->finding) : Json(nullptr);
    json["others"] = {{"conflict", candidate.others.conflict},
                      {"prior", telling_of(candidate.others.prior)},
                      {"rows", Json::array()}};
    for (const PublishedEffect& row : candidate.others.rows) {
        json["others"]["rows"].push_back(row.sentence());
    }
    json["together"] = telling_of(candidate.both);
    json["unit"] = facts_of(change.outcome).unit == OutcomeUnit::hours ? "h" : "mg/dL";
    json["cautions"] = candidate.cautions;
    json["sentences"] = candidate.sentences;
    return json;
}

Json json_of_check(const std::optional<CheckPlan>& check) {
    if (!check) {
        return nullptr;
    }
    const auto number = [](std::optional<int> value) {
        return value ? Json(*value) : Json(nullptr);
    };
    return {{"by", check->by},
            {"days", number(check->days)},
            {"pairs", number(check->pairs)},
            {"words", check->words}};
}

}  // namespace

Json json_of_change(const AgreedChange& change) {
    return {{"words", change.words},
            {"agreed_on", day_of(change.agreed_on)},
            {"check_on", day_of(change.check_on)},
            {"when", change.when},
            {"where", change.where},
            {"how_often", change.how_often},
            {"if_not", change.if_not},
            {"how_checked", change.how_checked},
            {"check_days", change.check_days ? Json(*change.check_days) : Json(nullptr)},
            {"stop_when", change.stop_when},
            {"outcome", name_of(change.outcome)},
            {"ended_on", day_of(change.ended_on)}};
}

Json json_of_plan(const Plan& plan, const ClientFacts& facts, const ReviewInput& input,
                  Licence licence) {
    constexpr std::array says = {"agree_on_one", "find_out_first", "no_change_yet", "one_is_agreed",
                                 "nothing_offered"};
    Json json = {{"version", plan_json_version},
                 {"seed", input.seed},
                 {"says", says.at(static_cast<std::size_t>(plan.says))},
                 {"sentence", plan.sentence},
                 {"worth_hours", plan.worth_hours}};
    json["ranked"] = Json::array();
    for (const RankedCandidate& candidate : plan.ranked) {
        json["ranked"].push_back(json_of_candidate(candidate));
    }
    json["closed"] = Json::array();
    for (const ClosedCandidate& closed : plan.closed) {
        Json gates = Json::array();
        for (const Gate& gate : closed.gates) {
            gates.push_back({{"sentence", in_scope(gate.for_coach, licence)},
                             {"opens", opens(gate)},
                             {"letter", calls_for_letter(gate)}});
        }
        json["closed"].push_back({{"code", closed.change->code},
                                  {"words", closed.change->words},
                                  {"gates", std::move(gates)}});
    }
    json["check"] = json_of_check(plan.check);
    json["agreed"] = facts.agreed_change ? json_of_change(*facts.agreed_change) : Json(nullptr);
    json["agreed_closed"] = gates_for_coach(plan.agreed_closed, licence);
    json["earlier"] = Json::array();
    for (const AgreedChange& change : facts.earlier_changes) {
        json["earlier"].push_back(json_of_change(change));
    }
    return json;
}

}  // namespace tracewright
