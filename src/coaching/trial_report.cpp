#include "coaching/trial_report.hpp"

#include "coaching/paper_parts.hpp"
#include "findings/question_sentences.hpp"
#include "findings/review_findings.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <set>

namespace tracewright {

namespace {

// Days of the trial on which some sensor, read raw, was below a level.
struct LowDays {
    int seen = 0;
    int low = 0;
    int very_low = 0;
};

LowDays low_days(const Trial& trial, const ReviewInput& input) {
    std::set<CivilDate> seen;
    std::set<CivilDate> low;
    std::set<CivilDate> very_low;
    std::set<CivilDate> of_trial;
    for (const TrialBlock& block : trial.blocks) {
        of_trial.insert(block.days.begin(), block.days.end());
    }
    for (const Wear& wear : input.wears) {
        for (const Reading& reading : wear.readings) {
            const CivilDate date = input.zones.date_at(reading.at);
            if (!of_trial.contains(date)) {
                continue;
            }
            seen.insert(date);
            const bool mg = reading.unit() == GlucoseUnit::mg_per_dl;
            const bool beyond = reading.limit() == Limit::below;
            if (beyond || reading.hundredths() < (mg ? 7000 : 390)) {
                low.insert(date);
            }
            if (beyond || reading.hundredths() < (mg ? 5400 : 300)) {
                very_low.insert(date);
            }
        }
    }
    return {static_cast<int>(seen.size()), static_cast<int>(low.size()),
            static_cast<int>(very_low.size())};
}

std::string harms(const Trial& trial, const ReviewInput& input) {
    const LowDays days = low_days(trial, input);
    int symptoms = 0;
    for (const DiaryEntry& entry : input.diary) {
        const CivilDate date = input.zones.date_at(entry.at);
        const bool told = entry.kind == DiaryKind::symptom || entry.kind == DiaryKind::illness;
        symptoms += told && trial.first_day() <= date && date <= trial.last_day() ? 1 : 0;
    }
    const GlucoseUnit unit = input.unit;
    const bool mg = unit == GlucoseUnit::mg_per_dl;
    return fmt::format(
        "Of {} trial days the sensor saw {}; a reading below {} on {}, below {} on {}. Symptoms or "
        "illness in the diary of these weeks: {}. What was not written is not known.",
        2 * trial.blocks.size(), days.seen, mg ? "70 mg/dL" : "3.9 mmol/L", days.low,
        mg ? "54 mg/dL" : "3.0 mmol/L", days.very_low, symptoms);
}

void add_plan_items(std::vector<ReportItem>& items, const Trial& trial, const ReviewInput& input) {
    const TrialTemplate* made_from = trial_template_called(trial.code);
    const auto n = trial.blocks.size();
    const std::string method = trial.draw == Draw::fair_coins
                                   ? "a fair coin for each pair"
                                   : "as many pairs either way, all such orders alike";
    const std::string drawn =
        day_and_time(input.zones.wall_time(trial.drawn_at), input.zones.writing());
    items = {
        {"1a title", "A trial with one person (N-of-1): " + trial.question},
        {"2 why one person",
         "What others showed differs or is little; this asks it of one client."},
        {"3a design",
         fmt::format("{} pairs of like days, one day of each arm in each, from {} to {}. {}", n,
                     full_date(trial.first_day(), input.zones.writing()),
                     full_date(trial.last_day(), input.zones.writing()),
                     made_from != nullptr ? made_from->carries_over : "")},
        {"3b changes after the start", "None: the record is as it was drawn."},
        {"4 who", "One adult client of the practice, past the gates asked before the offer."},
        {"5 what was done", fmt::format("A: {}. B: {}.", trial.a, trial.b)},
        {"6 outcome",
         fmt::format("{} ({}).", facts_of(trial.outcome).words, facts_of(trial.outcome).means)},
        {"7 size",
         trial.power
             ? fmt::format("{} pairs show a difference of {} in {:.0f} % of trials.", n,
                           size_words(trial.worth, trial.outcome, input.unit), 100 * *trial.power)
             : fmt::format("{} pairs; the client's own noise was not known.", n)},
        {"8 order", fmt::format("By lot ({}), seed {}, drawn {} before the first day.", method,
                                trial.seed, drawn)},
        {"9 concealment",
         "The whole order was fixed before the first day and then known to client and coach."},
        {"10 who drew", "The program, from the seed; a record changed afterwards is refused."},
        {"11 blinding",
         "None: both arms are seen by the client. The sensor's readings are not "
         "judged by anyone."},
        {"12 analysis",
         "Mean difference of pairs, exact randomisation test, interval by inversion; as allotted "
         "first. Serial correlation does not move its size; period and weekday are matched within "
         "pairs."},
        {"23, 24 record", fmt::format("Not in a public register. Written down {}; smallest p that "
                                      "could come out: {:.4f}.",
                                      drawn, trial.smallest_p())}};
}

void add_result_items(std::vector<ReportItem>& items, const Trial& trial,
                      const TrialReading& reading, const ReviewInput& input) {
    const auto n = static_cast<int>(trial.blocks.size());
    items.push_back(
        {"13 days", fmt::format("{} as allotted, {} otherwise, {} not known.", reading.kept,
                                reading.broken, 2 * n - reading.kept - reading.broken)});
    items.push_back({"14 dates", fmt::format("{} to {}; ended as planned.",
                                             full_date(trial.first_day(), input.zones.writing()),
                                             full_date(trial.last_day(), input.zones.writing()))});
    items.push_back(
        {"15 before it",
         trial.noise_sd > 0
             ? fmt::format("Like days next to each other differed by {} (standard deviation).",
                           size_words(trial.noise_sd, trial.outcome, input.unit))
             : std::string("The client's own noise was not known.")});
    items.push_back(
        {"16 read",
         fmt::format("{} of {} pairs as allotted{}.", reading.as_allotted.pairs, n,
                     reading.as_done ? fmt::format(", {} as done", reading.as_done->pairs)
                                     : std::string())});
    items.push_back({"17 result", reading.finding.sentence});
    items.push_back({"18 beside it", reading.as_done
                                         ? std::string("As done, with Student's interval and no p.")
                                         : std::string("None.")});
    items.push_back({"19 harms", harms(trial, input)});
    items.push_back(
        {"20, 21 limits", "One person, not blinded. It speaks for this client and these weeks."});
}

}  // namespace

std::vector<ReportItem> report_items(const Trial& trial, const TrialReading& reading,
                                     const ReviewInput& input) {
    std::vector<ReportItem> items;
    add_plan_items(items, trial, input);
    if (reading.ended) {
        add_result_items(items, trial, reading, input);
    }
    return items;
}

std::vector<std::string> items_left_to_write() {
    return {"2a Why it was asked now", "22 What it means for this client", "25 Who paid"};
}

Paper trial_report(const Trial& trial, const TrialReading& reading, const ReviewInput& input,
                   const CareInput& care) {
    Paper paper;
    paper.reader = PaperReader::coach;
    paper.one_page = false;
    paper.made = made_at(care.as_of);
    paper.title =
        input.of_whom.empty() ? "Trial with one client" : "Trial with one client: " + input.of_whom;
    const auto say = [&](std::string text, bool strong = false) {
        paper.blocks.emplace_back(PaperSentence{std::move(text), strong});
    };
    say(trial.question, true);
    say(reading.finding.sentence);
    if (reading.ended && reading.as_allotted.pairs > 0) {
        paper.blocks.emplace_back(PaperFigure{0});
    }
    if (!reading.finding.next.sentence.empty()) {
        say("Next: " + reading.finding.next.sentence);
    }
    std::vector<std::string> caveats;
    for (const Caveat& caveat : reading.finding.caveats) {
        caveats.push_back(caveat.sentence);
    }
    if (!caveats.empty()) {
        paper.blocks.emplace_back(PaperList{std::move(caveats)});
    }
    paper.blocks.emplace_back(PaperHeading{"From the record, by the items of CENT 2015"});
    PaperTable table;
    table.columns = {"Item", "What the record says"};
    table.shares = {0.22, 0.78};
    for (ReportItem& item : report_items(trial, reading, input)) {
        table.rows.push_back({std::move(item.item), std::move(item.text)});
    }
    paper.blocks.emplace_back(std::move(table));
    paper.blocks.emplace_back(PaperHeading{"What no record can tell"});
    for (std::string& label : items_left_to_write()) {
        paper.blocks.emplace_back(RoomToWrite{std::move(label), 2});
    }
    say("Statement: Vohra et al. 2015, 10.1136/bmj.h1738; Shamseer et al. 2015, 10.1136/bmj.h1793. "
        "Items as remembered but for 1a, 3a and 5.");
    say(last_reading_for_client(care));
    paper.blocks.emplace_back(PaperList{cautions()});
    paper.foot =
        "Trial " + trial.code + ", " + full_date(trial.first_day(), input.zones.writing()) + " on";
    return paper;
}

}  // namespace tracewright
