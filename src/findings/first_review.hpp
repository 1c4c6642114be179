#pragma once

#include "findings/finding.hpp"
#include "findings/review_input.hpp"
#include "findings/what_goes_with_it.hpp"
#include "measures/episodes.hpp"
#include "measures/measure_set.hpp"
#include "measures/usual_day.hpp"
#include "trace/counted_trace.hpp"
#include "trace/fitness.hpp"
#include "trace/mark.hpp"

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// One day with the sentence that stands over its sheet.
struct ReviewDay {
    CivilDay day;
    TraceView view;
    std::string sentence;
};

/// Everything a first review says, computed once; page, print, command and JSON only lay it out.
/// Moved, not copied: the days' views look into its trace.
struct FirstReview {
    FirstReview() = default;
    FirstReview(FirstReview&&) = default;
    FirstReview& operator=(FirstReview&&) = default;
    FirstReview(const FirstReview&) = delete;
    FirstReview& operator=(const FirstReview&) = delete;

    ReviewInput input;
    CountedTrace trace;
    std::vector<Interval> not_worn;  ///< between wears, a day or longer: not counted as missing
    Fitness fitness;
    std::vector<Sufficiency> sufficiency;
    std::vector<Mark> marks;  ///< of all wears, in order of time
    Measures measures;
    std::vector<std::pair<std::string, Measures>>
        parts;  ///< "night 00:00 to 06:00", "weekdays", "wear 2"
    std::vector<Episode> episodes;
    std::vector<Episode> cut_short;  ///< very lows whose end was not seen
    UsualDay usual_day;
    std::vector<ReviewDay> days;
    WhatGoesWithIt goes_with;

    std::vector<Finding> findings;  ///< in the order of page 1: lows first
    std::vector<std::string> cannot_say;
    std::string last_reading;  ///< when it was and how old it is
    std::string one_thing_seen;
    std::string one_thing_to_ask;
    std::string one_thing_to_note;
    std::vector<std::string> cautions;  ///< each stands once on page and print
};

/// Reads nothing and asks no clock; an input without readings gives a review that says so.
FirstReview first_review(ReviewInput input);

}  // namespace tracewright
