#include "client_life.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

constexpr auto silent_at_first = 60min;  // common practice: no readings while a sensor settles

std::vector<SensorFault> faults_of(const WearPlan& plan, Interval worn, const ZoneHistory& zones,
                                   Draws& draws) {
    std::vector<SensorFault> faults{{{worn.from, worn.from + silent_at_first}, 0}};
    for (const PressureDip& dip : plan.dips) {
        const Instant from = zones.resolve(dip.from).first;
        faults.push_back({{from, from + dip.lasts}, dip.depth_mg_per_dl});
    }
    for (const SilentStretch& silence : plan.silences) {
        faults.push_back({{zones.resolve(silence.from).first, zones.resolve(silence.to).first}, 0});
    }
    const int short_silences = draws.whole(0, 3);
    for (int i = 0; i < short_silences; ++i) {
        const auto minute = draws.whole(0, static_cast<int>(plan.lasts.count()));
        const Instant from = worn.from + std::chrono::minutes{minute};
        faults.push_back({{from, from + std::chrono::minutes{draws.whole(20, 120)}}, 0});
    }
    return faults;
}

LivedWear lived(const WearPlan& plan, const ClientLife& life, std::uint64_t seed) {
    Draws draws(seed, life.story.key + " " + plan.label);
    LivedWear wear{.plan = plan};
    wear.worn.from = life.zones.resolve(plan.put_on).first;
    wear.worn.to = wear.worn.from + plan.lasts;
    wear.bias = std::exp(0.04 * (plan.bias_drawn ? draws.normal() : plan.bias_z));
    wear.course = glucose_course(life.story, life.days, life.zones, wear.worn);
    const auto faults = faults_of(plan, wear.worn, life.zones, draws);
    wear.readings = sensed(wear.course, wear.worn.from, plan.kind, wear.bias, faults, draws);
    wear.diary = diary_lines(life.story, life.days, life.zones, wear, seed);
    return wear;
}

}  // namespace

ClientLife client_life(const ClientStory& story, std::uint64_t seed) {
    ClientLife life{story, client_days(story, seed), zones_of(story), {}};
    for (const WearPlan& plan : story.wears) {
        life.wears.push_back(lived(plan, life, seed));
    }
    return life;
}

}  // namespace tracewright
