// The sheets and explaining pages as they come out of the printer. What they say is tested in
// tests/coaching.
#include "render/approved.hpp"
#include "render/explaining_figures.hpp"
#include "render/paper_pages.hpp"

#include "coaching/explaining_page.hpp"
#include "coaching/lived_for_tests.hpp"
#include "coaching/trial_calendar_page.hpp"
#include "coaching/trial_report.hpp"
#include "coaching/wear_sheets.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

using namespace tracewright;
using namespace tracewright::testing;
using ::testing::HasSubstr;

namespace {

/// Of whom the most stands on a page: everything open, a long name, first aid and the sick-day
/// line.
Care with_the_most_to_say() {
    Care care = lived();
    care.facts.medicines_asked_on.reset();
    care.facts.cautions.eating.positive = Answered::yes;
    care.facts.contacts.front().name = "Invented clinic for diabetes on the far side of the river";
    Care::set(care.wears[0], 3 * 288 + 30, 2, 60);
    return care;
}

Trial a_trial(const TrialTemplate& made_from, int pairs, CivilDate first) {
    Trial trial = trial_of(made_from);
    trial.seed = 7;
    trial.worth = 18;
    trial.drawn_at = care_at(-15, 12);
    trial.blocks = blocks_from(first, pairs, made_from.free_days);
    draw_arms(trial.blocks, trial.draw, trial.seed);
    return trial;
}

/// Written out where a reader of the pictures asks for them: TRACEWRIGHT_SHOW_PAPERS=FOLDER.
void show(const std::string& name, const std::string& pdf) {
    if (const char* folder = std::getenv("TRACEWRIGHT_SHOW_PAPERS")) {
        std::ofstream(std::filesystem::path(folder) / (name + ".pdf"), std::ios::binary) << pdf;
    }
}

/// What stands on the page, without its style, against the approved text.
void expect_approved_page(const std::string& name, const Paper& paper,
                          const std::vector<Figure>& figures = {}) {
    const std::string html = paper_html(paper, figures);
    expect_approved(html.substr(html.find("<main>")), name + ".html");
}

void expect_one_sheet(const std::string& name, const Paper& paper,
                      const std::vector<Figure>& figures = {}) {
    const auto pdf = paper_pdf(paper, figures);
    ASSERT_TRUE(pdf) << name << ": " << pdf.error().sentence();
    show(name, *pdf);
    const auto again = paper_pdf(paper, figures);
    EXPECT_EQ(*pdf, *again) << name;
    const std::string html = paper_html(paper, figures);
    EXPECT_THAT(html, HasSubstr("</html>"));
    EXPECT_EQ(html.find("<script"), std::string::npos);
}

}  // namespace

TEST(SheetsPages, start_page_and_diary_sheets_are_one_sheet_each_with_the_most_to_say) {
    for (const Care& care : {lived(), with_the_most_to_say()}) {
        const std::string who = care.facts.medicines_asked_on ? "" : "-most";
        care.ask([&](const CareInput& in) {
            const WearBeginning wear{"Invented Alder von und zu Sommerwiese", "left upper arm",
                                     care_day, 14};
            expect_one_sheet("start-page" + who, start_page(wear, in));
            expect_one_sheet("start-page-to-fill" + who, start_page({}, in));
            const auto sheets = diary_sheets(wear, in);
            for (std::size_t i = 0; i < sheets.size(); ++i) {
                expect_one_sheet("diary-" + std::to_string(i + 1) + who, sheets[i]);
            }
            return 0;
        });
    }
}

TEST(SheetsPages, explaining_pages_are_one_sheet_each_with_the_most_to_say) {
    int made = 0;
    for (const Care& care : {lived(), with_the_most_to_say()}) {
        for (const ExplainsFacts& facts : all_explaining_pages()) {
            const ExplainingPage page = explained(care, facts.explains);
            if (!page.not_made_because.empty()) {
                continue;
            }
            ++made;
            expect_one_sheet(std::string("explain-") + facts.code +
                                 (care.facts.medicines_asked_on ? "" : "-most"),
                             page.paper, {illustration_figure(page.illustration)});
        }
    }
    EXPECT_GE(made, 10);
}

TEST(SheetsPages, a_calendar_of_ten_pairs_is_one_sheet_a_longer_one_goes_on) {
    Care care = with_the_most_to_say();
    care.ask([&](const CareInput& in) {
        for (const TrialTemplate& one : trial_templates()) {
            Paper paper = trial_calendar_page(a_trial(one, 10, care_day), in);
            paper.may_go_on = false;
            expect_one_sheet(std::string("calendar-") + one.code, paper);
        }
        Paper longer = trial_calendar_page(a_trial(trial_templates().front(), 40, care_day), in);
        EXPECT_TRUE(paper_pdf(longer));
        longer.may_go_on = false;
        EXPECT_FALSE(paper_pdf(longer));
        return 0;
    });
}

TEST(SheetsPages, a_report_bears_its_pairs_as_a_figure) {
    const Care care = lived();
    const Trial trial =
        a_trial(*trial_template_called("walk-after-dinner"), 6, care_day - std::chrono::days{13});
    const ReviewInput input = input_of_care(care);
    const TrialReading reading = read_trial(trial, input);
    const Paper paper =
        care.ask([&](const CareInput& in) { return trial_report(trial, reading, input, in); });
    const Figure figure = trial_pairs_figure(trial, reading, input.unit);
    EXPECT_EQ(figure.rows.size(), 6U);
    EXPECT_EQ(figure.alternative, reading.finding.sentence);
    const auto pdf = paper_pdf(paper, std::vector{figure});
    ASSERT_TRUE(pdf);
    show("trial-report", *pdf);
    EXPECT_THAT(paper_html(paper, std::vector{figure}), HasSubstr("<desc>"));
}

TEST(SheetsPages, are_as_approved) {
    const Care care = lived();
    for (const ExplainsFacts& facts : all_explaining_pages()) {
        const ExplainingPage page = explained(care, facts.explains);
        expect_approved_page(std::string("explain-") + facts.code, page.paper,
                             {illustration_figure(page.illustration)});
    }
    const Trial trial =
        a_trial(*trial_template_called("walk-after-dinner"), 6, care_day - std::chrono::days{13});
    const ReviewInput input = input_of_care(care);
    const TrialReading reading = read_trial(trial, input);
    care.ask([&](const CareInput& in) {
        const WearBeginning wear{"Invented Alder", "left upper arm", care_day, 14};
        expect_approved_page("start-page", start_page(wear, in));
        expect_approved_page("diary-sheet", diary_sheets(wear, in).front());
        expect_approved_page("trial-calendar", trial_calendar_page(trial, in));
        expect_approved_page("trial-report", trial_report(trial, reading, input, in),
                             {trial_pairs_figure(trial, reading, input.unit)});
        return 0;
    });
}

TEST(SheetsPages, a_figure_tells_no_level_where_numbers_are_off) {
    Care care = lived();
    const auto svg = [&] {
        return svg_of(illustration_figure(explained(care, Explains::food).illustration));
    };
    EXPECT_THAT(svg(), HasSubstr(">mg/dL<"));
    care.facts.cautions.eating.positive = Answered::yes;
    const std::string off = svg();
    EXPECT_THAT(off, HasSubstr(">higher<"));
    EXPECT_EQ(off.find("mg/dL"), std::string::npos);
    EXPECT_EQ(off.find(">180<"), std::string::npos);
}

TEST(SheetsPages, no_text_of_a_figure_for_clients_is_smaller_than_12_points) {
    const std::string svg =
        svg_of(illustration_figure(explained(lived(), Explains::walking).illustration));
    std::size_t texts = 0;
    for (std::size_t at = svg.find("font-size=\""); at != std::string::npos;
         at = svg.find("font-size=\"", at + 1)) {
        EXPECT_GE(std::stod(svg.substr(at + 11)), 12);
        ++texts;
    }
    EXPECT_GE(texts, 8U);
}
