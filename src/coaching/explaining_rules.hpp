#pragma once

#include "coaching/care_input.hpp"
#include "coaching/explained_record.hpp"
#include "coaching/explaining_page.hpp"

namespace tracewright {

// The six pages, each in a file of its own; for those files and explaining_page.cpp only.

/// What all six read of one client.
struct Explaining {
    const ExplainQuestion& question;
    const ExplainedRecord& record;
    const CareInput& care;
    bool numbers = true;    ///< levels and foods may be told (safety rule 12)
    bool pregnant = false;  ///< or planning, or unsure (rule 11)

    /// An illustration of this client's: unit, range and whether numbers are told.
    Illustration illustration() const;
};

ExplainingPage explain_food(const Explaining& client);
ExplainingPage explain_lab_and_sensor(const Explaining& client);
ExplainingPage explain_one_meal(const Explaining& client);
ExplainingPage explain_night(const Explaining& client);
ExplainingPage explain_walking(const Explaining& client);
ExplainingPage explain_stress(const Explaining& client);

/// A page that can't be made, and why.
ExplainingPage no_page(std::string because);

/// "3 h after food" on an axis that begins at the first bite.
std::vector<IllustratedTick> ticks_after_food();

// What the six add to their papers.
void say(Paper& paper, std::string text, bool strong = false);
void show_figure(Paper& paper);

/// Where what is said of others stands: the cohort and its source, a row each.
void name_sources(Paper& paper, std::vector<std::vector<std::string>> rows);

}  // namespace tracewright
