#include "store/trial_document.hpp"

#include "store/document_reader.hpp"

#include <date/date.h>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace tracewright {

namespace {

using Json = nlohmann::ordered_json;

constexpr int record_version = 1;
constexpr std::array<const char*, 2> draws{"fair_coins", "balanced"};

std::string utc(Instant at) {
    return date::format("%FT%T+00:00", date::sys_seconds{at.time_since_epoch()});
}

std::string day(CivilDate at) {
    return date::format(
        "%F", date::local_days{date::days{static_cast<int>(at.time_since_epoch().count())}});
}

void read_outcome(DocumentReader& reader, Trial& trial) {
    std::string code;
    reader.text("outcome", code);
    const auto outcome = outcome_called(code);
    if (!outcome) {
        unreadable(reader.path("outcome"), "an outcome that is known");
    }
    trial.outcome = *outcome;
}

void read_pairs(DocumentReader& reader, Trial& trial) {
    reader.list("pairs", [&](DocumentReader& item) {
        for (const char* key : {"first_day", "second_day", "a_first"}) {
            if (item.at(key) == nullptr) {
                unreadable(item.path(key), "both days of a pair and which came first");
            }
        }
        TrialBlock& block = trial.blocks.emplace_back();
        item.date("first_day", block.days[0]);
        item.date("second_day", block.days[1]);
        item.truth("a_first", block.a_first);
    });
    if (trial.blocks.empty()) {
        unreadable("pairs", "at least one");
    }
}

std::int64_t whole(DocumentReader& reader, const char* key) {
    const Json* found = reader.at(key);
    if (found == nullptr || !found->is_number_integer()) {
        unreadable(reader.path(key), "a whole number");
    }
    return found->get<std::int64_t>();
}

Trial trial_of(const Json& document) {
    DocumentReader reader(document, "");
    for (const char* key : {"version", "code", "question", "a", "b", "outcome", "draw", "seed",
                            "drawn_at_unix", "worth", "noise_sd", "pairs"}) {
        if (reader.at(key) == nullptr) {
            unreadable(key, "a trial written down before its first day");
        }
    }
    if (whole(reader, "version") != record_version) {
        unreadable("version", fmt::format("{}", record_version));
    }
    Trial trial;
    reader.text("code", trial.code);
    reader.text("question", trial.question);
    reader.text("a", trial.a);
    reader.text("b", trial.b);
    read_outcome(reader, trial);
    reader.word("draw", draws, trial.draw);
    const Json* seed = reader.at("seed");
    if (!seed->is_number_unsigned()) {
        unreadable("seed", "a whole number of at least 0");
    }
    trial.seed = seed->get<std::uint64_t>();
    trial.drawn_at = Instant{std::chrono::seconds{whole(reader, "drawn_at_unix")}};
    reader.number("worth", trial.worth);
    reader.number("noise_sd", trial.noise_sd);
    reader.number("power", trial.power);
    read_pairs(reader, trial);
    for (const char* told_elsewhere : {"unit", "drawn_at", "smallest_p"}) {
        reader.at(told_elsewhere);
    }
    reader.finish();
    std::vector<TrialBlock> drawn = trial.blocks;
    draw_arms(drawn, trial.draw, trial.seed);
    if (order_of(drawn) != order_of(trial.blocks)) {
        throw UnreadableDocument("found an order that seed " + std::to_string(trial.seed) +
                                 " does not draw: the trial was changed after the lot");
    }
    return trial;
}

}  // namespace

std::string trial_document(const Trial& trial, int indent) {
    const OutcomeFacts& facts = facts_of(trial.outcome);
    Json json = {{"version", record_version},
                 {"code", trial.code},
                 {"question", trial.question},
                 {"a", trial.a},
                 {"b", trial.b},
                 {"outcome", facts.code},
                 {"unit", facts.unit == OutcomeUnit::hours ? "h" : "mg/dL"},
                 {"draw", draws.at(static_cast<std::size_t>(trial.draw))},
                 {"seed", trial.seed},
                 {"drawn_at", utc(trial.drawn_at)},
                 {"drawn_at_unix", trial.drawn_at.time_since_epoch().count()},
                 {"worth", trial.worth},
                 {"noise_sd", trial.noise_sd},
                 {"power", trial.power ? Json(*trial.power) : Json(nullptr)},
                 {"smallest_p", trial.smallest_p()}};
    json["pairs"] = Json::array();
    for (const TrialBlock& block : trial.blocks) {
        json["pairs"].push_back({{"first_day", day(block.days[0])},
                                 {"second_day", day(block.days[1])},
                                 {"a_first", block.a_first}});
    }
    return json.dump(indent, ' ', false, Json::error_handler_t::replace);
}

tl::expected<Trial, std::string> trial_read(std::string_view document) {
    const Json json = Json::parse(document, nullptr, false);
    if (!json.is_object()) {
        return tl::make_unexpected(
            std::string("found no trial in the file, expected one written by 'trial --write'"));
    }
    try {
        return trial_of(json);
    } catch (const UnreadableDocument& bad) {
        return tl::make_unexpected(std::string(bad.what()));
    }
}

}  // namespace tracewright
