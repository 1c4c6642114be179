#include "coaching/eating_care.hpp"
#include "coaching/paper_parts.hpp"
#include "coaching/wear_sheets.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <chrono>

namespace tracewright {

namespace {

constexpr int days_on_a_sheet = 7;
constexpr int fortnight = 14;
constexpr double room_for_a_day = 56;  // points: four written lines

std::string title_of(const WearBeginning& wear, int week, WayOfWriting way) {
    const std::string whose = wear.of_whom.empty() ? "" : " of " + wear.of_whom;
    if (!wear.starts) {
        return fmt::format("Diary{}, week {}", whose, week + 1);
    }
    const CivilDate from = *wear.starts + std::chrono::days{days_on_a_sheet * week};
    return fmt::format("Diary{}, {}", whose,
                       date_range(from, from + std::chrono::days{days_on_a_sheet - 1}, way));
}

PaperTable days_of(const WearBeginning& wear, int week) {
    PaperTable table;
    table.columns = {"Day", "Ate", "Moved", "Slept", "Felt", "Took"};
    table.shares = {0.12, 0.34, 0.15, 0.13, 0.13, 0.13};
    table.row_height = room_for_a_day;
    for (int i = 0; i < days_on_a_sheet; ++i) {
        std::string day;
        if (wear.starts) {
            // Without the month: the column is narrow.
            day = weekday_and_day(*wear.starts + std::chrono::days{days_on_a_sheet * week + i});
        }
        table.rows.push_back({day, "", "", "", "", ""});
    }
    return table;
}

}  // namespace

std::vector<Paper> diary_sheets(const WearBeginning& wear, const CareInput& care) {
    const bool amounts = !numbers_turned_down(care.facts.cautions.eating);
    std::vector<Paper> sheets;
    for (int week = 0; week < fortnight / days_on_a_sheet; ++week) {
        Paper paper;
        paper.title = title_of(wear, week, care.clock.writing());
        paper.blocks.emplace_back(PaperSentence{
            amounts ? "Time first, then what and about how much: 8:10 porridge, one bowl, and a "
                      "banana. Write it as it happens. A day with gaps is still of use."
                    : "Time first, then what: 8:10 porridge and a banana. Write it as it happens. "
                      "A day with gaps is still of use."});
        paper.blocks.emplace_back(days_of(wear, week));
        if (auto aid = first_aid(care)) {
            paper.blocks.emplace_back(std::move(*aid));
        }
        add_contacts(paper, care.facts);
        end_client_page(paper, care);
        sheets.push_back(std::move(paper));
    }
    return sheets;
}

}  // namespace tracewright
