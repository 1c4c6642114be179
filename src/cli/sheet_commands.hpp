#pragma once

#include "cli/client_of_change.hpp"
#include "coaching/trial.hpp"
#include "coaching/trial_reading.hpp"

#include <optional>
#include <string>

namespace tracewright {

inline constexpr int sheets_json_version = 1;

struct SheetOptions {
    std::string out;           ///< folder for print and page; empty: only told
    std::string site;          ///< start page: where the sensor sits, in words
    std::string starts;        ///< first day of the wear
    int days = 14;             ///< planned days of the wear
    std::string page = "all";  ///< explain: which page
    bool list = false;         ///< explain: the pages there are
};

/// The client's page for the first day of a wear. Needs no readings.
Exit start_page_of(const WhoseChange& whose, const SheetOptions& options, const Streams& streams);
/// A fortnight's days on paper. Needs no readings.
Exit diary_sheet_of(const WhoseChange& whose, const SheetOptions& options, const Streams& streams);
/// The explaining pages that the client's own data can draw; the others are told with why.
Exit explain_of(const WhoseChange& whose, const SheetOptions& options, const Streams& streams);

/// A trial's paper as FILE.pdf or FILE.html: before its end, or without a reading, the client's
/// calendar; after it the coach's report. Not printed while a gate is closed: says why.
Exit write_trial_paper(const Trial& trial, const TrialReading* reading,
                       const ClientOfChange& client, const std::string& file,
                       const Streams& streams);

}  // namespace tracewright
