#include "coaching/pressure_dip_label.hpp"

#include "diary/written_words.hpp"
#include "findings/wording.hpp"
#include "measures/time_in_bands.hpp"
#include "trace/pressure_dip.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace tracewright {

namespace {

using std::chrono::hours;
using std::chrono::minutes;

constexpr int old_age = 75;
constexpr hours after_alcohol{12};
constexpr hours after_movement{12};
constexpr hours long_movement{1};
constexpr hours before_a_dip{2};
constexpr hours morning_after{8};        // what was felt at night is written in the morning
constexpr std::chrono::days lingers{7};  // a medicine stopped within them may still act
constexpr minutes same_time_of_night{90};

std::chrono::seconds clock_of(const LadderInput& input, Instant at) {
    const WallTime wall = input.clock.wall_time(at);
    return wall - std::chrono::floor<std::chrono::days>(wall);
}

bool asleep(const LadderInput& input, Instant at) {
    bool night_written = false;
    for (const DiaryEntry& entry : input.diary) {
        if (entry.kind != DiaryKind::sleep || !entry.until) {
            continue;
        }
        if (entry.at <= at && at < *entry.until) {
            return true;
        }
        night_written = night_written || std::chrono::abs(entry.at - at) < hours{12};
    }
    const auto clock = clock_of(input, at);
    return !night_written && (clock >= hours{23} || clock < hours{7});
}

// What the client's facts say against the label, whatever the night; empty: nothing.
std::string against_by_facts(const LadderInput& input, const ClientFacts& facts, Instant at) {
    if (!answered_none_that_can_cause_lows(
            input.medicines.risks_in({at - lingers, at + std::chrono::seconds{1}}))) {
        return "no medicine list answered 'none that can cause lows'";
    }
    const Cautions& cautions = facts.cautions;
    if (cautions.severe_low_before != Answered::no) {
        return "an earlier severe low, or not asked";
    }
    if (cautions.kidney_disease != Answered::no || cautions.liver_disease != Answered::no) {
        return "kidney or liver disease, or not asked";
    }
    if (cautions.stomach_surgery != Answered::no) {
        return "stomach surgery, or not asked";
    }
    const auto year = static_cast<int>(std::chrono::year_month_day{
        std::chrono::sys_days{input.clock.date_at(at).time_since_epoch()}}
                                           .year());
    if (!facts.born_year || year - *facts.born_year >= old_age) {
        return "age 75 or more, or not known";
    }
    return {};
}

bool tells_of_alcohol(const DiaryEntry& entry) {
    return entry.kind == DiaryKind::alcohol ||
           speaks_of(entry, {"alcohol", "wine", "beer", "whisk", "vodka", "cocktail", "champagne",
                             "cider", "schnapps", "spirits", "liqueur", "bier", "wein"});
}

bool tells_of_a_symptom(const DiaryEntry& entry) {
    return entry.kind == DiaryKind::symptom ||
           (tells_how_they_are(entry) &&
            speaks_of(entry, {"sweat", "shak", "trembl", "dizz", "confus", "hungry", "palpit",
                              "heart rac", "headache", "nightmare", "woke"}));
}

bool is_a_low_finger_prick(const DiaryEntry& entry) {
    return entry.kind == DiaryKind::finger_prick && entry.glucose &&
           band_of(Reading{entry.at, *entry.glucose, std::chrono::seconds{1}}) < Band::in_range;
}

// A length that was not written may have been long.
bool may_be_long(const DiaryEntry& movement) {
    if (movement.until) {
        return *movement.until - movement.at >= long_movement;
    }
    const bool in_minutes =
        movement.number && small_letters(movement.number_unit).starts_with("min");
    return !in_minutes || *movement.number >= 60;
}

// What the hours around say against it; empty: nothing.
std::string against_by_diary(const LadderInput& input, Instant at) {
    bool dinner = false;
    for (const DiaryEntry& entry : input.diary) {
        const auto before = at - entry.at;
        const bool near = before <= before_a_dip && -before <= morning_after;
        if (near && tells_of_a_symptom(entry)) {
            return "a symptom near it";
        }
        if (near && is_a_low_finger_prick(entry)) {
            return "a low finger-prick near it";
        }
        if (before < hours{0}) {
            continue;
        }
        if (before <= after_alcohol && tells_of_alcohol(entry)) {
            return "alcohol before it";
        }
        if (entry.kind == DiaryKind::movement && before <= after_movement && may_be_long(entry)) {
            return "long movement before it, or its length not written";
        }
        if (entry.kind == DiaryKind::meal && before <= hours{14}) {
            const auto clock = clock_of(input, entry.at);
            if (clock >= hours{21} || clock < hours{4}) {
                return "a late meal before it";
            }
            dinner = dinner || clock >= hours{16};
        }
    }
    return dinner ? std::string() : "no dinner written before it";
}

bool within(std::chrono::seconds a, std::chrono::seconds b, minutes distance) {
    const auto apart = std::chrono::abs(a - b);
    return std::min(apart, std::chrono::seconds{hours{24}} - apart) <= distance;
}

bool recurs(const LadderInput& input, const std::vector<DipShape>& dips, const DipShape& dip) {
    return std::ranges::any_of(dips, [&](const DipShape& other) {
        return std::chrono::abs(other.bottom - dip.bottom) > hours{12} &&
               within(clock_of(input, other.bottom), clock_of(input, dip.bottom),
                      same_time_of_night);
    });
}

}  // namespace

DipLabels dip_labels(const LadderInput& input, const ClientFacts& facts) {
    DipLabels labels;
    for (const Wear& wear : input.wears) {
        std::vector<DipShape> dips = dip_shapes(wear);
        std::erase_if(dips, [&](const DipShape& dip) { return !asleep(input, dip.bottom); });
        for (const DipShape& dip : dips) {
            std::string against = against_by_facts(input, facts, dip.bottom);
            if (against.empty()) {
                against = against_by_diary(input, dip.bottom);
            }
            if (against.empty() && recurs(input, dips, dip)) {
                against = "it came at the same time of two nights";
            }
            const std::string when =
                day_and_time(input.clock.wall_time(dip.bottom), input.clock.writing());
            if (against.empty()) {
                labels.may_be_pressure.push_back(
                    {MarkReason::pressure_dip, dip.stretch,
                     fmt::format(
                         "{}: a steep fall to {} and back: may be pressure on the sensor. A "
                         "finger-prick next time would tell.",
                         when, glucose_words(dip.lowest.in(input.unit), input.unit))});
            } else {
                labels.not_labelled.push_back(
                    fmt::format("{}: shaped like pressure on the sensor, but not called so: {}.",
                                when, against));
            }
        }
    }
    return labels;
}

}  // namespace tracewright
