#include "serve/look_json.hpp"

namespace tracewright {

namespace {

Json or_null(const std::string& text) {
    return text.empty() ? Json(nullptr) : Json(text);
}

Json json_of(const RowNote& note) {
    return {{"line", note.line}, {"column", note.column}, {"fate", name_of(note.fate)},
            {"code", note.code}, {"found", note.found},   {"expected", note.expected}};
}

}  // namespace

Json json_of(const FileError& error) {
    return {{"code", code_of(error.kind)}, {"line", error.line},
            {"column", error.column},      {"found", error.found},
            {"expected", error.expected},  {"what_to_do", error.what_to_do}};
}

Json json_of_rows(const Ledger& ledger) {
    return {{"read", ledger.read()},
            {"stored", ledger.with(Fate::stored)},
            {"duplicate", ledger.with(Fate::duplicate)},
            {"conflict", ledger.with(Fate::conflict)},
            {"rejected", ledger.with(Fate::rejected)},
            {"waiting_for_an_answer", ledger.with(Fate::question)},
            {"not_data", ledger.with(Fate::not_data)}};
}

Json json_of_look(const Intake& intake) {
    Json json = {{"file", intake.file}};
    if (intake.error) {
        json["error"] = json_of(*intake.error);
    }
    json["rows"] = json_of_rows(intake.ledger);
    json["guesses"] = Json::array();
    for (const Guess& guess : intake.guesses) {
        json["guesses"].push_back({{"what", guess.what},
                                   {"found", guess.found},
                                   {"sure", guess.sure},
                                   {"why", guess.why}});
    }
    json["questions"] = Json::array();
    for (const Question& question : intake.questions) {
        json["questions"].push_back({{"code", question.code},
                                     {"question", question.sentence},
                                     {"guess", or_null(question.guess)},
                                     {"option", question.option}});
    }
    json["columns"] = Json::array();
    for (const ColumnRole& column : intake.columns) {
        json["columns"].push_back({{"column", column.column},
                                   {"title", column.title},
                                   {"role", column.role},
                                   {"unit", or_null(column.unit)}});
    }
    json["sample"] = intake.sample;
    json["readings"] = intake.count_of_readings();
    json["diary_entries"] = intake.diary.size();
    json["notes"] = Json::array();
    for (const RowNote& note : intake.ledger.notes()) {
        json["notes"].push_back(json_of(note));
    }
    json["notes_by_code"] = intake.ledger.by_code();
    return json;
}

}  // namespace tracewright
