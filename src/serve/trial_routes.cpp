#include "coaching/trial_calendar_page.hpp"
#include "coaching/trial_offers.hpp"
#include "render/drawn_paper.hpp"
#include "render/explaining_figures.hpp"
#include "render/trial_calendar_file.hpp"
#include "serve/asked_number.hpp"
#include "serve/asked_record.hpp"
#include "serve/paper_reply.hpp"
#include "serve/request_body.hpp"
#include "serve/route.hpp"
#include "serve/trial_json.hpp"
#include "store/kept_trials.hpp"
#include "store/trial_document.hpp"
#include "time/day_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

tl::unexpected<Reply> unfit(std::string_view detail, std::string_view code = "unfit_field") {
    return tl::make_unexpected(problem(422, code, "A value does not fit", detail));
}

// What is asked for, from the query or a body by the same names; an empty text asks for nothing.
template <typename Text>
tl::expected<TrialWish, Reply> wish_of(const AskedRecord& record, Text text) {
    TrialWish wish;
    wish.made_from = trial_template_called(text("question"));
    if (wish.made_from == nullptr) {
        return unfit("question: found another text, expected the code of a trial");
    }
    if (const std::string pairs = text("pairs"); !pairs.empty()) {
        const auto number = asked_number(pairs);
        if (!number || *number > 1000) {
            return unfit("pairs: found another text, expected a number");
        }
        wish.pairs = static_cast<int>(*number);
    }
    if (const std::string draw = text("draw"); !draw.empty()) {
        if (draw != "coins" && draw != "balanced") {
            return unfit("draw: found another text, expected coins or balanced");
        }
        wish.draw = draw == "balanced" ? Draw::balanced : Draw::fair_coins;
    }
    if (const std::string starts = text("starts"); !starts.empty()) {
        wish.first_day = day_of_text(starts);
        if (!wish.first_day) {
            return unfit("starts: found another text, expected a day such as 2026-03-02",
                         "not_a_day");
        }
    }
    // The lot's seed is the moment of asking: nobody chooses it, and it is told.
    wish.seed = static_cast<std::uint64_t>(record.input.as_of.time_since_epoch().count());
    return wish;
}

tl::expected<std::vector<KeptTrial>, Reply> trials_of(Asked& asked, const AskedRecord& record) {
    auto kept = kept_trials(asked.store, asked.client->id, record.input.zones);
    if (!kept) {
        return tl::make_unexpected(problem_of(kept.error()));
    }
    return std::move(*kept);
}

// The kept trial that the path names.
tl::expected<KeptTrial, Reply> asked_trial(Asked& asked, const AskedRecord& record) {
    auto all = trials_of(asked, record);
    const auto number = asked_number(asked.values[1]);
    if (!all || !number) {
        return tl::make_unexpected(all ? no_such_number() : all.error());
    }
    const auto found = std::ranges::find(*all, *number, &KeptTrial::number);
    return found == all->end()
               ? tl::expected<KeptTrial, Reply>(tl::make_unexpected(no_such_number()))
               : std::move(*found);
}

// That a trial was read at its end takes it off the list of clients. Told once: each telling is a
// change, at which open pages read it again.
Stored<void> note_read(Asked& asked, const KeptTrial& kept, const ZoneHistory& clock) {
    const auto audit = asked.store.audit(asked.client->id);
    if (!audit) {
        return tl::make_unexpected(audit.error());
    }
    const Instant end = clock.day_of(kept.trial.last_day()).interval().to;
    const bool told = std::ranges::any_of(
        *audit, [&](const AuditLine& line) { return line.deed == "trial_read" && line.at >= end; });
    return told ? Stored<void>()
                : asked.store.note_look(asked.client->id, "trial_read", asked.acting);
}

Reply trials_reply(Asked& asked) {
    const auto record = asked_record(asked);
    if (!record) {
        return record.error();
    }
    const auto kept = trials_of(asked, *record);
    if (!kept) {
        return kept.error();
    }
    Json json{{"today", day_text(record->today())},
              {"last_reading", json_of_last_reading(record->input)},
              {"one_goes_on", one_that_goes_on(*kept, record->today()) != nullptr}};
    json["templates"] = Json::array();
    for (const TrialTemplate& one : trial_templates()) {
        const auto gates = gates_before_trial(one, record->care());
        json["templates"].push_back({{"code", one.code},
                                     {"question", one.question},
                                     {"a", one.a},
                                     {"b", one.b},
                                     {"read", facts_of(one.outcome).words},
                                     {"keep_alike", one.keep_alike},
                                     {"gates", gates_for_coach(gates, asked.coach.licence)}});
    }
    json["kept"] = Json::array();
    for (const KeptTrial& one : *kept) {
        json["kept"].push_back(json_of_kept_trial(
            one, record->today(), gates_before_trial_papers(one.trial, record->care()),
            asked.coach.licence, record->input.zones.writing()));
    }
    return json_reply(json);
}

Reply trial_plan_reply(Asked& asked) {
    const auto record = asked_record_with_readings(asked);
    if (!record) {
        return record.error();
    }
    const auto wish =
        wish_of(*record, [&](const char* name) { return asked.target.asked(name).value_or(""); });
    if (!wish) {
        return wish.error();
    }
    const TrialPlan plan = plan_trial(*wish, record->input, record->care());
    return json_reply(
        json_of_trial_plan(plan, *wish, asked.coach.licence, record->input.zones.writing()));
}

Reply keep_trial_reply(Asked& asked) {
    const auto fields = fields_of(asked.request, {"question", "pairs", "draw", "starts"});
    if (!fields) {
        return fields.error();
    }
    const auto record = asked_record_with_readings(asked);
    if (!record) {
        return record.error();
    }
    const auto wish = wish_of(*record, [&](const char* name) { return fields->at(name); });
    const auto kept = trials_of(asked, *record);
    if (!wish || !kept) {
        return wish ? kept.error() : wish.error();
    }
    if (const KeptTrial* other = one_that_goes_on(*kept, record->today()); other != nullptr) {
        return problem(409, "exists", "Another trial goes on",
                       fmt::format("found trial {} that goes on, expected one at a time: with two "
                                   "nothing can be learnt",
                                   other->number));
    }
    const TrialPlan plan = plan_trial(*wish, record->input, record->care());
    if (!plan.gates.empty()) {
        return problem(
            422, "gate_closed", "Not drawn: a gate is closed",
            fmt::format("{}", fmt::join(gates_for_coach(plan.gates, asked.coach.licence), " ")));
    }
    if (!plan.trial) {
        return problem(422, "not_drawn", "The trial is not drawn",
                       plan.refused_because.empty() ? "found no length that these data tell"
                                                    : plan.refused_because);
    }
    const auto number =
        asked.store.keep_trial(asked.client->id, trial_document(*plan.trial, -1), asked.acting);
    return number ? json_reply({{"id", *number}}, 201) : problem_of(number.error());
}

Reply trial_reply(Asked& asked) {
    const auto record = asked_record(asked);
    if (!record) {
        return record.error();
    }
    const auto kept = asked_trial(asked, *record);
    if (!kept) {
        return kept.error();
    }
    TrialReading reading = read_kept(*kept, record->input);
    const auto gates = gates_before_trial_papers(kept->trial, record->care());
    withhold_offer(reading, gates, asked.coach.licence);
    if (reading.ended) {
        if (const auto noted = note_read(asked, *kept, record->input.zones); !noted) {
            return problem_of(noted.error());
        }
    }
    Json json = json_of_kept_trial(*kept, record->today(), gates, asked.coach.licence,
                                   record->input.zones.writing());
    json["reading"] = json_of_trial_reading(*kept, reading, record->input);
    json["figure"] = nullptr;
    if (reading.ended) {
        const std::scoped_lock lock(drawing());
        json["figure"] =
            json_of_figure("pairs", trial_pairs_figure(kept->trial, reading, record->input.unit));
    }
    json["last_reading"] = json_of_last_reading(record->input);
    return json_reply(json);
}

Reply tell_day_reply(Asked& asked) {
    const auto fields = fields_of(asked.request, {"day", "done"});
    if (!fields) {
        return fields.error();
    }
    const auto record = asked_record(asked);
    if (!record) {
        return record.error();
    }
    const auto kept = asked_trial(asked, *record);
    if (!kept) {
        return kept.error();
    }
    const auto day = day_of_text(fields->at("day"));
    if (!day || !allotted_a(kept->trial, *day)) {
        return problem(422, "not_a_day", "That is no day of the trial",
                       "day: found another text, expected one of the trial's days");
    }
    if (*day > record->today()) {
        return problem(422, "unfit_field", "A value does not fit",
                       "found a day that has not come, expected one that has");
    }
    const auto told = asked.store.tell_trial_day(asked.client->id, kept->number, *day,
                                                 fields->at("done"), asked.acting);
    return told ? no_content() : problem_of(told.error());
}

Reply stop_trial_reply(Asked& asked) {
    const auto fields = fields_of(asked.request, {"because"});
    if (!fields) {
        return fields.error();
    }
    const auto number = asked_number(asked.values[1]);
    if (!number) {
        return no_such_number();
    }
    const auto stopped =
        asked.store.stop_trial(asked.client->id, *number, fields->at("because"), asked.acting);
    return stopped ? no_content() : problem_of(stopped.error());
}

Reply paper_closed(const std::vector<Gate>& gates, Licence licence) {
    return problem(409, "gate_closed", "The trial's paper is not printed",
                   fmt::format("{}", fmt::join(gates_for_coach(gates, licence), " ")));
}

Reply calendar_file_reply(Asked& asked) {
    const auto record = asked_record(asked);
    if (!record) {
        return record.error();
    }
    const auto kept = asked_trial(asked, *record);
    if (!kept) {
        return kept.error();
    }
    const auto gates = gates_before_trial_papers(kept->trial, record->care());
    if (!gates.empty()) {
        return paper_closed(gates, asked.coach.licence);
    }
    Reply reply = text_reply(trial_calendar(kept->trial), "text/calendar; charset=utf-8");
    reply.headers.emplace_back("Content-Disposition", "attachment; filename=\"trial.ics\"");
    return reply;
}

tl::expected<DrawnPaper, Reply> paper_of_trial(Asked& asked) {
    const auto record = asked_record(asked);
    if (!record) {
        return tl::make_unexpected(record.error());
    }
    const auto kept = asked_trial(asked, *record);
    if (!kept) {
        return tl::make_unexpected(kept.error());
    }
    const TrialReading reading = read_kept(*kept, record->input);
    const std::scoped_lock lock(drawing());
    auto drawn = drawn_trial_paper(kept->trial, &reading, record->input, record->care());
    if (!drawn) {
        return tl::make_unexpected(paper_closed(drawn.error(), asked.coach.licence));
    }
    return std::move(*drawn);
}

Reply trial_page_reply(Asked& asked) {
    const auto drawn = paper_of_trial(asked);
    return drawn ? page_of(*drawn) : drawn.error();
}

Reply trial_print_reply(Asked& asked) {
    const auto drawn = paper_of_trial(asked);
    return drawn ? print_of(*drawn) : drawn.error();
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/trials", Asks::who_may_look, trials_reply, Holds::never,
     "trial_looked_at"},
    {Method::post, "/api/clients/{handle}/trials", Asks::who_may_change, keep_trial_reply},
    {Method::get, "/api/clients/{handle}/trial-plan", Asks::who_may_look, trial_plan_reply,
     Holds::never, "trial_looked_at"},
    {Method::get, "/api/clients/{handle}/trials/{number}", Asks::who_may_look, trial_reply,
     Holds::never, "trial_looked_at"},
    {Method::post, "/api/clients/{handle}/trials/{number}/days", Asks::who_may_change,
     tell_day_reply},
    {Method::post, "/api/clients/{handle}/trials/{number}/stop", Asks::who_may_change,
     stop_trial_reply},
    {Method::get, "/api/clients/{handle}/trials/{number}/calendar", Asks::who_may_look,
     calendar_file_reply, Holds::never, "trial_looked_at"},
    {Method::get, "/api/clients/{handle}/trials/{number}/page", Asks::who_may_look,
     trial_page_reply, Holds::never, "trial_looked_at"},
    {Method::get, "/api/clients/{handle}/trials/{number}/print", Asks::who_may_look,
     trial_print_reply, Holds::never, "trial_looked_at"},
};

}  // namespace

std::span<const Route> trial_routes() {
    return table;
}

}  // namespace tracewright
