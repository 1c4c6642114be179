#include "findings/review_input_for_tests.hpp"
#include "render/measure_words.hpp"
#include "render/recording_canvas.hpp"
#include "render/review_figures.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <numeric>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::AnyOf;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

namespace {

constexpr std::array band_names{"very_low", "low", "in_range", "high", "very_high"};

FirstReview with_bands(const std::array<double, 5>& percents) {
    FirstReview review;
    review.fitness.sensed = 14 * 24h;
    for (std::size_t b = 0; b < percents.size(); ++b) {
        Measure measure;
        measure.name = band_names[b];
        measure.unit = "%";
        measure.value = percents[b];
        review.measures.push_back(measure);
    }
    return review;
}

double extent(const RecordingCanvas::Area& area) {
    const auto [low, high] =
        std::minmax_element(area.points.begin(), area.points.end(),
                            [](const Point& a, const Point& b) { return a.x < b.x; });
    return high->x - low->x;
}

bool texts_part(const Figure& figure) {
    const RecordingCanvas drawn(figure);
    for (std::size_t i = 0; i < drawn.texts.size(); ++i) {
        const auto& text = drawn.texts[i];
        if (text.left < -0.5 || text.right > figure.width + 0.5 || text.base > figure.height) {
            ADD_FAILURE() << text.words << " leaves the figure";
            return false;
        }
        for (std::size_t j = i + 1; j < drawn.texts.size(); ++j) {
            if (text.meets(drawn.texts[j])) {
                ADD_FAILURE() << text.words << " runs into " << drawn.texts[j].words;
                return false;
            }
        }
    }
    return true;
}

}  // namespace

RC_GTEST_PROP(HoursBar, fits_its_words_whatever_the_shares_in_either_width_and_unit, ()) {
    std::array<double, 5> percents{};
    for (double& percent : percents) {
        percent = *rc::gen::element(0, 1, 3, 40, 1000, 30000);
    }
    const double all = std::accumulate(percents.begin(), percents.end(), 0.0);
    RC_PRE(all > 0);
    for (double& percent : percents) {
        percent *= 100 / all;
    }
    FirstReview review = with_bands(percents);
    review.input.unit = *rc::gen::element(GlucoseUnit::mg_per_dl, GlucoseUnit::mmol_per_l);
    RC_ASSERT(texts_part(hours_bar(review)));
    RC_ASSERT(texts_part(hours_bar(review, 300)));
}

TEST(HoursBar, is_as_long_as_twenty_four_hours_and_each_part_as_long_as_its_share) {
    const FirstReview review = with_bands({0.5, 1.5, 60, 30, 8});
    const RecordingCanvas drawn(hours_bar(review));
    const double shares[] = {0.5, 1.5, 60, 30, 8};
    for (std::size_t b = 0; b < 5; ++b) {
        EXPECT_NEAR(extent(drawn.areas[b]), 495 * shares[b] / 100, 1e-9);
    }
    EXPECT_THAT(drawn.words(), Contains("14 h 24 min"));
}

// Of less than most of a day no hours of a day are drawn (ours).
TEST(HoursBar, of_a_short_trace_is_as_long_as_the_time_seen) {
    std::vector<Reading> readings = waves(1);
    readings.resize(7);
    const FirstReview review = first_review(input_of(std::move(readings)));
    const Figure bar = hours_bar(review);
    EXPECT_EQ(bar.title, "Time seen in each band");
    EXPECT_EQ(bar.columns[2], "of the 35 min seen");
    EXPECT_THAT(bar.alternative, HasSubstr("Of the 35 min seen: "));
    EXPECT_THAT(bar.alternative, HasSubstr("35 min in range"));
    EXPECT_THAT(RecordingCanvas(bar).words(), Not(Contains(HasSubstr("24 h"))));
}

TEST(HoursBar, a_sliver_of_very_low_is_drawn_and_told_and_never_rounded_away) {
    const FirstReview review = with_bands({0.01, 0, 99.99, 0, 0});
    const Figure bar = hours_bar(review);
    EXPECT_THAT(bar.alternative, HasSubstr("under 1 min very low"));
    EXPECT_GE(extent(RecordingCanvas(bar).areas[0]), 0.5);
}

// The bands are disjoint, so their ranges are told disjointly.
TEST(HoursBar, low_is_told_without_what_is_very_low) {
    FirstReview review = with_bands({1, 1, 98, 0, 0});
    EXPECT_EQ(hours_bar(review).rows[1][1], "54 to below 70 mg/dL");
    review.input.unit = GlucoseUnit::mmol_per_l;
    EXPECT_EQ(hours_bar(review).rows[1][1], "3.0 to below 3.9 mmol/L");
    EXPECT_EQ(hours_bar(review).rows[3][1], "above 10.0 to 13.9 mmol/L");
}

TEST(UsualDay, a_time_of_day_hardly_seen_leaves_a_gap_in_every_line) {
    auto readings = waves(14);
    std::erase_if(readings, [](const Reading& r) {
        const auto since = (r.at - midnight) % 24h;
        return since >= 2h && since < 5h;
    });
    const FirstReview review = first_review(input_of(std::move(readings)));
    const RecordingCanvas drawn(usual_day_figure(review));
    const auto medians = std::count_if(
        drawn.lines.begin(), drawn.lines.end(), [](const RecordingCanvas::Line& line) {
            return line.stroke.ink == Ink::accent && line.points.size() > 2;
        });
    EXPECT_EQ(medians, 2);
    EXPECT_TRUE(texts_part(usual_day_figure(review)));
}

TEST(UsualDay, few_days_draw_the_outer_ribbon_dashed_and_say_so) {
    const FirstReview few = first_review(input_of(waves(11)));
    const FirstReview many = first_review(input_of(waves(15)));
    EXPECT_THAT(RecordingCanvas(usual_day_figure(few)).words(),
                Contains(HasSubstr("dashed: under 14 days")));
    EXPECT_THAT(RecordingCanvas(usual_day_figure(many)).words(),
                Not(Contains(HasSubstr("dashed"))));
}

TEST(Intervals, every_dot_lies_on_its_line_and_both_on_their_scale) {
    const FirstReview review = first_review(input_of(waves(14)));
    const Figure figure = intervals_figure(review);
    const RecordingCanvas drawn(figure);
    EXPECT_EQ(drawn.circles.size(), 7U);
    int intervals = 0;
    for (const RecordingCanvas::Line& line : drawn.lines) {
        if (line.stroke.ink == Ink::accent) {
            const auto dot =
                std::find_if(drawn.circles.begin(), drawn.circles.end(),
                             [&](const Point& at) { return at.y == line.points[0].y; });
            ASSERT_NE(dot, drawn.circles.end());
            EXPECT_LE(line.points[0].x, dot->x + 1e-9);
            EXPECT_GE(line.points[1].x, dot->x - 1e-9);
            EXPECT_LT(line.points[0].x, line.points[1].x) << "an interval is never of zero width";
            EXPECT_LE(line.points[1].x, 330 + 1e-9);
            ++intervals;
        }
    }
    EXPECT_EQ(intervals, 7);
    EXPECT_TRUE(texts_part(figure));
}

TEST(Intervals, two_days_are_hatched_as_cannot_tell) {
    const FirstReview review = first_review(input_of(waves(2)));
    const RecordingCanvas drawn(intervals_figure(review));
    EXPECT_EQ(std::count_if(drawn.areas.begin(), drawn.areas.end(),
                            [](const auto& area) { return area.fill == Fill::suspect; }),
              7);
    EXPECT_TRUE(texts_part(intervals_figure(review)));
}

// Safety rule 11: in pregnancy no goal is shown, and 63 to 140 mg/dL in every figure and table.
TEST(Intervals, pregnancy_shows_its_own_range_and_no_goal) {
    ReviewInput input = input_of(waves(14));
    input.goals = consensus_goals(GoalKind::pregnancy);
    const FirstReview review = first_review(std::move(input));
    const auto words = RecordingCanvas(intervals_figure(review)).words();
    EXPECT_THAT(words, Not(Contains(HasSubstr("goal"))));
    EXPECT_THAT(words, Contains("63 to 140 mg/dL"));
    EXPECT_THAT(words, Not(Contains("In range")));
    for (const auto& row :
         measure_rows(review.measures, review.input.goals, GlucoseUnit::mg_per_dl)) {
        EXPECT_THAT(row[0], Not(AnyOf(HasSubstr("70 to"), HasSubstr("181 to"), HasSubstr("250"))));
    }
    EXPECT_THAT(parts_table(review.parts, review.input.goals, GlucoseUnit::mg_per_dl).columns,
                ElementsAre("part", "average", "very low", "63 to 140 mg/dL (3.5 to 7.8)"));
}

TEST(MeasureWords, outside_pregnancy_all_is_shown_but_its_range) {
    const FirstReview review = first_review(input_of(waves(14)));
    EXPECT_EQ(measure_rows(review.measures, review.input.goals, GlucoseUnit::mg_per_dl).size(),
              review.measures.size() - 1);
    EXPECT_EQ(parts_table(review.parts, review.input.goals, GlucoseUnit::mg_per_dl).columns.size(),
              7U);
}

TEST(MeasureWords, an_interval_names_its_unit_once_and_a_bounded_measure_tells_its_bounds) {
    Measure mean{"mean", "mmol/L", 7.87, std::array{7.69, 8.04}, 14, 0, {}, "", ""};
    EXPECT_EQ(measure_row(mean, GlucoseUnit::mg_per_dl).interval, "7.7 to 8.0 mmol/L");
    Measure low{"low", "%", 0.4, std::array{0.05, 1.2}, 14, 0, {}, "", ""};
    EXPECT_EQ(measure_row(low, GlucoseUnit::mg_per_dl).interval, "under 0.1 % to 1.2 %");
    Measure open{"gvp", "%", {}, {}, 14, 0.01, std::array{12.6, 14.9}, "open: see bounds", ""};
    EXPECT_EQ(measure_row(open, GlucoseUnit::mg_per_dl).value, "13 to 15 %");
    EXPECT_EQ(measure_row(open, GlucoseUnit::mg_per_dl).interval, "open");
    Measure narrow{"sd", "mg/dL", 70.12, std::array{70.08, 70.31}, 14, 0, {}, "", ""};
    EXPECT_EQ(measure_row(narrow, GlucoseUnit::mg_per_dl).interval, "about 70 mg/dL");
}

TEST(MeasureWords, the_edges_in_a_name_stand_first_in_the_unit_the_page_shows) {
    const auto name = [](const char* measure, GlucoseUnit shown) {
        return measure_row({measure, "%", 4, {}, 14, 0, {}, "", ""}, shown).name;
    };
    EXPECT_EQ(name("low", GlucoseUnit::mg_per_dl), "Low: 54 to 69 mg/dL (3.0 to 3.8)");
    EXPECT_EQ(name("low", GlucoseUnit::mmol_per_l), "Low: 3.0 to 3.8 mmol/L (54 to 69)");
    EXPECT_EQ(name("tight_range", GlucoseUnit::mmol_per_l), "3.9 to 7.8 mmol/L (70 to 140)");
    EXPECT_EQ(name("mage", GlucoseUnit::mmol_per_l), "Mean amplitude of excursions (MAGE)");
}
