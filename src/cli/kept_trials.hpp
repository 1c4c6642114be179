#pragma once

#include "cli/change_commands.hpp"
#include "coaching/gates.hpp"
#include "store/kept_trials.hpp"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace tracewright {

/// The trials kept with whom a command reads; none with files. Error: the exit code, its sentence
/// said.
tl::expected<std::vector<KeptTrial>, Exit> kept_trials_with(const ClientOfChange& client,
                                                            const Streams& streams);

/// Keeps a trial that was just drawn. Refused with files, and while another goes on.
Exit keep_trial(ClientOfChange& client, const Trial& trial, const Streams& streams);

/// How a trial is told: in words or as JSON, with the items of a report, and where its paper goes.
struct ReadingForm {
    bool json = false;
    const TrialOptions& options;
};
/// Lists the trials kept; of one (--number): tells what was done, stops it, writes its calendar, or
/// reads it.
Exit kept_trials_of(ClientOfChange& client, ReadingForm form, const Streams& streams);

/// Prints a reading: the finding, the gates closed since the lot and, where asked for, the items of
/// a report; or as JSON. Then writes its paper where one is asked for.
Exit tell_reading(const Trial& trial, TrialReading reading, const ClientOfChange& client,
                  ReadingForm form, const Streams& streams);

/// Writes the trial's paper where one is asked for; else the exit of what was read.
Exit with_paper(const Trial& trial, const TrialReading* reading, const ClientOfChange& client,
                const TrialOptions& options, const Streams& streams);

void print_gates(const std::vector<Gate>& gates, Licence licence, std::ostream& out);

/// What gates look at of a client; `medicines` must outlive it.
CareInput care_of(const ClientOfChange& client, const MedicineTimeline& medicines);

/// DATE=a, b or neither, as told on the command line. Error: a sentence.
tl::expected<DoneOn, std::string> done_of(const TrialOptions& options);

}  // namespace tracewright
