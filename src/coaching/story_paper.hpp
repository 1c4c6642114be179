#pragma once

#include "coaching/paper.hpp"
#include "coaching/story.hpp"
#include "time/way_of_writing.hpp"

#include <string>

namespace tracewright {

/// "The best date for the next laboratory A1c: 1 June 2026 or later, 90 days after ...".
std::string next_lab_words(const NextLab& next, WayOfWriting way);

/// The story as a paper for coach and client to look at together: a very low first, then how old
/// the last reading is. Where the eating screen is positive or not answered the line without hours
/// in range, foods and weight, what was agreed beside food, and no comparison (safety rule 12).
/// `of_whom`: the client's name; empty: from files alone.
Paper story_paper(const Story& story, const std::string& of_whom, WayOfWriting way);

}  // namespace tracewright
