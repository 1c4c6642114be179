#include "serve/import_json.hpp"

#include "findings/wording.hpp"
#include "serve/look_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace tracewright {

namespace {

constexpr std::size_t most_of_a_code = 50;

// What the command's own reader is told to type is nothing for a page.
std::string without_options(const std::string& text) {
    const auto option = text.find("--");
    if (option == std::string::npos) {
        return text;
    }
    const auto before = text.find_last_of(";,", option);
    return before == std::string::npos ? "" : text.substr(0, before);
}

// By which part of the query a question is answered, and with what; no choices: with any words.
struct Answering {
    std::string name;
    std::vector<std::string> choices;
};
Answering answering(const Question& question) {
    static const std::map<std::string, Answering> known = {
        {"decimal_mark", {"decimal", {"point", "comma"}}},
        {"date_order", {"date_order", {"day", "month"}}},
        {"measured_by", {"measured_by", {"sensor", "meter"}}},
        {"unit", {"unit", {"mg/dL", "mmol/L"}}},
        {"glucose_column", {"glucose_column", {}}},
        {"person", {"person", {}}}};
    const auto found = known.find(question.code);
    return found == known.end() ? Answering{} : found->second;
}

Json json_of_question(const std::string& code, const std::string& sentence,
                      const std::string& guess, const std::string& answered,
                      const std::vector<std::string>& choices) {
    return {{"code", code},
            {"question", sentence},
            {"guess", guess.empty() ? Json() : Json(guess)},
            {"answered_by", answered.empty() ? Json() : Json(answered)},
            {"choices", choices}};
}

Json questions_of(const Intake& intake, const std::optional<ImportPlan>& plan) {
    Json list = Json::array();
    for (const Question& question : intake.questions) {
        const Answering by = answering(question);
        list.push_back(json_of_question(question.code, question.sentence, question.guess, by.name,
                                        by.choices));
    }
    if (plan && plan->question) {
        list.push_back(
            json_of_question("whose_file", *plan->question, "", "whose", {"this_client"}));
    }
    return list;
}

Json rows_of(const Intake& intake, const std::optional<ImportPlan>& plan) {
    Json rows = json_of_rows(intake.ledger);
    if (plan) {
        rows["stored"] = plan->rows_stored;
        rows["duplicate"] = plan->rows_duplicate;
        rows["conflict"] = plan->rows_conflict;
        rows["rejected"] = plan->rows_rejected;
    }
    return rows;
}

Json wears_of(const ImportPlan& plan, const ZoneHistory& clock) {
    Json wears = Json::array();
    for (const ImportPlan::PlannedWear& planned : plan.wears) {
        const std::vector<Reading>& readings = planned.wear.readings;
        wears.push_back(
            {{"joins", planned.joins.has_value()},
             {"from", day_and_time(clock.wall_time(readings.front().at), clock.writing())},
             {"to", day_and_time(clock.wall_time(readings.back().at), clock.writing())},
             {"every_minutes", planned.wear.interval.count() / 60},
             {"readings", readings.size()}});
    }
    return wears;
}

std::string agreement_words(const Agreement& agreement) {
    return fmt::format(
        "Worn at the same time as another sensor: over {} {} of readings they differ by {:.0f} % "
        "on "
        "average.",
        agreement.pairs, agreement.pairs == 1 ? "pair" : "pairs",
        100 * agreement.mean_relative_difference);
}

// The first rows of each code, in the file's order.
Json first_notes(Json notes) {
    std::map<std::string, std::size_t> seen;
    Json kept = Json::array();
    for (Json& note : notes) {
        if (++seen[note["code"].get<std::string>()] <= most_of_a_code) {
            kept.push_back(std::move(note));
        }
    }
    return kept;
}

}  // namespace

Json json_of_import(const Intake& intake, const std::optional<ImportPlan>& plan,
                    const ZoneHistory& clock) {
    Json json = json_of_look(intake);
    json.erase("error");
    json.erase("readings");
    json.erase("diary_entries");
    for (Json& guess : json["guesses"]) {
        guess["why"] = without_options(guess["why"].get<std::string>());
    }
    json["questions"] = questions_of(intake, plan);
    json["rows"] = rows_of(intake, plan);
    json["notes"] = first_notes(std::move(json["notes"]));
    json["wears"] = plan ? wears_of(*plan, clock) : Json::array();
    json["diary_entries"] = plan ? plan->entries.size() : 0;
    json["held"] = plan ? plan->held.size() : 0;
    json["agreement"] = plan && plan->agreement ? Json(agreement_words(*plan->agreement)) : Json();
    json["nothing_new"] = plan && !plan->question && plan->stores_nothing();
    return json;
}

Json json_of_imports(const std::vector<ImportRecord>& imports, const ZoneHistory& clock) {
    Json list = Json::array();
    for (auto one = imports.rbegin(); one != imports.rend(); ++one) {
        list.push_back({{"id", one->id},
                        {"at", day_and_time(clock.wall_time(one->at), clock.writing())},
                        {"file", one->source},
                        {"rows",
                         {{"read", one->rows_stored + one->rows_duplicate + one->rows_conflict +
                                       one->rows_rejected},
                          {"stored", one->rows_stored},
                          {"duplicate", one->rows_duplicate},
                          {"conflict", one->rows_conflict},
                          {"rejected", one->rows_rejected}}},
                        {"newest", one == imports.rbegin()}});
    }
    return list;
}

}  // namespace tracewright
