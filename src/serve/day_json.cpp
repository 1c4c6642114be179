#include "serve/day_json.hpp"

#include "findings/since_words.hpp"
#include "findings/special_days.hpp"
#include "findings/wording.hpp"
#include "measures/shown_range.hpp"
#include "render/day_marks.hpp"
#include "render/diary_lanes.hpp"
#include "time/day_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <set>
#include <utility>

namespace tracewright {

namespace {

using std::chrono::seconds;

constexpr seconds quarter{900};
// So short that one looks at single readings: a day of 25 hours, or two short ones.
constexpr std::chrono::hours looked_at_closely{49};

std::int64_t number_of(Instant at) {
    return at.time_since_epoch().count();
}

// How far each instant is from the one before it, as pairs: so many seconds, so many times. A
// fortnight of even minutes takes two numbers instead of twenty thousand.
class StepsWritten {
  public:
    void add(Instant at) {
        if (last_) {
            const auto step = at - *last_;
            if (step != step_) {
                write();
                step_ = step;
            }
            ++times_;
        }
        last_ = at;
    }
    std::string text() {
        write();
        return std::move(text_);
    }

  private:
    void write() {
        if (times_ > 0) {
            fmt::format_to(std::back_inserter(text_), "{}{},{}", text_.empty() ? "" : ",",
                           step_.count(), times_);
        }
        times_ = 0;
    }

    std::optional<Instant> last_;
    seconds step_{0};
    std::int64_t times_ = 0;
    std::string text_;
};

struct Bands {
    std::vector<std::int32_t> edges;  ///< hundredths
    std::vector<const char*> names;   ///< one more than edges
};

// By the edges of each unit, never converted (architecture rule 1).
Bands bands_of(const FirstReview& sheets) {
    const bool mg = sheets.input.unit == GlucoseUnit::mg_per_dl;
    if (shown_range(sheets.input.goals).in_pregnancy()) {
        return {mg ? std::vector{5'400, 6'300, 14'000} : std::vector{300, 350, 780},
                {"very low", "low", "in range", "high"}};
    }
    return {mg ? std::vector{5'400, 7'000, 18'000, 25'000} : std::vector{300, 390, 1'000, 1'390},
            {"very low", "low", "in range", "high", "very high"}};
}

// Every hour of the client's clock, so that one who looks closer finds two of them within two
// hours; every quarter where one looks closely; and where the clock jumped.
Json ticks_of(const ZoneHistory& zones, Interval stretch) {
    Json ticks = Json::array();
    const seconds step =
        stretch.length() <= looked_at_closely ? quarter : seconds{std::chrono::hours{1}};
    WallClock clock(zones);
    const auto first =
        std::chrono::ceil<std::chrono::duration<std::int64_t, std::ratio<900>>>(stretch.from);
    for (Instant at = first; at <= stretch.to; at += quarter) {
        const WallTime wall = clock.at(at);
        const auto since = wall - std::chrono::floor<std::chrono::days>(wall);
        const bool jumped =
            at > stretch.from && clock.offset_at(at) != clock.offset_at(at - quarter);
        if (jumped || since % step == seconds{0}) {
            Json tick = {{"at", number_of(at)},
                         {"label", clock_time(clock.at(at), zones.writing())}};
            if (jumped) {
                tick["label"] = clock_time(clock.at(at), zones.writing()) + " (clock changed)";
            }
            ticks.push_back(std::move(tick));
        }
    }
    return ticks;
}

Json borders_of(const ZoneHistory& zones, Interval stretch) {
    Json borders = Json::array();
    for (const CivilDay& day : zones.days(stretch)) {
        borders.push_back(
            {{"at", number_of(day.from)}, {"label", day_words(day.date, zones.writing())}});
    }
    return borders;
}

Json lanes_of(const FirstReview& sheets, Interval stretch) {
    Json lanes = Json::array();
    for (const char* name : {"Ate", "Moved", "Slept", "Felt", "Took"}) {
        Json items = Json::array();
        for (const DiaryEntry& entry : sheets.input.diary) {
            const Instant end = std::max(entry.until.value_or(entry.at), entry.at);
            if (end < stretch.from || entry.at >= stretch.to || !worth_a_lane(entry) ||
                lane_of(entry.kind) != std::string_view(name)) {
                continue;
            }
            items.push_back({{"at", number_of(entry.at)},
                             {"end", entry.until ? Json(number_of(end)) : Json()},
                             {"label", clock_time(sheets.input.zones.wall_time(entry.at),
                                                  sheets.input.zones.writing())},
                             {"text", entry_words(entry, sheets.input.foods_left_off)}});
        }
        lanes.push_back({{"name", name}, {"items", std::move(items)}});
    }
    return lanes;
}

Json pricks_of(const FirstReview& sheets, Interval stretch) {
    Json pricks = Json::array();
    for (const DiaryEntry& entry : sheets.input.diary) {
        if (entry.kind == DiaryKind::finger_prick && entry.glucose && stretch.contains(entry.at)) {
            pricks.push_back({{"at", number_of(entry.at)},
                              {"value", rounded_hundredths(entry.glucose->in(sheets.input.unit))},
                              {"label", glucose_words(entry.glucose->in(sheets.input.unit),
                                                      sheets.input.unit)}});
        }
    }
    return pricks;
}

const char* kind_of(Fill fill) {
    return fill == Fill::very_low ? "very low" : fill == Fill::low ? "low" : "suspect";
}

Json marks_of(const FirstReview& sheets, Interval stretch) {
    Json marks = Json::array();
    const auto add = [&](const DayMark& mark) {
        const ZoneHistory& clock = sheets.input.zones;
        marks.push_back(
            {{"at", number_of(mark.stretch.from)},
             {"end", number_of(mark.stretch.to)},
             {"from", day_and_time(clock.wall_time(mark.stretch.from), clock.writing())},
             {"to", day_and_time(clock.wall_time(mark.stretch.to), clock.writing())},
             {"kind", kind_of(mark.fill)},
             {"label", mark.label.empty() ? "very low" : mark.label}});
    };
    for (const auto& row : day_marks(sheets, stretch)) {
        for (const DayMark& mark : row) {
            add(mark);
        }
    }
    return marks;
}

Json last_reading_of(const FirstReview& sheets, Instant now) {
    std::optional<Instant> last;
    for (const Wear& wear : sheets.input.wears) {
        if (!wear.empty()) {
            last = std::max(last.value_or(wear.readings.back().at), wear.readings.back().at);
        }
    }
    return json_of_last_reading(last, sheets.input.zones, now);
}

// A whole fortnight of them: written as they stand, not by way of a document, levels as whole
// hundredths, which a browser reads twice as fast as fractions. Each level that occurs is added to
// `levels`.
void write_wear(std::string& text, const Wear& wear, Interval stretch, const ReviewInput& input,
                Detail detail, std::set<std::int32_t>& levels) {
    const auto from = std::ranges::lower_bound(wear.readings, stretch.from, {}, &Reading::at);
    const auto to = std::ranges::lower_bound(wear.readings, stretch.to, {}, &Reading::at);
    if (from == to) {
        return;
    }
    StepsWritten steps;
    std::string value;
    Json labels = Json::array();  // only where one looks closely
    const bool closely = stretch.length() <= looked_at_closely;
    const GlucoseUnit unit = input.unit;
    WallClock clock(input.zones);
    Json beyond = Json::array();
    const auto shown = shown_readings(std::span(from, to), unit, detail);
    for (const ShownReading& reading : shown) {
        // A gap is one more point without a value.
        if (reading.missing_from) {
            steps.add(*reading.missing_from);
            value += "null,";
            if (closely) {
                labels.push_back("");
            }
        }
        if (closely) {
            labels.push_back(clock_time(clock.at(reading.at), input.zones.writing()));
        }
        levels.insert(reading.level);
        steps.add(reading.at);
        const fmt::format_int digits(reading.level);
        value.append(digits.data(), digits.size());
        value += ',';
        if (reading.limit != Limit::none) {
            beyond.push_back({{"at", number_of(reading.at)},
                              {"label", (reading.limit == Limit::below ? "below " : "above ") +
                                            glucose_words(reading.level / 100.0, unit)}});
        }
    }
    value.pop_back();
    text += text.back() == '[' ? "" : ",";
    text += "{\"label\":" + Json(wear.label).dump() +
            ",\"begin\":" + std::to_string(number_of(shown.front().at)) + ",\"steps\":[" +
            steps.text() + "],\"value\":[" + value + "],\"beyond_limit\":" + beyond.dump() +
            (closely ? ",\"labels\":" + labels.dump() : "") + "}";
}

}  // namespace

Json json_of_last_reading(std::optional<Instant> last, const ZoneHistory& clock, Instant now) {
    return last ? Json{{"at", number_of(*last)},
                       {"label", day_and_time(clock.wall_time(*last), clock.writing())},
                       {"age", age_words(*last, now, clock)},
                       {"since", since_words(now - *last)}}
                : Json();
}

DaysUnlike days_unlike(const FirstReview& sheets) {
    DaysUnlike unlike;
    for (SpecialDay& day : special_days(sheets.input.diary, sheets.input.zones)) {
        unlike[day.date].push_back(std::move(day.why));
    }
    return unlike;
}

Json json_of_days(const FirstReview& sheets) {
    Json days = Json::array();
    DaysUnlike unlike = days_unlike(sheets);
    for (const ReviewDay& day : sheets.days) {
        days.push_back({{"date", day_text(day.day.date)},
                        {"label", full_date(day.day.date, sheets.input.zones.writing())},
                        {"hours", static_cast<double>(day.day.length().count()) / 3600},
                        {"readings", readings_within(day.view).size()},
                        {"sentence", day.sentence},
                        {"unlike", unlike[day.day.date]}});
    }
    return days;
}

std::string stretch_text(const FirstReview& sheets, Interval stretch, Detail detail, Instant now,
                         Json head) {
    const Bands bands = bands_of(sheets);
    head["zone"] = sheets.input.zones.zone_at(stretch.from).name();
    head["unit"] = name_of(sheets.input.unit);
    head["band_edges"] = bands.edges;
    head["edge_words"] = Json::array();
    for (const std::int32_t edge : bands.edges) {
        head["edge_words"].push_back(glucose_number(edge / 100.0, sheets.input.unit));
    }
    head["bands"] = bands.names;
    head["ticks"] = ticks_of(sheets.input.zones, stretch);
    head["day_borders"] = borders_of(sheets.input.zones, stretch);
    head["lanes"] = lanes_of(sheets, stretch);
    head["finger_pricks"] = pricks_of(sheets, stretch);
    head["marks"] = marks_of(sheets, stretch);
    head["last_reading"] = last_reading_of(sheets, now);
    head["caution"] = "Not an alarm. Don't rely on this page to be woken or warned.";
    std::string text = head.dump(-1, ' ', false, Json::error_handler_t::replace);
    text.back() = ',';
    text += "\"wears\":[";
    std::set<std::int32_t> levels;
    for (const Wear& wear : sheets.input.wears) {
        write_wear(text, wear, stretch, sheets.input, detail, levels);
    }
    // Once for each level, not for each reading: a fortnight has few levels.
    Json words = Json::array();
    for (const std::int32_t hundredths : levels) {
        words.push_back({{"level", hundredths},
                         {"words", glucose_words(hundredths / 100.0, sheets.input.unit)}});
    }
    return text + "],\"level_words\":" + words.dump() + "}";
}

}  // namespace tracewright
