#pragma once

#include <cstdint>
#include <string>

namespace tracewright {

/// What of a text a reader was not sure of.
enum class DoubtAbout : std::uint8_t { kind, day, time, food, spelling, portion, eaten, amount };

const char* name_of(DoubtAbout about);

/// One thing that was not sure, and what was taken instead, in a sentence without an end stop.
struct Doubt {
    DoubtAbout about = DoubtAbout::food;
    std::string sentence;
};

}  // namespace tracewright
