#pragma once

#include "time/instant.hpp"

#include <chrono>
#include <optional>
#include <string_view>

namespace tracewright {

/// How long something had gone on when it was written, as the words tell it: "for 10 hours", "three
/// days of fever", "all night", "since yesterday", "since Monday", "since 3 am", "started two days
/// ago". The longest, where several are told; empty where none is. Lengths that tell of something
/// else ("in two days", "every 4 hours", "2 hours after lunch") are none. What is vague is read
/// long ("for hours": more than six; "a few days": three; "yesterday": from its beginning), for it
/// decides on whom to call. English, ours, no source.
std::optional<std::chrono::minutes> told_duration(std::string_view text, WallTime written);

}  // namespace tracewright
