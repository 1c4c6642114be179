#include "coaching/eating_care.hpp"
#include "coaching/paper_parts.hpp"
#include "coaching/restricted_eating.hpp"
#include "coaching/wear_sheets.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <chrono>

namespace tracewright {

namespace {

void heading(Paper& paper, const char* text) {
    paper.blocks.emplace_back(PaperHeading{text});
}

void list(Paper& paper, std::vector<std::string> items) {
    paper.blocks.emplace_back(PaperList{std::move(items)});
}

std::string when(const WearBeginning& wear, WayOfWriting way) {
    if (!wear.starts) {
        return "First day: ______________   Last day: ______________";
    }
    const std::string begins = "First day: " + full_date(*wear.starts, way) + ".";
    return wear.days ? fmt::format("{} Last day: {}.", begins,
                                   full_date(*wear.starts + std::chrono::days{*wear.days - 1}, way))
                     : begins + " Last day: ______________";
}

// What only the client can tell of a day; amounts only where the eating screen was answered no.
std::vector<std::string> what_to_write(bool amounts) {
    return {amounts ? "Ate: what, about how much, and when you began. Drinks too."
                    : "Ate: what, and when you began. Drinks too.",
            "Moved, slept: from when to when.",
            "Felt: ill, tense, at ease, shaky, sweaty, in pain.",
            "Took: your medicine, pain tablets, vitamins. Some mislead a sensor."};
}

}  // namespace

Paper start_page(const WearBeginning& wear, const CareInput& care) {
    const bool numbers = !numbers_turned_down(care.facts.cautions.eating);
    const bool pregnant = goals_that_hold(care.facts).kind == GoalKind::pregnancy;
    Paper paper;
    paper.title = wear.of_whom.empty() ? "Your sensor: how to start"
                                       : "Your sensor: how to start, " + wear.of_whom;
    paper.blocks.emplace_back(PaperSentence{when(wear, care.clock.writing())});
    heading(paper, "Where it sits");
    list(paper, {wear.site.empty() ? "Place: ____________________" : "Place: " + wear.site + ".",
                 "Clean, dry skin, no cream. Not the side you sleep on. The leaflet in the box "
                 "goes first."});
    heading(paper, "The first day");
    list(paper, {"It often reads too high or too low. We do not judge this day. Write your diary "
                 "all the same.",
                 numbers ? "Do not act on one number. Look for what comes back day by day."
                         : "You need not look at the numbers. Ask your coach how to hide them."});
    if (pregnant) {
        list(paper, {"Your maternity or diabetes clinic leads. Ask them what to look for."});
    }
    heading(paper, "What to write, as it happens");
    list(paper, what_to_write(numbers));
    heading(paper, "Do a finger-prick");
    list(paper, {"when the sensor and how you feel do not match,",
                 "when it reads low, or you feel shaky or sweaty,",
                 "when it shows nothing and you feel unwell. Write down time and number."});
    heading(paper, "If it falls off");
    list(paper, {"Do not stick it on again. Keep it, and write down day and time.",
                 "Red, sore or bleeding skin: take it off and ring your coach or clinic."});
    if (const std::string ill = sick_day_line(care); !ill.empty()) {
        paper.blocks.emplace_back(PaperSentence{ill, true});
    }
    if (auto aid = first_aid(care)) {
        paper.blocks.emplace_back(std::move(*aid));
    }
    add_contacts(paper, care.facts);
    end_client_page(paper, care);
    return paper;
}

}  // namespace tracewright
