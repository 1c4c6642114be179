#pragma once

#include "cli/client_of_change.hpp"
#include "cli/streams.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

inline constexpr int trial_json_version = 1;

struct TrialOptions {
    bool list = false;
    std::string question;  ///< code of a template
    std::optional<int> pairs;
    std::optional<double> worth;  ///< in the unit shown, or hours
    bool balanced = false;
    std::string starts;
    std::string write;              ///< where the trial is written down
    std::string calendar;           ///< where its calendar file is written
    std::string read;               ///< a trial written down before: read it
    std::vector<std::string> done;  ///< DATE=a, b or neither
    bool report = false;
    std::string page;   ///< where its paper is written: calendar, after the end the report
    bool keep = false;  ///< with a practice: keep the trial that was drawn
    bool kept = false;  ///< list those kept
    std::optional<std::int64_t> number;  ///< of one kept
    std::string stop;                    ///< why it is stopped
};

struct BeforeAfterOptions {
    std::vector<int> before;  ///< wears by number; empty: the last but one
    std::vector<int> after;   ///< empty: the last
    bool other_kind = false;
    std::optional<double> worth;         ///< hours a day
    std::optional<double> sensor_error;  ///< percent
};

struct LabsOptions {
    std::string diet_started;
    std::string surgery_on;
};

/// Plans a trial, or reads one that was written down.
Exit trial(const WhoseChange& whose, const TrialOptions& options, const Streams& streams);
/// Hours in range of later wears against earlier ones.
Exit before_after_of(const WhoseChange& whose, const BeforeAfterOptions& options,
                     const Streams& streams);
/// Laboratory results beside what the sensor saw, the next A1c, remission.
Exit labs(const WhoseChange& whose, const LabsOptions& options, const Streams& streams);

/// What is known of the client's sensors.
Exit sensor(const WhoseChange& whose, const Streams& streams);

}  // namespace tracewright
