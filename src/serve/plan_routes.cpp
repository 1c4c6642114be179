#include "coaching/agreed_change.hpp"
#include "coaching/agreeing.hpp"
#include "coaching/proposed_names.hpp"
#include "render/plan_json.hpp"
#include "serve/asked_record.hpp"
#include "serve/change_days.hpp"
#include "serve/request_body.hpp"
#include "serve/route.hpp"
#include "time/day_text.hpp"

#include "store/standing_escalations.hpp"

#include <fmt/format.h>

namespace tracewright {

namespace {

Plan plan_of(const AskedRecord& record) {
    return plan_for(record.input, record.care());
}

Reply plan_reply(Asked& asked) {
    const auto record = asked_record(asked);
    if (!record) {
        return record.error();
    }
    // Without readings nothing is ranked; what was agreed is told all the same.
    Plan plan;
    if (record->input.wears.empty()) {
        plan.says = PlanSays::nothing_offered;
        plan.sentence = "There is no reading yet: nothing can be said of what a change may bring.";
        plan.agreed_closed = gates_since_agreed(record->care());
    } else {
        plan = plan_of(*record);
    }
    Json json = json_of_plan(plan, record->facts, record->input, asked.coach.licence);
    json["day_words"] = days_of_changes_in_words(record->facts);
    json["today"] = day_text(record->today());
    json["last_reading"] = json_of_last_reading(record->input);
    return json_reply(json);
}

Reply not_a_day(const char* field) {
    return problem(422, "not_a_day", "That is no day",
                   fmt::format("{}: found another text, expected a day such as 2026-03-02", field));
}

Reply unfit(std::string_view detail) {
    return problem(422, "unfit_field", "A field does not fit", detail);
}

Reply not_agreed(const NotAgreed& why, Licence licence) {
    if (why.gates.empty()) {
        return problem(422, "not_agreed", "Not agreed", why.sentence);
    }
    std::string sentences;
    for (const Gate& gate : why.gates) {
        const std::string opening = opens(gate);
        sentences += (sentences.empty() ? "" : " ") + in_scope(gate.for_coach, licence) +
                     (opening.empty() ? "" : " " + opening);
    }
    return problem(422, "gate_closed", "Not agreed: a gate is closed", sentences);
}

Reply store_facts(Asked& asked, ClientFacts facts) {
    ClientRecord changed = *asked.client;
    changed.facts = std::move(facts);
    const auto stored = asked.store.change_client(changed, asked.acting);
    const auto looked =
        stored ? record_escalations(asked.store, changed.id, changed.facts, asked.acting) : stored;
    return looked ? no_content() : problem_of(looked.error());
}

// What the client does, from a candidate's code or in other words.
std::optional<Proposed> kind_of(const Fields& fields) {
    const std::string& code = fields.at("candidate");
    if (code.empty()) {
        return proposed_called(fields.at("kind"));
    }
    const CandidateChange* candidate = candidate_called(code);
    return candidate == nullptr ? std::nullopt : std::optional(candidate->proposed);
}

Reply agree_reply(Asked& asked) {
    const auto fields =
        fields_of(asked.request,
                  {"words", "candidate", "kind", "eating", "moves", "medicine", "with_prescriber",
                   "when", "where", "how_often", "if_not", "how_checked", "check_on", "stop_when"});
    if (!fields) {
        return fields.error();
    }
    const auto kind = kind_of(*fields);
    if (!kind) {
        return unfit("found neither a candidate of the plan nor a kind of change");
    }
    const std::string& with_prescriber = fields->at("with_prescriber");
    if (with_prescriber != "yes" && with_prescriber != "no") {
        return unfit("with_prescriber: found another text, expected yes or no");
    }
    const auto eating = eating_change_called(fields->at("eating"));
    const auto moves = answer_called(fields->at("moves"));
    const auto medicine = answer_called(fields->at("medicine"));
    if (!eating || !moves || !medicine) {
        return unfit(eating ? "moves, medicine: found another text, expected yes, no or nothing"
                            : "eating: found another text, expected nothing, as-much, less or an "
                              "empty one");
    }
    AgreedChange change;
    change.words = fields->at("words");
    change.when = fields->at("when");
    change.where = fields->at("where");
    change.how_often = fields->at("how_often");
    change.if_not = fields->at("if_not");
    change.how_checked = fields->at("how_checked");
    change.stop_when = fields->at("stop_when");
    change.kind = *kind;
    change.candidate = fields->at("candidate");
    change.does = {*eating, *moves, *medicine};
    if (const std::string& check_on = fields->at("check_on"); !check_on.empty()) {
        change.check_on = day_of_text(check_on);
        if (!change.check_on) {
            return not_a_day("check_on");
        }
    }
    const auto record = asked_record_with_readings(asked);
    if (!record) {
        return record.error();
    }
    auto agreed = agree_on(std::move(change), with_prescriber == "yes", plan_of(*record),
                           record->input, record->care(), record->today());
    if (!agreed) {
        return not_agreed(agreed.error(), asked.coach.licence);
    }
    ClientFacts facts = record->facts;
    facts.agreed_change = std::move(*agreed);
    return store_facts(asked, std::move(facts));
}

Reply end_reply(Asked& asked) {
    const auto fields = fields_of(asked.request, {"outcome"});
    if (!fields) {
        return fields.error();
    }
    std::optional<ChangeOutcome> outcome;
    for (const auto one : {ChangeOutcome::kept, ChangeOutcome::dropped, ChangeOutcome::changed}) {
        if (fields->at("outcome") == name_of(one)) {
            outcome = one;
        }
    }
    if (!outcome) {
        return unfit("outcome: found another text, expected kept, dropped or changed");
    }
    const auto record = asked_record(asked);
    if (!record) {
        return record.error();
    }
    ClientFacts facts = record->facts;
    if (!end_agreed_change(facts, *outcome, record->today())) {
        return problem(404, "not_found", "There is no such thing", "found no change that goes on");
    }
    return store_facts(asked, std::move(facts));
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/plan", Asks::who_may_look, plan_reply, Holds::never,
     "plan_looked_at"},
    {Method::post, "/api/clients/{handle}/plan/agree", Asks::who_may_change, agree_reply},
    {Method::post, "/api/clients/{handle}/plan/end", Asks::who_may_change, end_reply},
};

}  // namespace

std::span<const Route> plan_routes() {
    return table;
}

}  // namespace tracewright
