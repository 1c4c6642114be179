#pragma once

#include "diary/diary_entry.hpp"
#include "findings/finding.hpp"
#include "measures/episodes.hpp"
#include "measures/goals.hpp"
#include "measures/measure_set.hpp"
#include "measures/usual_day.hpp"
#include "time/zone_history.hpp"
#include "trace/counted_trace.hpp"
#include "trace/fitness.hpp"
#include "trace/mark.hpp"
#include "trace/suspect.hpp"
#include "trace/wear.hpp"

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// What a review reads of one client: straight from files, or with what a practice knows.
struct ReviewInput {
    std::string of_whom;  ///< the client's name as papers bear it; empty: from files alone
    std::vector<Wear> wears;
    Diary diary;
    ZoneHistory zones{Zone::floating()};
    GlucoseUnit unit = GlucoseUnit::mg_per_dl;  ///< to show
    std::optional<Interval> window;             ///< empty: all there is
    Goals goals = consensus_goals(GoalKind::adults);
    SuspectRules suspect;
    std::optional<std::size_t> prefer_wear;  ///< of two at once, by index into wears
    Instant as_of;                           ///< 'now': decides how old the last reading is
    std::uint64_t seed = 1;
};

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
