#include "render/review_json.hpp"

#include <fmt/format.h>

namespace tracewright {

namespace {

Json or_null(const std::string& text) {
    return text.empty() ? Json(nullptr) : Json(text);
}

const char* code_of(CaveatKind kind) {
    switch (kind) {
        case CaveatKind::few_days:
            return "few_days";
        case CaveatKind::below_consensus_coverage:
            return "below_consensus_coverage";
        case CaveatKind::hours_unseen:
            return "hours_unseen";
        case CaveatKind::old_data:
            return "old_data";
        case CaveatKind::censored:
            return "censored";
        case CaveatKind::sensor_suspect:
            return "sensor_suspect";
        case CaveatKind::several_wears:
            return "several_wears";
        case CaveatKind::two_sensors_at_once:
            return "two_sensors_at_once";
        case CaveatKind::levels_not_read:
            return "levels_not_read";
        case CaveatKind::levels_held:
            return "levels_held";
        case CaveatKind::zone_not_told:
            return "zone_not_told";
        case CaveatKind::zones_changed:
            return "zones_changed";
        case CaveatKind::end_not_seen:
            return "end_not_seen";
        case CaveatKind::single_readings:
            return "single_readings";
        case CaveatKind::medicines_not_known:
            return "medicines_not_known";
        case CaveatKind::medicine_changed:
            return "medicine_changed";
        case CaveatKind::travels_together:
            return "travels_together";
        case CaveatKind::diary_incomplete:
            return "diary_incomplete";
        case CaveatKind::illness_left_out:
            return "illness_left_out";
        case CaveatKind::strong_day_to_day:
            return "strong_day_to_day";
        case CaveatKind::unlike_others:
            return "unlike_others";
        case CaveatKind::absence_read_as_none:
            return "absence_read_as_none";
        case CaveatKind::other_kind_of_sensor:
            return "other_kind_of_sensor";
        case CaveatKind::days_in_turn:
            return "days_in_turn";
        case CaveatKind::chosen_because_bad:
            return "chosen_because_bad";
    }
    return "";
}

const char* code_of(Answer answer) {
    return answer == Answer::yes                             ? "yes"
           : answer == Answer::no_difference_worth_acting_on ? "no_difference_worth_acting_on"
                                                             : "cannot_tell";
}

const char* code_of(NextStep step) {
    switch (step) {
        case NextStep::nothing:
            return "nothing";
        case NextStep::collect_more:
            return "collect_more";
        case NextStep::run_trial:
            return "run_trial";
        case NextStep::agree_change:
            return "agree_change";
        case NextStep::contact_prescriber:
            return "contact_prescriber";
        case NextStep::finger_prick:
            return "finger_prick";
        case NextStep::ask_client:
            return "ask_client";
    }
    return "";
}

Json interval_json(const std::optional<std::array<double, 2>>& interval) {
    return interval ? Json{(*interval)[0], (*interval)[1]} : Json(nullptr);
}

Json json_of(const Measure& measure) {
    Json json = {{"value", measure.value ? Json(*measure.value) : Json(nullptr)},
                 {"unit", measure.unit},
                 {"interval95", interval_json(measure.interval95)},
                 {"days", measure.days},
                 {"bounds", interval_json(measure.bounds)},
                 {"absent_because", or_null(measure.absent_because)},
                 {"no_interval_because", or_null(measure.no_interval_because)},
                 {"censored_share", measure.censored_share}};
    return json;
}

Json json_of_level(const Reading& reading, GlucoseUnit unit) {
    return {{"value", reading.value().in(unit)},
            {"unit", name_of(unit)},
            {"beyond_limit", reading.limit() == Limit::below   ? Json("below")
                             : reading.limit() == Limit::above ? Json("above")
                                                               : Json(nullptr)}};
}

}  // namespace

std::string iso_time(Instant at, const ZoneHistory& zones) {
    const Zone& zone = zones.zone_at(at);
    const WallTime wall = zone.wall_time(at);
    const auto day = std::chrono::floor<std::chrono::days>(wall);
    const std::chrono::year_month_day ymd{day};
    const std::chrono::hh_mm_ss time{wall - day};
    std::string text =
        fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}", static_cast<int>(ymd.year()),
                    static_cast<unsigned>(ymd.month()), static_cast<unsigned>(ymd.day()),
                    time.hours().count(), time.minutes().count(), time.seconds().count());
    if (!zone.is_floating()) {
        const auto minutes = zone.offset_at(at).count() / 60;
        text += fmt::format("{}{:02}:{:02}", minutes < 0 ? '-' : '+', std::abs(minutes) / 60,
                            std::abs(minutes) % 60);
    }
    return text;
}

Json json_of(const Measures& measures) {
    Json json = Json::object();
    for (const Measure& measure : measures) {
        json[std::string(measure.name)] = json_of(measure);
    }
    return json;
}

Json json_of(std::span<const Episode> episodes, const ZoneHistory& zones, GlucoseUnit unit) {
    Json json = Json::array();
    for (const Episode& episode : episodes) {
        json.push_back({{"kind", name_of(episode.kind)},
                        {"rules", "consensus 2023"},
                        {"from", iso_time(episode.from, zones)},
                        {"to", iso_time(episode.to, zones)},
                        {"minutes", static_cast<double>(episode.lasted.count()) / 60},
                        {"extreme", json_of_level(episode.extreme, unit)},
                        {"start_not_seen", episode.start_not_seen},
                        {"end_not_seen", episode.end_not_seen},
                        {"single_reading", episode.single_reading}});
    }
    return json;
}

Json json_of(std::span<const Mark> marks, const ZoneHistory& zones) {
    Json json = Json::array();
    for (const Mark& mark : marks) {
        json.push_back({{"reason", name_of(mark.reason)},
                        {"from", iso_time(mark.stretch.from, zones)},
                        {"to", iso_time(mark.stretch.to, zones)},
                        {"seen", mark.seen},
                        {"left_out", false}});
    }
    return json;
}

Json json_of_window(const Fitness& fitness, Interval window, const ZoneHistory& zones) {
    return {{"from", iso_time(window.from, zones)},
            {"to", iso_time(window.to, zones)},
            {"days", fitness.days},
            {"active_percent", fitness.active_percent()},
            {"denominator", fitness.denominator},
            {"zone", zones.zone_at(window.from).name()}};
}

Json json_of(const Finding& finding) {
    Json json = {{"code", finding.code},
                 {"question", finding.question},
                 {"answer", code_of(finding.answer)},
                 {"sentence", finding.sentence},
                 {"client_sentence", or_null(finding.client_sentence)}};
    json["estimate"] = nullptr;
    if (finding.estimate) {
        json["estimate"] = {{"value", finding.estimate->value},
                            {"unit", finding.estimate->unit},
                            {"interval95", interval_json(finding.estimate->interval95)},
                            {"per", or_null(finding.estimate->per)}};
    }
    const Evidence& evidence = finding.evidence;
    json["evidence"] = {{"used", evidence.used},
                        {"used_what", evidence.used_what},
                        {"left_out", evidence.left_out},
                        {"left_out_why", evidence.left_out_why},
                        {"method", evidence.method},
                        {"seed", evidence.seed},
                        {"adjusted_for", evidence.adjusted_for}};
    json["caveats"] = Json::array();
    for (const Caveat& caveat : finding.caveats) {
        json["caveats"].push_back({{"code", code_of(caveat.kind)}, {"sentence", caveat.sentence}});
    }
    json["next"] = {{"step", code_of(finding.next.step)},
                    {"sentence", or_null(finding.next.sentence)}};
    return json;
}

namespace {

Json json_of(const WhatGoesWithIt& goes_with, const FirstReview& review) {
    Json json = {{"none_because", or_null(goes_with.none_because)},
                 {"foods_left_off", review.input.foods_left_off},
                 {"meals_hours_gained", goes_with.meals_hours_gained},
                 {"meals_certainty", goes_with.meals_certainty},
                 {"meal_sentences", goes_with.meal_sentences}};
    json["questions"] = Json::array();
    for (const StandingQuestion& question : goes_with.questions) {
        Json told = json_of(question.told.finding);
        told["hours_gained"] = question.hours_gained;
        told["certainty"] = question.certainty;
        json["questions"].push_back(std::move(told));
    }
    json["ask_about"] = Json::array();
    if (goes_with.meals) {
        for (const UnwrittenRise& rise : goes_with.meals->ask_about) {
            json["ask_about"].push_back(
                {{"from", iso_time(rise.from, review.input.zones)},
                 {"to", iso_time(rise.to, review.input.zones)},
                 {"rise", converted(rise.rise, GlucoseUnit::mg_per_dl, review.input.unit)},
                 {"unit", name_of(review.input.unit)}});
        }
    }
    return json;
}

}  // namespace

Json json_of_review(const FirstReview& review) {
    const ZoneHistory& zones = review.input.zones;
    Json json = {{"version", review_json_version},
                 {"as_of", iso_time(review.input.as_of, zones)},
                 {"last_reading", review.last_reading},
                 {"window", json_of_window(review.fitness, review.trace.window, zones)}};
    json["wears"] = Json::array();
    for (const Wear& wear : review.input.wears) {
        Json told = {{"label", wear.label},
                     {"source", wear.source},
                     {"start", iso_time(wear.start, zones)},
                     {"interval_seconds", wear.interval.count()},
                     {"readings", wear.readings.size()},
                     {"end", words_for(wear.end)}};
        if (!wear.empty()) {
            told["last_reading"] = iso_time(wear.readings.back().at, zones);
            told["lasted_minutes"] = static_cast<double>(wear.lasted().count()) / 60;
        }
        json["wears"].push_back(told);
    }
    json["two_at_once"] = Json::array();
    for (const CountedTrace::Choice& choice : review.trace.choices) {
        json["two_at_once"].push_back({{"from", iso_time(choice.overlap.from, zones)},
                                       {"to", iso_time(choice.overlap.to, zones)},
                                       {"counted", review.input.wears[choice.counted].label},
                                       {"why", choice.why}});
    }
    json["findings"] = Json::array();
    for (const Finding& finding : review.findings) {
        json["findings"].push_back(json_of(finding));
    }
    json["goes_with"] = json_of(review.goes_with, review);
    json["cannot_say"] = review.cannot_say;
    json["one_thing_seen"] = review.one_thing_seen;
    json["one_thing_to_ask"] = review.one_thing_to_ask;
    json["one_thing_to_note"] = review.one_thing_to_note;
    json["measures"] = json_of(review.measures);
    json["parts"] = Json::object();
    for (const auto& [name, measures] : review.parts) {
        json["parts"][name] = json_of(measures);
    }
    json["episodes"] = json_of(std::span<const Episode>(review.episodes), zones, review.input.unit);
    json["marks"] = json_of(std::span<const Mark>(review.marks), zones);
    json["days"] = Json::array();
    for (const ReviewDay& day : review.days) {
        json["days"].push_back({{"from", iso_time(day.day.from, zones)},
                                {"hours", static_cast<double>(day.day.length().count()) / 3600},
                                {"sentence", day.sentence}});
    }
    json["cautions"] = review.cautions;
    return json;
}

std::string dumped(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace tracewright
