#pragma once

#include "client_days.hpp"
#include "glucose_course.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace tracewright {

/// One line as the client wrote it; empty texts were left empty.
struct DiaryLine {
    WallTime at;
    std::string eaten{}, carbohydrate{}, moved{}, minutes{}, slept{}, finger_prick{}, mood{},
        medicine{}, note{};
};

/// A wear with what really was in the blood and what the sensor made of it.
struct LivedWear {
    WearPlan plan;
    Interval worn{};
    double bias = 1;
    std::vector<double> course{};  ///< plasma, mg/dL, for each minute of `worn`
    std::vector<SensorReading> readings{};
    std::vector<DiaryLine> diary{};  ///< ascending by time
};

/// A story played out.
struct ClientLife {
    ClientStory story;
    std::vector<StoryDay> days;
    ZoneHistory zones;
    std::vector<LivedWear> wears;

    /// The day of a number; days.front() is number -1.
    const StoryDay& day(int number) const { return days.at(static_cast<std::size_t>(number + 1)); }
};

/// Plays a story. The same story and seed give the same life; a change of effects changes glucose
/// and nothing of what was eaten, slept, walked or written.
ClientLife client_life(const ClientStory& story, std::uint64_t seed);

/// What the client wrote of the days that lie (in part) within `worn`.
std::vector<DiaryLine> diary_lines(const ClientStory& story, const std::vector<StoryDay>& days,
                                   const ZoneHistory& zones, const LivedWear& wear,
                                   std::uint64_t seed);

}  // namespace tracewright
