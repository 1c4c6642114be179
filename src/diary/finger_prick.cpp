#include "diary/finger_prick.hpp"

#include <array>
#include <string_view>
#include <utility>

namespace tracewright {

namespace {

constexpr std::array<std::pair<MeterLimit, std::string_view>, 4> marks{
    {{MeterLimit::shows_low, "LO"},
     {MeterLimit::shows_high, "HI"},
     {MeterLimit::below_level, "<"},
     {MeterLimit::above_level, ">"}}};

Glucose usual_end(bool low, GlucoseUnit unit) {
    const bool mg = unit == GlucoseUnit::mg_per_dl;
    return {mg ? (low ? 2000 : 60000) : (low ? 110 : 3330), unit};
}

}  // namespace

MeterLimit meter_limit(const DiaryEntry& entry) {
    if (entry.kind == DiaryKind::finger_prick) {
        for (const auto& [limit, mark] : marks) {
            if (entry.number_unit == mark) {
                return limit;
            }
        }
    }
    return MeterLimit::none;
}

void set_meter_limit(DiaryEntry& entry, MeterLimit limit, GlucoseUnit unit) {
    entry.kind = DiaryKind::finger_prick;
    entry.number_unit.clear();
    for (const auto& [one, mark] : marks) {
        if (one == limit) {
            entry.number_unit = mark;
        }
    }
    if (limit == MeterLimit::shows_low || limit == MeterLimit::shows_high) {
        entry.glucose = usual_end(limit == MeterLimit::shows_low, unit);
    }
}

bool has_measured_level(const DiaryEntry& entry) {
    return entry.kind == DiaryKind::finger_prick && entry.glucose &&
           meter_limit(entry) == MeterLimit::none;
}

}  // namespace tracewright
