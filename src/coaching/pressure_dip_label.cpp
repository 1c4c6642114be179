#include "coaching/pressure_dip_label.hpp"

#include "findings/wording.hpp"
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
constexpr hours near_a_symptom{2};
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
    if (!answered_none_that_can_cause_lows(input.medicines.risks_at(at))) {
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

// What the hours before say against it; empty: nothing.
std::string against_by_diary(const LadderInput& input, Instant at) {
    bool dinner = false;
    for (const DiaryEntry& entry : input.diary) {
        const auto before = at - entry.at;
        if (entry.kind == DiaryKind::symptom && std::chrono::abs(before) <= near_a_symptom) {
            return "a symptom near it";
        }
        if (before < hours{0}) {
            continue;
        }
        if (entry.kind == DiaryKind::alcohol && before <= after_alcohol) {
            return "alcohol before it";
        }
        if (entry.kind == DiaryKind::movement && before <= after_movement && entry.until &&
            *entry.until - entry.at >= long_movement) {
            return "long movement before it";
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
            const std::string when = day_and_time(input.clock.wall_time(dip.bottom));
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
