#pragma once

#include "coaching/explaining_page.hpp"
#include "coaching/handout.hpp"
#include "coaching/paper.hpp"
#include "coaching/prescriber_letter.hpp"
#include "coaching/trial_reading.hpp"
#include "coaching/wear_sheets.hpp"
#include "render/figure.hpp"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace tracewright {

/// A paper with the figures it asks for, ready to be told, shown and printed.
struct DrawnPaper {
    std::string name;  ///< of its files and in JSON: "handout", "diary-sheet-1"
    Paper paper;
    std::vector<Figure> figures;         ///< in the order of the paper's places
    std::vector<std::string> for_coach;  ///< told beside it, never on it
    /// Those for a phone's width, in the same order; none: the others do for it.
    std::vector<Figure> narrow_figures = {};
};

/// Why a paper is not made, in words that go on "because ...".
struct PaperNotMade {
    std::string name;
    std::string because;
};

DrawnPaper drawn_handout(const Handout& made, const FirstReview& review);
DrawnPaper drawn_talk_sheet(const PaperClient& client);
/// Whom the letter can't name or ring is told the coach.
DrawnPaper drawn_letter(const PaperClient& client, const LetterAbout& about,
                        const LetterRecord& record);

// What needs no readings.
DrawnPaper drawn_start_page(const WearBeginning& wear, const CareInput& care);
/// One for each week.
std::vector<DrawnPaper> drawn_diary_sheets(const WearBeginning& wear, const CareInput& care);

tl::expected<DrawnPaper, PaperNotMade> drawn_explaining_page(Explains explains,
                                                             const ExplainQuestion& question);

/// A trial's paper: before its end, or without a reading, the client's calendar; after it the
/// coach's report. Error: the gates that are closed now.
tl::expected<DrawnPaper, std::vector<Gate>> drawn_trial_paper(const Trial& trial,
                                                              const TrialReading* reading,
                                                              const ReviewInput& input,
                                                              const CareInput& care);

}  // namespace tracewright
