#include "cli/trial_record.hpp"

#include "cli/client_of_change.hpp"
#include "time/zone.hpp"

#include <fmt/format.h>

namespace tracewright {

namespace {

constexpr int record_version = 1;

const ZoneHistory& utc() {
    static const ZoneHistory zones(Zone::fixed(std::chrono::seconds{0}));
    return zones;
}

const char* code_of(Draw draw) {
    return draw == Draw::fair_coins ? "fair_coins" : "balanced";
}

struct BadRecord {
    std::string sentence;
};

const Json& at(const Json& json, const char* key) {
    const auto found = json.find(key);
    if (found == json.end()) {
        throw BadRecord{fmt::format("found no '{}' in the trial, expected it", key)};
    }
    return *found;
}

CivilDate date_at(const Json& json) {
    const auto date = json.is_string() ? date_on_command_line(json.get<std::string>())
                                       : tl::make_unexpected(std::string("expected a date"));
    if (!date) {
        throw BadRecord{date.error()};
    }
    return *date;
}

Trial trial_of(const Json& json) {
    if (at(json, "version") != record_version) {
        throw BadRecord{fmt::format("found a trial of version {}, expected {}",
                                    at(json, "version").dump(), record_version)};
    }
    Trial trial;
    trial.code = at(json, "code").get<std::string>();
    trial.question = at(json, "question").get<std::string>();
    trial.a = at(json, "a").get<std::string>();
    trial.b = at(json, "b").get<std::string>();
    const auto outcome = outcome_called(at(json, "outcome").get<std::string>());
    if (!outcome) {
        throw BadRecord{"found an outcome that is not known in the trial"};
    }
    trial.outcome = *outcome;
    trial.draw = at(json, "draw") == "balanced" ? Draw::balanced : Draw::fair_coins;
    trial.seed = at(json, "seed").get<std::uint64_t>();
    trial.drawn_at = Instant{std::chrono::seconds{at(json, "drawn_at_unix").get<std::int64_t>()}};
    trial.worth = at(json, "worth").get<double>();
    trial.noise_sd = at(json, "noise_sd").get<double>();
    if (const Json& power = at(json, "power"); power.is_number()) {
        trial.power = power.get<double>();
    }
    for (const Json& block : at(json, "pairs")) {
        const bool a_first = at(block, "a_first").get<bool>();
        trial.blocks.push_back(
            {{date_at(at(block, "first_day")), date_at(at(block, "second_day"))}, a_first});
    }
    if (trial.blocks.empty()) {
        throw BadRecord{"found no pair in the trial, expected at least one"};
    }
    std::vector<TrialBlock> drawn = trial.blocks;
    draw_arms(drawn, trial.draw, trial.seed);
    if (order_of(drawn) != order_of(trial.blocks)) {
        throw BadRecord{"found an order that seed " + std::to_string(trial.seed) +
                        " does not draw: the trial was changed after the lot"};
    }
    return trial;
}

// Lines of at most 75 octets; what follows begins with a space.
std::string folded(std::string line) {
    std::string text;
    while (line.size() > 75) {
        std::size_t cut = 75;
        while ((static_cast<unsigned char>(line[cut]) & 0xC0U) == 0x80U) {
            --cut;
        }
        text += line.substr(0, cut) + "\r\n";
        line = " " + line.substr(cut);
    }
    return text + line + "\r\n";
}

std::string escaped(const std::string& text) {
    std::string result;
    for (const char c : text) {
        if (c == ',' || c == ';' || c == '\\') {
            result += '\\';
        }
        result += c;
    }
    return result;
}

std::string basic_date(CivilDate date) {
    std::string text = iso_date(date);
    std::erase(text, '-');
    return text;
}

std::string basic_time(Instant at) {
    std::string text = iso_time(at, utc()).substr(0, 19);
    std::erase(text, '-');
    std::erase(text, ':');
    return text + "Z";
}

}  // namespace

Json json_of_trial(const Trial& trial) {
    const OutcomeFacts& facts = facts_of(trial.outcome);
    Json json = {{"version", record_version},
                 {"code", trial.code},
                 {"question", trial.question},
                 {"a", trial.a},
                 {"b", trial.b},
                 {"outcome", facts.code},
                 {"unit", facts.unit == OutcomeUnit::hours ? "h" : "mg/dL"},
                 {"draw", code_of(trial.draw)},
                 {"seed", trial.seed},
                 {"drawn_at", iso_time(trial.drawn_at, utc())},
                 {"drawn_at_unix", trial.drawn_at.time_since_epoch().count()},
                 {"worth", trial.worth},
                 {"noise_sd", trial.noise_sd},
                 {"power", trial.power ? Json(*trial.power) : Json(nullptr)},
                 {"smallest_p", trial.smallest_p()}};
    json["pairs"] = Json::array();
    for (const TrialBlock& block : trial.blocks) {
        json["pairs"].push_back({{"first_day", iso_date(block.days[0])},
                                 {"second_day", iso_date(block.days[1])},
                                 {"a_first", block.a_first}});
    }
    return json;
}

tl::expected<Trial, std::string> trial_read(std::string_view document) {
    try {
        return trial_of(Json::parse(document));
    } catch (const BadRecord& bad) {
        return tl::make_unexpected(bad.sentence);
    } catch (const Json::exception&) {
        return tl::make_unexpected(
            std::string("found no trial in the file, expected one written by 'trial --write'"));
    }
}

std::string trial_calendar(const Trial& trial) {
    std::string text = "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Tracewright//trial//EN\r\n";
    for (const TrialBlock& block : trial.blocks) {
        for (const CivilDate day : block.days) {
            const std::string& arm = day == block.day_of_a() ? trial.a : trial.b;
            text += "BEGIN:VEVENT\r\n";
            text += folded(
                fmt::format("UID:{}-{}-{}@tracewright", trial.code, trial.seed, basic_date(day)));
            text += "DTSTAMP:" + basic_time(trial.drawn_at) + "\r\n";
            text += "DTSTART;VALUE=DATE:" + basic_date(day) + "\r\n";
            text += "DTEND;VALUE=DATE:" + basic_date(day + std::chrono::days{1}) + "\r\n";
            text += folded("SUMMARY:" + escaped(arm));
            text += "TRANSP:TRANSPARENT\r\nEND:VEVENT\r\n";
        }
    }
    return text + "END:VCALENDAR\r\n";
}

}  // namespace tracewright
