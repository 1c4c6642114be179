#include "coaching/explaining_page.hpp"

#include "coaching/client_medicines.hpp"
#include "coaching/eating_care.hpp"
#include "coaching/explaining_rules.hpp"
#include "coaching/gates.hpp"
#include "coaching/paper_parts.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

constexpr std::array pages = {
    ExplainsFacts{Explains::food, "food", "A rise after food",
                  "of all meals that can be read for three hours, the one whose rise is nearest "
                  "the middle of them; of equals the latest"},
    ExplainsFacts{Explains::lab_and_sensor, "lab", "Lab test and sensor",
                  "the latest A1c with at least 10 days of sensor within 28 days of it"},
    ExplainsFacts{Explains::one_meal, "one-meal", "One meal says little",
                  "the meal eaten most often, of equals the latest; of its times the one with the "
                  "smallest and the one with the largest rise"},
    ExplainsFacts{Explains::night, "night", "Your night",
                  "of all nights that can be shown, the one whose mean is nearest the middle of "
                  "them; of equals the latest"},
    ExplainsFacts{Explains::walking, "walking", "A walk after food",
                  "of all meals with movement within 90 minutes, the one whose rise is nearest "
                  "the middle of them; beside it the meal of the same time of day without, "
                  "nearest in date"},
    ExplainsFacts{Explains::stress, "stress", "Stress and glucose",
                  "of all tense hours noted, the one with the least food from two hours before to "
                  "four hours after; of equals the latest"},
};

// Why none of the pages is for this client now; empty if they are.
std::string closed_because(Explains explains, const CareInput& care, bool numbers, bool pregnant) {
    if (explains == Explains::lab_and_sensor && !numbers) {
        return "this page is made of numbers, and the eating screen is positive or not answered";
    }
    if (explains == Explains::lab_and_sensor && pregnant) {
        return "in pregnancy A1c and sensor are not set side by side: the maternity or diabetes "
               "clinic leads";
    }
    if (explains == Explains::walking) {
        const auto gates = gates_before_offer(Proposed::walking, {}, care);
        std::string why;
        for (const std::string& sentence : gates_for_coach(gates, Licence::none)) {
            why += (why.empty() ? "walking is not offered now: " : " ") + sentence;
        }
        if (!why.empty() && why.back() == '.') {
            why.pop_back();  // the reason is closed by who tells it
        }
        return why;
    }
    return {};
}

ExplainingPage drawn(Explains explains, const Explaining& client) {
    switch (explains) {
        case Explains::food:
            return explain_food(client);
        case Explains::lab_and_sensor:
            return explain_lab_and_sensor(client);
        case Explains::one_meal:
            return explain_one_meal(client);
        case Explains::night:
            return explain_night(client);
        case Explains::walking:
            return explain_walking(client);
        case Explains::stress:
            break;
    }
    return explain_stress(client);
}

}  // namespace

std::span<const ExplainsFacts> all_explaining_pages() {
    return pages;
}

const ExplainsFacts& facts_of(Explains explains) {
    return pages.at(static_cast<std::size_t>(explains));
}

std::optional<Explains> explaining_page_called(std::string_view code) {
    const auto found =
        std::ranges::find_if(pages, [&](const ExplainsFacts& one) { return one.code == code; });
    return found == pages.end() ? std::nullopt : std::optional(found->explains);
}

ExplainingPage explaining_page(Explains explains, const ExplainQuestion& question) {
    const MedicineTimeline medicines = client_medicines(question.facts, question.input.zones);
    const CareInput care{question.facts, question.input.wears, question.input.diary,
                         medicines,      question.input.zones, question.input.as_of};
    const bool numbers = !numbers_turned_down(question.facts.cautions.eating);
    const bool pregnant = shown_range(question.input.goals).in_pregnancy();
    ExplainingPage page = no_page(closed_because(explains, care, numbers, pregnant));
    if (page.not_made_because.empty()) {
        const ExplainedRecord record(question.input);
        page = drawn(explains, {question, record, care, numbers, pregnant});
    }
    page.explains = explains;
    if (page.not_made_because.empty()) {
        page.paper.title = facts_of(explains).title;
        page.illustration.title = page.paper.title;
        end_client_page(page.paper, care);
    }
    return page;
}

Illustration Explaining::illustration() const {
    Illustration result;
    result.unit = question.input.unit;
    result.range = shown_range(question.input.goals);
    result.numbers = numbers;
    return result;
}

ExplainingPage no_page(std::string because) {
    ExplainingPage page;
    page.not_made_because = std::move(because);
    return page;
}

std::vector<IllustratedTick> ticks_after_food() {
    return {{0, "first bite"}, {1, "1 h"}, {2, "2 h"}, {3, "3 h"}};
}

void say(Paper& paper, std::string text, bool strong) {
    paper.blocks.emplace_back(PaperSentence{std::move(text), strong});
}

void show_figure(Paper& paper) {
    paper.blocks.emplace_back(PaperFigure{0});
}

void name_sources(Paper& paper, std::vector<std::vector<std::string>> rows) {
    paper.blocks.emplace_back(
        PaperTable{{"Who was seen", "Where it stands"}, {0.46, 0.54}, std::move(rows), 0});
}

}  // namespace tracewright
