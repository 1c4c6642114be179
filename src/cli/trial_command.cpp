#include "cli/change_commands.hpp"
#include "cli/kept_trials.hpp"
#include "cli/sheet_commands.hpp"
#include "cli/trial_record.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/trial_plan.hpp"
#include "coaching/trial_reading.hpp"
#include "findings/question_sentences.hpp"
#include "findings/wording.hpp"
#include "render/trial_calendar_file.hpp"
#include "store/whole_file.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

namespace {

Exit refuse(const Streams& streams, const std::string& sentence) {
    streams.err << "tracewright: " << sentence << "\n";
    return Exit::wrong_usage;
}

Exit list_trials(const Streams& streams) {
    for (const TrialTemplate& one : trial_templates()) {
        streams.out << fmt::format("{}\n  {}\n  A: {}; B: {}; read: {}\n", one.code, one.question,
                                   one.a, one.b, facts_of(one.outcome).words);
    }
    streams.out << "\nMedicines and supplements are never an arm.\n";
    return Exit::done;
}

bool written(const std::string& path, const std::string& text, const Streams& streams) {
    const auto* bytes = reinterpret_cast<const std::uint8_t*>(text.data());
    const auto done = write_whole_file(path, {bytes, text.size()});
    if (!done) {
        streams.err << "tracewright: " << done.error().sentence << "\n";
    }
    return done.has_value();
}

tl::expected<TrialWish, std::string> wish_of(const TrialOptions& options,
                                             const ClientOfChange& client) {
    TrialWish wish;
    wish.made_from = trial_template_called(options.question);
    if (wish.made_from == nullptr) {
        return tl::make_unexpected("found --question '" + options.question +
                                   "', expected one of trial --list");
    }
    wish.pairs = options.pairs;
    wish.draw = options.balanced ? Draw::balanced : Draw::fair_coins;
    wish.seed = client.input.seed;
    if (options.worth) {
        if (!(*options.worth > 0)) {
            return tl::make_unexpected(
                std::string("found --worth that is not above 0, expected a difference"));
        }
        const bool hours = facts_of(wish.made_from->outcome).unit == OutcomeUnit::hours;
        wish.worth = hours ? *options.worth
                           : converted(*options.worth, client.input.unit, GlucoseUnit::mg_per_dl);
    }
    if (!options.starts.empty()) {
        const auto date = date_on_command_line(options.starts);
        if (!date) {
            return tl::make_unexpected(date.error());
        }
        wish.first_day = *date;
    }
    return wish;
}

Json json_of_plan(const TrialPlan& plan, Licence licence) {
    Json rows = Json::array();
    for (const BlocksPower& row : plan.length.rows) {
        rows.push_back({{"pairs", row.blocks},
                        {"power", row.power},
                        {"simulated", row.simulated},
                        {"smallest_p", row.smallest_p}});
    }
    const auto number = [](std::optional<int> value) {
        return value ? Json(*value) : Json(nullptr);
    };
    return {{"gates", gates_for_coach(plan.gates, licence)},
            {"refused_because",
             plan.refused_because.empty() ? Json(nullptr) : Json(plan.refused_because)},
            {"own_values", plan.own_values},
            {"noise_sd", plan.length.noise_sd},
            {"pairs_needed", number(plan.length.blocks)},
            {"pairs_range", {number(plan.pairs_range[0]), number(plan.pairs_range[1])}},
            {"power", rows},
            {"sentences", plan.sentences},
            {"trial", plan.trial ? json_of_trial(*plan.trial) : Json(nullptr)}};
}

void print_schedule(const Trial& trial, WayOfWriting way, std::ostream& out) {
    out << fmt::format("\nBy lot, seed {}: A is '{}', B is '{}'.\n", trial.seed, trial.a, trial.b);
    int pair = 0;
    for (const TrialBlock& block : trial.blocks) {
        out << fmt::format("  pair {:2}  {} {}, {} {}\n", ++pair, day_words(block.days[0], way),
                           block.a_first ? "A" : "B", day_words(block.days[1], way),
                           block.a_first ? "B" : "A");
    }
}

void print_plan(const TrialPlan& plan, const TrialTemplate& made_from, Licence licence,
                WayOfWriting way, std::ostream& out) {
    out << made_from.question << "\n";
    if (!plan.gates.empty()) {
        print_gates(plan.gates, licence, out);
        return;
    }
    if (!plan.refused_because.empty()) {
        out << plan.refused_because << "\n";
        return;
    }
    for (const std::string& sentence : plan.sentences) {
        out << "  " << sentence << "\n";
    }
    if (plan.trial) {
        print_schedule(*plan.trial, way, out);
    }
}

Exit plan(ClientOfChange& client, const WhoseChange& whose, const TrialOptions& options,
          const Streams& streams) {
    const auto wish = wish_of(options, client);
    if (!wish) {
        return refuse(streams, wish.error());
    }
    const MedicineTimeline medicines = client_medicines(client.facts, client.input.zones);
    const CareInput care = care_of(client, medicines);
    const TrialPlan plan = plan_trial(*wish, client.input, care);
    if (whose.json) {
        Json json = {{"version", trial_json_version}, {"plan", json_of_plan(plan, client.licence)}};
        json["reading"] = nullptr;
        streams.out << dumped(json);
    } else {
        print_plan(plan, *wish->made_from, client.licence, client.input.zones.writing(),
                   streams.out);
    }
    if (!plan.trial) {
        return Exit::cannot_answer;
    }
    if ((!options.write.empty() &&
         !written(options.write, dumped(json_of_trial(*plan.trial)), streams)) ||
        (!options.calendar.empty() &&
         !written(options.calendar, trial_calendar(*plan.trial), streams))) {
        return Exit::bad_input;
    }
    if (options.keep) {
        if (const Exit kept = keep_trial(client, *plan.trial, streams); kept != Exit::done) {
            return kept;
        }
    }
    return with_paper(*plan.trial, nullptr, client, options, streams);
}

Exit read(const ClientOfChange& client, const WhoseChange& whose, const TrialOptions& options,
          const Streams& streams) {
    const auto bytes = read_whole_file(options.read);
    if (!bytes) {
        streams.err << "tracewright: " << bytes.error().sentence << "\n";
        return Exit::bad_input;
    }
    const auto trial = trial_read({reinterpret_cast<const char*>(bytes->data()), bytes->size()});
    if (!trial) {
        streams.err << "tracewright: " << options.read << ": " << trial.error() << "\n";
        return Exit::bad_input;
    }
    const auto told = done_of(options);
    if (!told) {
        return refuse(streams, told.error());
    }
    return tell_reading(*trial, read_trial(*trial, client.input, *told), client,
                        {whose.json, options}, streams);
}

}  // namespace

Exit trial(const WhoseChange& whose, const TrialOptions& options, const Streams& streams) {
    if (options.list) {
        return list_trials(streams);
    }
    if (options.kept || options.number) {
        auto of_practice = client_of_change(whose, "trial_looked_at", streams);
        return of_practice ? kept_trials_of(*of_practice, {whose.json, options}, streams)
                           : of_practice.error();
    }
    if (options.question.empty() == options.read.empty()) {
        return refuse(streams, "found --question and --read both or neither, expected one of them");
    }
    auto client = client_of_change(whose, "trial_looked_at", streams);
    if (!client) {
        return client.error();
    }
    return options.read.empty() ? plan(*client, whose, options, streams)
                                : read(*client, whose, options, streams);
}

}  // namespace tracewright
