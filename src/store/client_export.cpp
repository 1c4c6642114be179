#include "store/client_export.hpp"

#include "coaching/client_clock.hpp"
#include "store/client_document.hpp"
#include "store/csv_cell.hpp"
#include "store/food_document.hpp"
#include "time/zone_history.hpp"

#include <date/date.h>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace tracewright {

namespace {

using Json = nlohmann::ordered_json;

std::string utc(Instant at) {
    return date::format("%FT%TZ", date::sys_seconds{at.time_since_epoch()});
}

Json utc(const std::optional<Instant>& at) {
    return at ? Json(utc(*at)) : Json();
}

std::string wall(WallTime at) {
    return date::format("%FT%T", date::local_seconds{at.time_since_epoch()});
}

std::string day(CivilDate at) {
    return date::format(
        "%F", date::local_days{date::days{static_cast<int>(at.time_since_epoch().count())}});
}

template <typename Number>
std::string number(const std::optional<Number>& value) {
    return value ? fmt::format("{}", *value) : std::string();
}

std::string level(Glucose glucose) {
    const int digits = glucose.hundredths % 100 == 0 ? 0 : glucose.hundredths % 10 == 0 ? 1 : 2;
    return fmt::format("{:.{}f}", glucose.value(), digits);
}

const char* word_of(Limit limit) {
    return limit == Limit::below ? "below" : limit == Limit::above ? "above" : "";
}

std::string readings_csv(const ClientHoldings& holdings, const ZoneHistory& zones) {
    std::string csv = "wear,utc,clock,glucose,unit,limit,interval_s,implausible\n";
    WallClock clock(zones);
    for (const StoredWear& stored : holdings.wears) {
        const std::string label = csv_cell(stored.wear.label);
        for (const Reading& reading : stored.wear.readings) {
            csv += fmt::format("{},{},{},{},{},{},{},{}\n", label, utc(reading.at),
                               wall(clock.at(reading.at)), level(reading.value()),
                               name_of(reading.unit()), word_of(reading.limit()),
                               reading.interval().count(), reading.implausible() ? "yes" : "");
        }
    }
    return csv;
}

std::string diary_csv(const Diary& diary) {
    std::string csv =
        "kind,utc,until_utc,written,time_uncertain,text,carbohydrate_g,carbohydrate_half_width,"
        "carbohydrate_estimated,carbohydrate_basis,fibre_g,protein_g,fat_g,energy_kcal,portion,"
        "slot,glucose,glucose_unit,number,number_unit,source,line\n";
    for (const DiaryEntry& entry : diary) {
        const auto& grams = entry.carbohydrate_g;
        const char* basis = entry.carbohydrate_basis == CarbohydrateBasis::total       ? "total"
                            : entry.carbohydrate_basis == CarbohydrateBasis::available ? "available"
                                                                                       : "";
        const std::string cells[] = {
            name_of(entry.kind),
            utc(entry.at),
            entry.until ? utc(*entry.until) : "",
            wall(entry.written),
            entry.time_uncertain ? "yes" : "",
            entry.not_described ? "(not described)" : csv_cell(entry.text),
            grams ? fmt::format("{}", grams->value) : "",
            grams && grams->half_width > 0 ? fmt::format("{}", grams->half_width) : "",
            grams && grams->estimated ? "yes" : "",
            basis,
            number(entry.fibre_g),
            number(entry.protein_g),
            number(entry.fat_g),
            number(entry.energy_kcal),
            csv_cell(entry.portion.value_or("")),
            csv_cell(entry.slot.value_or("")),
            entry.glucose ? level(*entry.glucose) : "",
            entry.glucose ? name_of(entry.glucose->unit) : "",
            number(entry.number),
            csv_cell(entry.number_unit),
            csv_cell(entry.source),
            fmt::format("{}", entry.source_line)};
        bool first = true;
        for (const std::string& cell : cells) {
            csv += (first ? "" : ",") + cell;
            first = false;
        }
        csv += '\n';
    }
    return csv;
}

Json wears_of(const ClientHoldings& holdings) {
    Json wears = Json::array();
    for (const StoredWear& stored : holdings.wears) {
        const Wear& wear = stored.wear;
        wears.push_back(
            {{"label", wear.label},
             {"source", wear.source},
             {"start", utc(wear.start)},
             {"start_told", wear.start_told},
             {"end", words_for(wear.end)},
             {"planned_end", utc(wear.planned_end)},
             {"overpatch", stored.fixing.overpatch ? Json(*stored.fixing.overpatch) : Json()},
             {"site", stored.fixing.site},
             {"chosen", wear.chosen},
             {"interval_s", wear.interval.count()},
             {"readings", wear.readings.size()}});
    }
    return wears;
}

Json imports_of(const ClientHoldings& holdings) {
    Json imports = Json::array();
    for (const ImportRecord& import : holdings.imports) {
        imports.push_back({{"number", import.id},
                           {"at", utc(import.at)},
                           {"source", import.source},
                           {"rows",
                            {{"stored", import.rows_stored},
                             {"duplicate", import.rows_duplicate},
                             {"conflict", import.rows_conflict},
                             {"rejected", import.rows_rejected}}}});
    }
    return imports;
}

Json shares_of(const ClientHoldings& holdings) {
    Json shares = Json::array();
    for (const ShareRecord& record : holdings.shares) {
        const Share& share = record.share;
        Json kinds = Json::array();
        for (const SharedKind kind : every_shared_kind) {
            if (share.kinds.has(kind)) {
                kinds.push_back(name_of(kind));
            }
        }
        Json looks = Json::array();
        for (const ShareLook& look : record.looks) {
            looks.push_back({{"at", utc(look.at)}, {"asked", look.asked}, {"answer", look.answer}});
        }
        shares.push_back({{"number", record.id},
                          {"recipient", share.recipient},
                          {"purpose", share.purpose},
                          {"kinds", std::move(kinds)},
                          {"days", share.window.count()},
                          {"given_at", utc(share.given_at)},
                          {"until", utc(share.until)},
                          {"revoked_at", utc(share.revoked_at)},
                          {"looks", std::move(looks)}});
    }
    return shares;
}

Json stretches_of(const ClientHoldings& holdings) {
    Json stretches = Json::array();
    for (const StretchRecord& record : holdings.stretches) {
        stretches.push_back({{"number", record.id},
                             {"at", utc(record.at)},
                             {"from", utc(record.told.stretch.from)},
                             {"to", utc(record.told.stretch.to)},
                             {"suspect", record.told.suspect},
                             {"why", record.told.why}});
    }
    return stretches;
}

Json said_of(const ClientHoldings& holdings) {
    Json said;
    said["stretches"] = stretches_of(holdings);
    said["notes"] = Json::array();
    for (const NoteRecord& note : holdings.notes) {
        said["notes"].push_back({{"number", note.id}, {"at", utc(note.at)}, {"text", note.text}});
    }
    said["promises"] = Json::array();
    for (const PromiseRecord& promise : holdings.promises) {
        said["promises"].push_back({{"number", promise.id},
                                    {"made_at", utc(promise.made_at)},
                                    {"due", day(promise.due)},
                                    {"kept_at", utc(promise.kept_at)},
                                    {"text", promise.text}});
    }
    said["foods"] = Json::array();
    for (const FoodRecord& food : holdings.foods) {
        said["foods"].push_back({{"number", food.id},
                                 {"at", utc(food.at)},
                                 {"what", Json::parse(food_document(food.food), nullptr, false)}});
    }
    said["trials"] = Json::array();
    for (const TrialRecord& trial : holdings.trials) {
        Json days = Json::array();
        for (const TrialDayRecord& told : trial.days) {
            days.push_back({{"at", utc(told.at)}, {"day", day(told.day)}, {"done", told.done}});
        }
        said["trials"].push_back({{"number", trial.id},
                                  {"planned_at", utc(trial.planned_at)},
                                  {"trial", Json::parse(trial.document, nullptr, false)},
                                  {"days", std::move(days)},
                                  {"stopped", trial.stopped ? Json{{"at", utc(trial.stopped->at)},
                                                                   {"why", trial.stopped->why}}
                                                            : Json()}});
    }
    said["shares"] = shares_of(holdings);
    said["escalations"] = Json::array();
    for (const EscalationRecord& escalation : holdings.escalations) {
        Json answers = Json::array();
        for (const AcknowledgementRecord& answer : escalation.answers) {
            answers.push_back({{"at", utc(answer.at)}, {"by", answer.by}, {"done", answer.done}});
        }
        said["escalations"].push_back({{"number", escalation.id},
                                       {"event", escalation.event},
                                       {"first_seen", utc(escalation.first_seen)},
                                       {"what", Json::parse(escalation.document, nullptr, false)},
                                       {"answers", answers}});
    }
    return said;
}

Json photos_of(std::span<const MealPhotoLine> photos) {
    Json list = Json::array();
    for (const MealPhotoLine& photo : photos) {
        list.push_back({{"number", photo.id},
                        {"meal_at", utc(photo.meal_at)},
                        {"added_at", utc(photo.at)},
                        {"file", exported_file_of(photo)}});
    }
    return list;
}

}  // namespace

std::string exported_file_of(const MealPhotoLine& photo) {
    return fmt::format("photo-{}.jpg", photo.id);
}

std::vector<ExportedFile> client_export(const ClientHoldings& holdings,
                                        std::span<const MealPhotoLine> photos) {
    Json document;
    document["format"] = "client";
    document["version"] = 1;
    document["handle"] = holdings.client.handle;
    document["name"] = holdings.client.name;
    document["facts"] = Json::parse(client_document(holdings.client.facts));
    document["wears"] = wears_of(holdings);
    document["held_readings"] = Json::array();
    for (const BroughtIn::Held& held : holdings.held) {
        document["held_readings"].push_back({{"at", utc(held.at)},
                                             {"glucose", held.value.value()},
                                             {"unit", name_of(held.value.unit)}});
    }
    document["photos"] = photos_of(photos);
    document["imports"] = imports_of(holdings);
    document.update(said_of(holdings));
    document["findings"] = Json::array();
    for (const KeptFinding& finding : holdings.findings) {
        document["findings"].push_back({{"number", finding.id},
                                        {"at", utc(finding.at)},
                                        {"from", utc(finding.window.from)},
                                        {"to", utc(finding.window.to)},
                                        {"what", Json::parse(finding.document, nullptr, false)}});
    }
    const ZoneHistory zones = client_clock(holdings.client.facts);
    return {{"client.json", document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n"},
            {"readings.csv", readings_csv(holdings, zones)},
            {"diary.csv", diary_csv(holdings.diary)}};
}

}  // namespace tracewright
