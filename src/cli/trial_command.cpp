#include "cli/change_commands.hpp"
#include "cli/sheet_commands.hpp"
#include "cli/trial_record.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/trial_offers.hpp"
#include "coaching/trial_plan.hpp"
#include "coaching/trial_reading.hpp"
#include "coaching/trial_report.hpp"
#include "findings/question_sentences.hpp"
#include "findings/wording.hpp"
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

void print_gates(const std::vector<Gate>& gates, Licence licence, std::ostream& out) {
    out << "Not offered now:\n";
    for (const std::string& sentence : gates_for_coach(gates, licence)) {
        out << "  - " << sentence << "\n";
    }
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

void print_schedule(const Trial& trial, std::ostream& out) {
    out << fmt::format("\nBy lot, seed {}: A is '{}', B is '{}'.\n", trial.seed, trial.a, trial.b);
    int pair = 0;
    for (const TrialBlock& block : trial.blocks) {
        out << fmt::format("  pair {:2}  {} {}, {} {}\n", ++pair, day_words(block.days[0]),
                           block.a_first ? "A" : "B", day_words(block.days[1]),
                           block.a_first ? "B" : "A");
    }
}

void print_plan(const TrialPlan& plan, const TrialTemplate& made_from, Licence licence,
                std::ostream& out) {
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
        print_schedule(*plan.trial, out);
    }
}

// The trial's paper, where one is asked for.
Exit with_paper(const Trial& trial, const TrialReading* reading, const ClientOfChange& client,
                const TrialOptions& options, const Streams& streams) {
    if (options.page.empty()) {
        return client.exit;
    }
    const Exit paper = write_trial_paper(trial, reading, client, options.page, streams);
    return paper == Exit::done ? client.exit : paper;
}

CareInput care_of(const ClientOfChange& client, const MedicineTimeline& medicines) {
    return {client.facts, client.input.wears, client.input.diary,
            medicines,    client.input.zones, client.input.as_of};
}

Exit plan(const ClientOfChange& client, const WhoseChange& whose, const TrialOptions& options,
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
        print_plan(plan, *wish->made_from, client.licence, streams.out);
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
    return with_paper(*plan.trial, nullptr, client, options, streams);
}

tl::expected<DoneOn, std::string> done_of(const TrialOptions& options) {
    DoneOn told;
    for (const std::string& text : options.done) {
        const auto equals = text.find('=');
        const std::string what = equals == std::string::npos ? "" : text.substr(equals + 1);
        const auto date = date_on_command_line(text.substr(0, equals));
        if (!date || (what != "a" && what != "b" && what != "neither")) {
            return tl::make_unexpected("found --done '" + text +
                                       "', expected DATE=a, DATE=b or DATE=neither");
        }
        told[*date] = what == "a" ? ArmDone::a : what == "b" ? ArmDone::b : ArmDone::neither;
    }
    return told;
}

Json json_of_pairs(const PairsRead& read, bool by_lot) {
    const auto interval = [](const std::optional<std::array<double, 2>>& ends) {
        return ends ? Json{(*ends)[0], (*ends)[1]} : Json(nullptr);
    };
    return {{"pairs", read.pairs},
            {"estimate", read.estimate},
            {"interval95", interval(read.interval95)},
            {"t95", interval(read.t95)},
            {"p", by_lot ? Json(read.p) : Json(nullptr)},
            {"orders_as_far", by_lot ? Json(read.at_least) : Json(nullptr)},
            {"orders", by_lot ? Json(read.patterns) : Json(nullptr)}};
}

Json json_of_reading(const Trial& trial, const TrialReading& reading, const ReviewInput& input,
                     const std::vector<std::string>& gates) {
    constexpr std::array done = {"not_known", "a", "b", "neither"};
    Json days = Json::array();
    for (const TrialDay& day : reading.days) {
        days.push_back({{"date", iso_date(day.date)},
                        {"allotted", day.allotted_a ? "a" : "b"},
                        {"done", done.at(static_cast<std::size_t>(day.done))},
                        {"value", day.value ? Json(*day.value) : Json(nullptr)},
                        {"none_because", day.value ? Json(nullptr) : Json(day.none_because)}});
    }
    Json items = Json::array();
    for (const ReportItem& item : report_items(trial, reading, input)) {
        items.push_back({{"item", item.item}, {"text", item.text}});
    }
    return {
        {"gates", gates},
        {"ended", reading.ended},
        {"unit", facts_of(trial.outcome).unit == OutcomeUnit::hours ? "h" : "mg/dL"},
        {"days", days},
        {"as_allotted", reading.ended ? json_of_pairs(reading.as_allotted, true) : Json(nullptr)},
        {"as_done", reading.as_done ? json_of_pairs(*reading.as_done, false) : Json(nullptr)},
        {"finding", json_of(reading.finding)},
        {"report", items}};
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
    TrialReading reading = read_trial(*trial, client.input, *told);
    const MedicineTimeline medicines = client_medicines(client.facts, client.input.zones);
    const std::vector<Gate> gates = gates_of_trial(*trial, care_of(client, medicines));
    const bool told_why = withhold_offer(reading, gates, client.licence);
    if (whose.json) {
        Json json = {{"version", trial_json_version}, {"plan", nullptr}};
        json["reading"] =
            json_of_reading(*trial, reading, client.input, gates_for_coach(gates, client.licence));
        streams.out << dumped(json);
        return with_paper(*trial, &reading, client, options, streams);
    }
    print_finding(reading.finding, streams.out);
    if (!gates.empty() && !told_why) {
        streams.out << "\n";
        print_gates(gates, client.licence, streams.out);
    }
    if (options.report) {
        streams.out << "\n";
        for (const ReportItem& item : report_items(*trial, reading, client.input)) {
            streams.out << "  " << item.item << ": " << item.text << "\n";
        }
    }
    return with_paper(*trial, &reading, client, options, streams);
}

}  // namespace

Exit trial(const WhoseChange& whose, const TrialOptions& options, const Streams& streams) {
    if (options.list) {
        return list_trials(streams);
    }
    if (options.question.empty() == options.read.empty()) {
        return refuse(streams, "found --question and --read both or neither, expected one of them");
    }
    const auto client = client_of_change(whose, "trial_looked_at", streams);
    if (!client) {
        return client.error();
    }
    return options.read.empty() ? plan(*client, whose, options, streams)
                                : read(*client, whose, options, streams);
}

}  // namespace tracewright
