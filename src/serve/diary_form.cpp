#include "serve/diary_form.hpp"

#include "findings/wording.hpp"
#include "intake/clock_text.hpp"
#include "serve/corrected_value.hpp"
#include "time/day_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace tracewright {

namespace {

constexpr std::array kinds{DiaryKind::meal,    DiaryKind::movement, DiaryKind::sleep,
                           DiaryKind::mood,    DiaryKind::medicine, DiaryKind::finger_prick,
                           DiaryKind::ketones, DiaryKind::lab,      DiaryKind::alcohol,
                           DiaryKind::illness, DiaryKind::symptom,  DiaryKind::sensor,
                           DiaryKind::note};
constexpr double most_grams = 1000;

tl::unexpected<Reply> unfit(const std::string& detail) {
    return tl::make_unexpected(problem(422, "unfit_entry", "That is no such entry", detail));
}

std::optional<double> grams_of(std::string text) {
    std::ranges::replace(text, ',', '.');
    double grams = 0;
    const char* end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, grams);
    return read.ec == std::errc{} && read.ptr == end && grams >= 0 && grams <= most_grams
               ? std::optional(grams)
               : std::nullopt;
}

}  // namespace

Json json_of_diary_form(const DiaryEntry& entry, const ZoneHistory& clock) {
    return {
        {"kind", name_of(entry.kind)},
        {"date", day_text(clock.date_at(entry.at))},
        {"time",
         entry.time_uncertain ? "" : clock_time(clock.wall_time(entry.at), clock.writing())},
        {"text", entry.text},
        {"carbohydrate_g",
         entry.carbohydrate_g ? Json(fmt::format("{:g}", entry.carbohydrate_g->value)) : Json("")}};
}

tl::expected<DiaryEntry, Reply> corrected_by(const DiaryEntry& entry, const Fields& fields,
                                             const ZoneHistory& clock, GlucoseUnit unit,
                                             Instant now) {
    DiaryEntry told = entry;
    const auto kind = std::ranges::find_if(
        kinds, [&](DiaryKind one) { return fields.at("kind") == name_of(one); });
    if (kind == kinds.end()) {
        return unfit("kind: found another word, expected one of those offered");
    }
    told.kind = *kind;
    told.text = fields.at("text");
    told.not_described = told.not_described && told.text.empty();
    const std::string& grams = fields.at("carbohydrate_g");
    if (grams.empty()) {
        told.carbohydrate_g.reset();
    } else {
        const auto value = grams_of(grams);
        if (!value) {
            return unfit("carbohydrate: found no number of grams up to 1000, expected one");
        }
        if (!told.carbohydrate_g || told.carbohydrate_g->value != *value) {
            told.carbohydrate_g = Amount{*value, 0, false};
        }
    }
    if (told.kind != entry.kind || told.text != entry.text) {
        const MessageOptions how{clock.date_at(entry.at), clock, {}, unit, now};
        if (const auto read = read_value_anew(told, entry, how); !read) {
            return unfit(read.error());
        }
    }
    const Json before = json_of_diary_form(entry, clock);
    if (fields.at("date") == before["date"].get<std::string>() &&
        fields.at("time") == before["time"].get<std::string>()) {
        return told;
    }
    const auto day = day_of_text(fields.at("date"));
    const std::string& time = fields.at("time");
    const auto written = written_time(time);
    if (!day || (!time.empty() && (!written || !written->has_clock || written->has_date))) {
        return unfit("time: found no day and time of day, expected such as 2026-03-02 and 8:10");
    }
    told.time_uncertain = time.empty();
    const auto of_day = time.empty() ? std::chrono::seconds{std::chrono::hours{12}}
                                     : std::chrono::seconds{written->clock};
    told.written = WallTime{day->time_since_epoch()} + of_day;
    const auto found = clock.resolve(told.written);
    if (found.kind == WallResolution::Kind::skipped) {
        return unfit("time: found one that the clock never showed, as it was set forward");
    }
    told.at = found.first;
    if (told.until) {
        told.until = told.at + (*told.until - entry.at);
    }
    if (told.at > now) {
        return unfit("time: found one that is still to come, expected one that has been");
    }
    return told;
}

}  // namespace tracewright
