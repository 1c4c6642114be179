#include "cli/plan_command.hpp"

#include "coaching/agreed_change.hpp"
#include "coaching/agreeing.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/plan.hpp"
#include "coaching/proposed_names.hpp"
#include "findings/wording.hpp"
#include "render/plan_json.hpp"
#include "store/standing_escalations.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <ostream>

namespace tracewright {

namespace {

Exit refuse(const Streams& streams, const std::string& sentence, Exit exit = Exit::wrong_usage) {
    streams.err << "tracewright: " << sentence << "\n";
    return exit;
}

tl::expected<CivilDate, std::string> day_or(const std::string& text, CivilDate otherwise) {
    return text.empty() ? tl::expected<CivilDate, std::string>(otherwise)
                        : date_on_command_line(text);
}

std::string of_change(const AgreedChange& change) {
    std::string text = change_words(change);
    if (change.agreed_on) {
        text += ", agreed on " + iso_date(*change.agreed_on);
    }
    if (change.outcome != ChangeOutcome::open && change.ended_on) {
        return text +
               fmt::format(", {} on {}", name_of(change.outcome), iso_date(*change.ended_on));
    }
    return change.check_on ? text + ", to be checked on " + iso_date(*change.check_on) : text;
}

void print_plan(const Plan& plan, const ClientFacts& facts, Licence licence, std::ostream& out) {
    out << plan.sentence << "\n";
    int number = 0;
    for (const RankedCandidate& candidate : plan.ranked) {
        out << fmt::format("\n{}. {} ({})\n", ++number, candidate.change->words,
                           candidate.change->code);
        for (const std::string& sentence : candidate.sentences) {
            out << "   " << sentence << "\n";
        }
        for (const std::string& caution : candidate.cautions) {
            out << "   - " << caution << "\n";
        }
    }
    if (plan.check) {
        out << "\nCheck: " << plan.check->words << "\n";
    }
    // Most gates close several changes: each is told once, with what it closes.
    std::vector<std::pair<std::string, std::string>> told;
    for (const ClosedCandidate& closed : plan.closed) {
        for (const Gate& gate : closed.gates) {
            std::string why = in_scope(gate.for_coach, licence);
            if (const std::string opening = opens(gate); !opening.empty()) {
                why += " " + opening;
            }
            const auto found =
                std::ranges::find(told, why, &std::pair<std::string, std::string>::first);
            if (found == told.end()) {
                told.emplace_back(std::move(why), closed.change->code);
            } else {
                found->second += std::string(", ") + closed.change->code;
            }
        }
    }
    if (!told.empty()) {
        out << "\nNot offered now:\n";
    }
    for (const auto& [why, what] : told) {
        out << "  - " << why << " (" << what << ")\n";
    }
    if (facts.agreed_change) {
        out << "\nAgreed: " << of_change(*facts.agreed_change) << "\n";
        for (const std::string& closed : gates_for_coach(plan.agreed_closed, licence)) {
            out << "  - " << closed << "\n";
        }
    }
    for (const AgreedChange& change : facts.earlier_changes) {
        out << "Earlier: " << of_change(change) << "\n";
    }
}

tl::expected<Proposed, std::string> kind_of(const PlanOptions& options) {
    if (!options.candidate.empty()) {
        const CandidateChange* found = candidate_called(options.candidate);
        if (found == nullptr) {
            return tl::make_unexpected("found --candidate '" + options.candidate +
                                       "', expected one that plan lists");
        }
        return found->proposed;
    }
    const auto kind = proposed_called(options.kind);
    if (!kind) {
        return tl::make_unexpected("found --kind '" + options.kind +
                                   "', expected low-carbohydrate, fasting, meal-skipping, "
                                   "weight-loss, food-change, walking or other, or --candidate");
    }
    return *kind;
}

tl::expected<WhatItDoes, std::string> what_it_does(const PlanOptions& options) {
    const auto eating = eating_change_called(options.eating);
    if (!eating) {
        return tl::make_unexpected("found --eating '" + options.eating +
                                   "', expected nothing, as-much or less");
    }
    const auto moves = answer_called(options.moves);
    const auto medicine = answer_called(options.medicine);
    if (!moves || !medicine) {
        return tl::make_unexpected(fmt::format("found --{} '{}', expected yes or no",
                                               moves ? "medicine" : "moves",
                                               moves ? options.medicine : options.moves));
    }
    return WhatItDoes{*eating, *moves, *medicine};
}

Exit store(ClientOfChange& client, const std::string& said_then, const Streams& streams) {
    OpenClient& open = *client.open;
    auto record = open.store().client(open.client);
    if (!record) {
        return said(record.error(), streams);
    }
    record->facts = client.facts;
    if (const auto changed = open.store().change_client(*record, open.practice.acting); !changed) {
        return said(changed.error(), streams);
    }
    const auto looked =
        record_escalations(open.store(), open.client, record->facts, open.practice.acting);
    if (!looked) {
        return said(looked.error(), streams);
    }
    streams.out << said_then << "\n";
    return Exit::done;
}

Exit agree(ClientOfChange& client, const PlanOptions& options, const Plan& plan,
           const CareInput& care, CivilDate today, const Streams& streams) {
    if (client.facts.agreed_change) {
        return refuse(streams, plan.sentence, Exit::cannot_answer);
    }
    const auto kind = kind_of(options);
    if (!kind) {
        return refuse(streams, kind.error());
    }
    const auto does = what_it_does(options);
    if (!does) {
        return refuse(streams, does.error());
    }
    AgreedChange change{options.agree,
                        today,
                        {},
                        options.when,
                        options.where,
                        options.how_often,
                        options.if_not,
                        options.how_checked,
                        {},
                        options.stop_when,
                        *kind};
    change.candidate = options.candidate;
    change.does = *does;
    const bool asks = asks_what_it_does(change);
    if (!options.check_on.empty()) {
        const auto check = date_on_command_line(options.check_on);
        if (!check) {
            return refuse(streams, check.error());
        }
        change.check_on = *check;
    }
    auto agreed =
        agree_on(std::move(change), options.with_prescriber, plan, client.input, care, today);
    if (!agreed && agreed.error().gates.empty()) {
        return refuse(streams, agreed.error().sentence);
    }
    if (!agreed) {
        streams.out << "Not agreed:\n";
        for (const Gate& gate : agreed.error().gates) {
            const std::string opening = opens(gate);
            streams.out << "  - " << in_scope(gate.for_coach, client.licence)
                        << (opening.empty() ? "" : " " + opening) << "\n";
        }
        const bool open = does->eating == EatingChange::not_answered ||
                          does->moves == Answered::not_yet || does->medicine == Answered::not_yet;
        if (asks && open) {
            streams.out << "Say what it does: --eating nothing, as-much or less; --moves yes or "
                           "no; --medicine yes or no.\n";
        }
        return Exit::cannot_answer;
    }
    client.facts.agreed_change = std::move(*agreed);
    return store(client, "Agreed: " + of_change(*client.facts.agreed_change), streams);
}

Exit end(ClientOfChange& client, const PlanOptions& options, CivilDate on, const Streams& streams) {
    constexpr std::array words = {"open", "kept", "dropped", "changed"};
    const auto found = std::ranges::find(words, options.ended);
    if (found == words.end() || found == words.begin()) {
        return refuse(streams,
                      "found --ended '" + options.ended + "', expected kept, dropped or changed");
    }
    if (!end_agreed_change(client.facts, static_cast<ChangeOutcome>(found - words.begin()), on)) {
        return refuse(streams, "found no change that goes on", Exit::cannot_answer);
    }
    return store(client, "Ended: " + of_change(client.facts.earlier_changes.back()), streams);
}

}  // namespace

Exit plan_change(const WhoseChange& whose, const PlanOptions& options, const Streams& streams) {
    auto client = client_of_change(whose, "plan_looked_at", streams);
    if (!client) {
        return client.error();
    }
    const bool changes = !options.agree.empty() || !options.ended.empty();
    if (changes && !client->open) {
        return refuse(streams, "found files, expected --practice to keep what was agreed");
    }
    const ReviewInput& input = client->input;
    const auto day = day_or(options.on, input.zones.date_at(input.as_of));
    if (!day) {
        return refuse(streams, day.error());
    }
    if (!options.ended.empty()) {
        return end(*client, options, *day, streams);
    }
    PlanSettings settings;
    settings.worth_hours = options.worth.value_or(settings.worth_hours);
    if (!(settings.worth_hours > 0)) {
        return refuse(streams, "found --worth that is not above 0, expected hours a day");
    }
    const MedicineTimeline medicines = client_medicines(client->facts, input.zones);
    const ClientFacts facts = client->facts;
    const CareInput care{facts, input.wears, input.diary, medicines, input.zones, input.as_of};
    const Plan plan = plan_for(input, care, settings);
    if (!options.agree.empty()) {
        return agree(*client, options, plan, care, *day, streams);
    }
    if (whose.json) {
        streams.out << dumped(json_of_plan(plan, facts, input, client->licence));
    } else {
        print_plan(plan, facts, client->licence, streams.out);
    }
    return client->exit;
}

}  // namespace tracewright
