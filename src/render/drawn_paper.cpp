#include "render/drawn_paper.hpp"

#include "coaching/consent_words.hpp"
#include "coaching/talk_sheet.hpp"
#include "coaching/trial_calendar_page.hpp"
#include "coaching/trial_report.hpp"
#include "render/explaining_figures.hpp"
#include "render/handout_figure.hpp"

#include <fmt/format.h>

namespace tracewright {

namespace {

void tell_missing_numbers(DrawnPaper& drawn) {
    for (const std::string& who : contacts_without_number(drawn.paper)) {
        drawn.for_coach.push_back("No telephone number is known (" + who +
                                  "): a blank line is printed. Please write it in.");
    }
}

// Nobody but the coach reads it, and nothing is refused: a letter may be needed for safety.
void tell_consent_over(DrawnPaper& drawn, std::string words) {
    if (!words.empty()) {
        drawn.for_coach.push_back(std::move(words));
    }
}

std::string consent_over(const CareInput& care) {
    return consent_over_for_coach(care.facts.consent, care.clock.date_at(care.as_of),
                                  care.clock.writing());
}

}  // namespace

DrawnPaper drawn_handout(const Handout& made, const FirstReview& review) {
    return {"handout",
            made.paper,
            {handout_figure(made.picture, review)},
            made.for_coach,
            {narrow_handout_figure(made.picture, review)}};
}

DrawnPaper drawn_talk_sheet(const PaperClient& client) {
    DrawnPaper drawn{"talk", talk_sheet(client), {}, {}};
    tell_consent_over(drawn, client.consent_over());
    return drawn;
}

DrawnPaper drawn_letter(const PaperClient& client, const LetterAbout& about,
                        const LetterRecord& record) {
    DrawnPaper drawn{"letter", prescriber_letter(client, about, record), {}, {}};
    tell_consent_over(drawn, client.consent_over());
    for (const std::string& who : contacts_without_number(drawn.paper)) {
        drawn.for_coach.push_back(
            who == "To" ? "No prescriber is on record: a blank line is printed. Please ask."
                        : "No telephone number is known (" + who +
                              "): a blank line is printed. Please ask for it.");
    }
    return drawn;
}

DrawnPaper drawn_start_page(const WearBeginning& wear, const CareInput& care) {
    DrawnPaper drawn{"start-page", start_page(wear, care), {}, {}};
    tell_consent_over(drawn, consent_over(care));
    tell_missing_numbers(drawn);
    return drawn;
}

std::vector<DrawnPaper> drawn_diary_sheets(const WearBeginning& wear, const CareInput& care) {
    std::vector<DrawnPaper> all;
    for (Paper& paper : diary_sheets(wear, care)) {
        all.push_back({fmt::format("diary-sheet-{}", all.size() + 1), std::move(paper), {}, {}});
        tell_consent_over(all.back(), consent_over(care));
        tell_missing_numbers(all.back());
    }
    return all;
}

tl::expected<DrawnPaper, PaperNotMade> drawn_explaining_page(Explains explains,
                                                             const ExplainQuestion& question) {
    ExplainingPage page = explaining_page(explains, question);
    const ExplainsFacts& facts = facts_of(explains);
    const std::string name = fmt::format("explain-{}", facts.code);
    if (!page.not_made_because.empty()) {
        return tl::make_unexpected(PaperNotMade{name, std::move(page.not_made_because)});
    }
    DrawnPaper drawn{name, std::move(page.paper), {illustration_figure(page.illustration)}, {}};
    drawn.for_coach.push_back(fmt::format("Shown: {}. Rule: {}.", page.chosen, facts.rule));
    drawn.for_coach.insert(drawn.for_coach.end(), page.to_know.begin(), page.to_know.end());
    tell_missing_numbers(drawn);
    return drawn;
}

tl::expected<DrawnPaper, std::vector<Gate>> drawn_trial_paper(const Trial& trial,
                                                              const TrialReading* reading,
                                                              const ReviewInput& input,
                                                              const CareInput& care) {
    if (auto gates = gates_before_trial_papers(trial, care); !gates.empty()) {
        return tl::make_unexpected(std::move(gates));
    }
    if (reading == nullptr || !reading->ended) {
        return DrawnPaper{
            "trial-calendar", trial_calendar_page(trial, care, input.of_whom), {}, {}};
    }
    return DrawnPaper{"trial-report",
                      trial_report(trial, *reading, input, care),
                      {trial_pairs_figure(trial, *reading, input.unit)},
                      {}};
}

}  // namespace tracewright
