// Handout, talk sheet and letter as they are printed. Everybody in here is invented.
#include "coaching/handout.hpp"
#include "render/approved.hpp"

#include "coaching/paper_for_tests.hpp"
#include "coaching/prescriber_letter.hpp"
#include "coaching/talk_sheet.hpp"
#include "recording_canvas.hpp"
#include "render/handout_figure.hpp"
#include "render/paper_pages.hpp"
#include "render/theme.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

using namespace tracewright;
using namespace tracewright::testing;
using ::testing::Ge;
using ::testing::HasSubstr;

namespace {

namespace fs = std::filesystem;

/// All that can stand on a handout at once: what leads, a long change, both boxes, a long name.
Care all_at_once() {
    Care care = with_a_very_low_night("gliclazide 80");
    care.facts.medicines.push_back({"empagliflozin 10", {}, {}});
    care.entry(DiaryKind::symptom, care_at(-1, 8), "vomiting");
    Care::set(care.wears[0], 2000, 30, 420);
    care.facts.cautions.another_autoimmune_disease = Answered::yes;
    care.facts.contacts = {
        {ContactKind::clinic, "Clinic of a Town with a Rather Long Invented Name", "0123 456 789"}};
    AgreedChange change = a_walk();
    change.words = "walk with the neighbour and her dog to the old mill and back";
    change.when = "as soon as the plates are in the kitchen, before television";
    change.where = "along the river, and through the park when it has rained";
    change.how_often = "on each day but the one on which the choir meets at night";
    change.if_not = "walk up and down the stairs for as long as the kettle boils";
    change.how_checked = "the sensor after dinner on days with and without the walk";
    change.stop_when = "your feet hurt, your chest hurts, or you feel shaky outside";
    change.kind = Proposed::other;
    care.facts.agreed_change = change;
    return care;
}

std::string bytes_of(const PaperCase& made, const Handout& page) {
    const std::vector<Figure> figures{handout_figure(page.picture, made.review)};
    const auto pdf = paper_pdf(page.paper, figures);
    EXPECT_TRUE(pdf) << (pdf ? "" : pdf.error().sentence());
    return pdf.value_or("");
}

}  // namespace

TEST(HandoutPages, the_longest_handout_is_one_sheet) {
    for (const Answered answer : {Answered::no, Answered::yes, Answered::not_yet}) {
        for (const Pregnancy pregnancy : {Pregnancy::no, Pregnancy::pregnant}) {
            for (const bool old : {false, true}) {
                Care care = all_at_once();
                care.facts.cautions.eating.positive = answer;
                care.facts.cautions.pregnancy = pregnancy;
                care.as_of = care_at(old ? 40 : 0, 12);
                const PaperCase made(care, "Invented Bartholomea Featherstonehaugh of Alder");
                const Handout page = handout(made.client());
                EXPECT_TRUE(page.paper.one_page);
                EXPECT_FALSE(page.paper.may_go_on);
                EXPECT_THAT(bytes_of(made, page), HasSubstr("%PDF"));
            }
        }
    }
}

TEST(HandoutPages, the_picture_bears_no_numeral_and_no_letter_below_12_points) {
    Care care = all_at_once();
    for (const Pregnancy pregnancy : {Pregnancy::no, Pregnancy::planning}) {
        care.facts.cautions.pregnancy = pregnancy;
        const PaperCase made(care);
        for (const HandoutPicture picture :
             {HandoutPicture::hours_bar, HandoutPicture::day_to_mark}) {
            const Figure figure = handout_figure(picture, made.review);
            const RecordingCanvas canvas(figure);
            ASSERT_FALSE(canvas.texts.empty());
            std::string all = figure.title + figure.alternative;
            for (const RecordingCanvas::Text& text : canvas.texts) {
                EXPECT_THAT(text.size, Ge(12));
                EXPECT_LE(text.right, figure.width);
                all += text.words;
            }
            EXPECT_TRUE(std::ranges::none_of(all, [](char c) {
                return std::isdigit(static_cast<unsigned char>(c)) != 0;
            })) << all;
        }
    }
}

TEST(HandoutPages, the_bar_is_a_whole_day_and_its_parts_are_the_reviews_hours) {
    const PaperCase made(all_at_once());
    const Figure figure = handout_figure(HandoutPicture::hours_bar, made.review);
    const RecordingCanvas canvas(figure);
    const auto in_range = std::ranges::find(made.review.findings, "in_range", &Finding::code);
    const auto area = std::ranges::find(canvas.areas, Fill::in_range, &RecordingCanvas::Area::fill);
    ASSERT_NE(area, canvas.areas.end());
    const auto [left, right] = std::ranges::minmax(area->points, {}, &Point::x);
    EXPECT_NEAR((right.x - left.x) / figure.width * 100, in_range->estimate->value, 0.01);
    EXPECT_EQ(std::ranges::count_if(canvas.lines,
                                    [](const RecordingCanvas::Line& line) {
                                        return line.points.size() == 2 && line.points[0].y >= 34 &&
                                               line.points[1].y <= 39;
                                    }),
              25);
}

TEST(HandoutPages, the_handout_is_as_approved) {
    Care care = with_a_very_low_night("gliclazide 80");
    // Sleep: the low of these days closes walking, whatever it is filed under.
    AgreedChange sleep = a_walk();
    sleep.words = "in bed by 22:30";
    sleep.when = "after the late news";
    sleep.where = "at home";
    sleep.how_often = "five evenings a week";
    sleep.if_not = "lights out by 23:00";
    sleep.how_checked = "the nights in your diary";
    sleep.stop_when = "you lie awake for hours";
    sleep.kind = Proposed::other;
    sleep.does = {EatingChange::nothing, Answered::no, Answered::no};
    care.facts.agreed_change = sleep;
    const PaperCase made(care);
    const Handout page = handout(made.client());
    expect_approved(paper_html(page.paper, std::vector{handout_figure(page.picture, made.review)}),
                    "handout.html");
}

TEST(HandoutPages, the_talk_sheet_is_as_approved) {
    Care care = with_a_very_low_night("gliclazide 80");
    care.facts.agreed_change = a_walk();
    const PaperCase made(care);
    const Paper paper = talk_sheet(made.client());
    EXPECT_TRUE(paper_pdf(paper));
    expect_approved(paper_html(paper), "talk-sheet.html");
}

TEST(HandoutPages, the_letter_is_as_approved) {
    const PaperCase made(with_a_very_low_night("gliclazide 80"));
    const Paper paper = prescriber_letter(made.client(), {}, {made.care.wears, made.care.diary});
    EXPECT_TRUE(paper_pdf(paper));
    expect_approved(paper_html(paper), "letter.html");
}
