#include "store/diary_document.hpp"

#include "store/stored_column.hpp"

#include <nlohmann/json.hpp>

namespace tracewright {

namespace {

using Json = nlohmann::ordered_json;

template <typename Value>
void set(Json& document, const char* key, const std::optional<Value>& value) {
    if (value) {
        document[key] = *value;
    }
}

template <typename Value>
void take(const Json& document, const char* key, std::optional<Value>& value) {
    if (const auto found = document.find(key); found != document.end()) {
        value = found->get<Value>();
    }
}

Json document_of(const DiaryEntry& entry) {
    Json document;
    document["kind"] = static_cast<int>(entry.kind);
    document["at"] = seconds(entry.at);
    if (entry.until) {
        document["until"] = seconds(*entry.until);
    }
    document["written"] = entry.written.time_since_epoch().count();
    if (entry.time_uncertain) {
        document["time_uncertain"] = true;
    }
    if (!entry.text.empty()) {
        document["text"] = entry.text;
    }
    if (entry.not_described) {
        document["not_described"] = true;
    }
    if (entry.carbohydrate_g) {
        document["carbohydrate_g"] = {entry.carbohydrate_g->value, entry.carbohydrate_g->half_width,
                                      entry.carbohydrate_g->estimated};
    }
    if (entry.carbohydrate_basis != CarbohydrateBasis::not_told) {
        document["carbohydrate_basis"] = static_cast<int>(entry.carbohydrate_basis);
    }
    set(document, "fibre_g", entry.fibre_g);
    set(document, "protein_g", entry.protein_g);
    set(document, "fat_g", entry.fat_g);
    set(document, "energy_kcal", entry.energy_kcal);
    set(document, "portion", entry.portion);
    set(document, "slot", entry.slot);
    if (entry.glucose) {
        document["glucose"] = {entry.glucose->hundredths, static_cast<int>(entry.glucose->unit)};
    }
    set(document, "number", entry.number);
    if (!entry.number_unit.empty()) {
        document["number_unit"] = entry.number_unit;
    }
    return document;
}

DiaryEntry entry_of(const Json& document) {
    DiaryEntry entry;
    entry.kind = static_cast<DiaryKind>(document.at("kind").get<int>());
    entry.at = instant(document.at("at").get<std::int64_t>());
    std::optional<std::int64_t> until;
    take(document, "until", until);
    if (until) {
        entry.until = instant(*until);
    }
    entry.written = WallTime{std::chrono::seconds{document.at("written").get<std::int64_t>()}};
    entry.time_uncertain = document.value("time_uncertain", false);
    entry.text = document.value("text", "");
    entry.not_described = document.value("not_described", false);
    if (const auto amount = document.find("carbohydrate_g"); amount != document.end()) {
        entry.carbohydrate_g = Amount{amount->at(0).get<double>(), amount->at(1).get<double>(),
                                      amount->at(2).get<bool>()};
    }
    entry.carbohydrate_basis =
        static_cast<CarbohydrateBasis>(document.value("carbohydrate_basis", 0));
    take(document, "fibre_g", entry.fibre_g);
    take(document, "protein_g", entry.protein_g);
    take(document, "fat_g", entry.fat_g);
    take(document, "energy_kcal", entry.energy_kcal);
    take(document, "portion", entry.portion);
    take(document, "slot", entry.slot);
    if (const auto glucose = document.find("glucose"); glucose != document.end()) {
        entry.glucose = Glucose{glucose->at(0).get<std::int32_t>(),
                                static_cast<GlucoseUnit>(glucose->at(1).get<int>())};
    }
    take(document, "number", entry.number);
    entry.number_unit = document.value("number_unit", "");
    entry.source = document.value("source", "");
    entry.source_line = document.value("source_line", 0);
    return entry;
}

}  // namespace

std::string diary_document(const DiaryEntry& entry) {
    Json document = document_of(entry);
    document["source"] = entry.source;
    document["source_line"] = entry.source_line;
    return document.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string sameness_of(const DiaryEntry& entry) {
    return document_of(entry).dump(-1, ' ', false, Json::error_handler_t::replace);
}

tl::expected<DiaryEntry, std::string> diary_entry_read(std::string_view document) {
    try {
        return entry_of(Json::parse(document));
    } catch (const Json::exception&) {
        return tl::make_unexpected(
            std::string("found a diary entry that does not read, expected one as it was written"));
    }
}

}  // namespace tracewright
