#include "coaching/trial_calendar_page.hpp"

#include "coaching/paper_parts.hpp"
#include "coaching/restricted_eating.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

constexpr double room_to_tick = 21;  // points

struct ArmsInShort {
    std::string a = "A";
    std::string b = "B";
};

ArmsInShort in_short(const Trial& trial) {
    const TrialTemplate* made_from = trial_template_called(trial.code);
    return made_from == nullptr ? ArmsInShort{}
                                : ArmsInShort{made_from->a_in_short, made_from->b_in_short};
}

// Days side by side in two halves, the first half of the trial to the left.
PaperTable days_of(const Trial& trial, WayOfWriting way) {
    const ArmsInShort arms = in_short(trial);
    std::vector<std::vector<std::string>> days;
    for (const TrialBlock& block : trial.blocks) {
        for (const CivilDate day : block.days) {
            days.push_back(
                {short_day_words(day, way), day == block.day_of_a() ? arms.a : arms.b, ""});
        }
    }
    PaperTable table;
    table.columns = {"Day", "Do", "Done", "Day", "Do", "Done"};
    table.shares = {0.17, 0.19, 0.14, 0.17, 0.19, 0.14};
    table.row_height = room_to_tick;
    const std::size_t rows = (days.size() + 1) / 2;
    for (std::size_t i = 0; i < rows; ++i) {
        std::vector<std::string> row = days[i];
        const std::vector<std::string> right =
            rows + i < days.size() ? days[rows + i] : std::vector<std::string>{"", "", ""};
        row.insert(row.end(), right.begin(), right.end());
        table.rows.push_back(std::move(row));
    }
    return table;
}

}  // namespace

std::vector<Gate> gates_before_trial_papers(const Trial& trial, const CareInput& care) {
    const std::string words = trial.a + ". " + trial.b;
    if (const TrialTemplate* made_from = trial_template_called(trial.code)) {
        return gates_before_offer(made_from->proposed, words, care);
    }
    std::vector<Gate> all;
    ClientGates client(care);
    for (const Proposed proposed : {Proposed::low_carbohydrate, Proposed::walking}) {
        for (Gate& gate : client.before_offer(proposed, words)) {
            const bool told = std::ranges::any_of(
                all, [&](const Gate& other) { return other.kind == gate.kind; });
            if (!told) {
                all.push_back(std::move(gate));
            }
        }
    }
    return all;
}

Paper trial_calendar_page(const Trial& trial, const CareInput& care, const std::string& of_whom) {
    const ArmsInShort arms = in_short(trial);
    const TrialTemplate* made_from = trial_template_called(trial.code);
    Paper paper;
    paper.title = of_whom.empty() ? "Your trial, day by day" : "Trial, day by day: " + of_whom;
    paper.may_go_on = true;
    const auto say = [&](std::string text, bool strong = false) {
        paper.blocks.emplace_back(PaperSentence{std::move(text), strong});
    };
    say(trial.question, true);
    paper.blocks.emplace_back(PaperList{
        {fmt::format("{}: {}.", arms.a, trial.a), fmt::format("{}: {}.", arms.b, trial.b)}});
    say(fmt::format("A lot chose the days. Please do not swap them. {}",
                    made_from == nullptr ? "" : made_from->keep_alike));
    paper.blocks.emplace_back(days_of(trial, care.clock.writing()));
    paper.blocks.emplace_back(PaperList{
        {"Done: tick it. Not done: write what you did. Do not make up for it on another day. One "
         "day missed does not spoil the trial.",
         "Stop, and ring your coach: if you feel unwell, fall ill, go low, or your medicine "
         "changes. Write down the day.",
         "Chest pain, short of breath, faint: stop at once and get help now.",
         "We read it with you after the last day, not before."}});
    if (const std::string ill = sick_day_line(care); !ill.empty()) {
        say(ill, true);
    }
    if (auto aid = first_aid(care)) {
        paper.blocks.emplace_back(std::move(*aid));
    }
    paper.blocks.emplace_back(PaperContact{"Your coach", ""});
    add_contacts(paper, care.facts);
    end_client_page(paper, care);
    return paper;
}

}  // namespace tracewright
