#include "diary/finger_prick.hpp"
#include "findings/review_input_for_tests.hpp"
#include "render/recording_canvas.hpp"
#include "render/review_figures.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::Not;

namespace {

FirstReview one_day(std::vector<Reading> readings,
                    ZoneHistory zones = ZoneHistory{Zone::floating()}, Diary diary = {}) {
    ReviewInput input = input_of(std::move(readings));
    input.zones = std::move(zones);
    input.diary = std::move(diary);
    return first_review(std::move(input));
}

std::vector<Reading> steady(Instant from, Instant to) {
    std::vector<Reading> readings;
    for (Instant at = from; at < to; at += 15min) {
        readings.emplace_back(at, mg(120 + static_cast<double>((at - from) / 15min % 7)), 15min);
    }
    return readings;
}

DiaryEntry entry(DiaryKind kind, Instant at, std::string text) {
    DiaryEntry made;
    made.kind = kind;
    made.at = at;
    made.text = std::move(text);
    return made;
}

void expect_nothing_meets_or_leaves(const Figure& figure) {
    const RecordingCanvas drawn(figure);
    for (std::size_t i = 0; i < drawn.texts.size(); ++i) {
        RC_ASSERT(drawn.texts[i].left >= -0.5);
        RC_ASSERT(drawn.texts[i].right <= figure.width + 0.5);
        RC_ASSERT(drawn.texts[i].base <= figure.height);
        for (std::size_t j = i + 1; j < drawn.texts.size(); ++j) {
            RC_ASSERT_FALSE(drawn.texts[i].meets(drawn.texts[j]));
        }
    }
}

}  // namespace

RC_GTEST_PROP(DaySheet, no_words_run_into_others_however_much_is_written, ()) {
    const auto kinds = rc::gen::element(DiaryKind::meal, DiaryKind::movement, DiaryKind::sleep,
                                        DiaryKind::symptom, DiaryKind::medicine);
    const auto texts = rc::gen::element<std::string>(
        "", "tea", "walk to the station", "Kartoffel-Gem\xC3\xBCse-Auflauf mit Salat und Brot",
        "\xE7\xB1\xB3\xE9\xA5\xAD \xE4\xB8\x80\xE7\xA2\x97", "a\nb",
        "Donaudampfschifffahrtsgesellschaftskapit\xC3\xA4nsteller and all that goes with it");
    Diary diary;
    const int count = *rc::gen::inRange(0, 40);
    for (int i = 0; i < count; ++i) {
        diary.push_back(
            entry(*kinds, midnight + std::chrono::minutes{*rc::gen::inRange(0, 1440)}, *texts));
        if (*rc::gen::arbitrary<bool>()) {
            diary.back().until = diary.back().at + std::chrono::minutes{*rc::gen::inRange(1, 600)};
        }
    }
    std::stable_sort(diary.begin(), diary.end(),
                     [](const DiaryEntry& a, const DiaryEntry& b) { return a.at < b.at; });
    const FirstReview review =
        one_day(steady(midnight, midnight + 24h), ZoneHistory{Zone::floating()}, std::move(diary));
    expect_nothing_meets_or_leaves(day_sheet(review, review.days[0]));
}

TEST(DaySheet, every_entry_stands_whole_in_the_table_and_has_a_mark) {
    Diary diary;
    for (int i = 0; i < 12; ++i) {
        diary.push_back(entry(DiaryKind::meal, midnight + 8h + std::chrono::minutes{i},
                              "biscuit number " + std::to_string(i) + " with a long description"));
    }
    const FirstReview review =
        one_day(steady(midnight, midnight + 24h), ZoneHistory{Zone::floating()}, std::move(diary));
    const Figure sheet = day_sheet(review, review.days[0]);
    int told = 0;
    for (const auto& row : sheet.rows) {
        told += row[1] == "meal" ? 1 : 0;
    }
    EXPECT_EQ(told, 12);
    EXPECT_THAT(sheet.rows, Contains(Contains("biscuit number 11 with a long description")));
    const RecordingCanvas drawn(sheet);
    const auto strokes =
        std::count_if(drawn.lines.begin(), drawn.lines.end(),
                      [](const RecordingCanvas::Line& line) { return line.stroke.width == 1.5; });
    EXPECT_EQ(strokes, 12);
}

TEST(DaySheet, for_a_holder_who_sees_the_trace_alone_no_lane_stands_empty) {
    Diary diary{entry(DiaryKind::meal, midnight + 8h, "tea")};
    const FirstReview review =
        one_day(steady(midnight, midnight + 24h), ZoneHistory{Zone::floating()}, std::move(diary));
    const Figure whole = day_sheet(review, review.days[0]);
    const Figure trace = day_sheet(review, review.days[0], UnderTheTrace::nothing);
    EXPECT_LT(trace.height, whole.height);
    EXPECT_THAT(RecordingCanvas(whole).words(), Contains("Ate"));
    EXPECT_THAT(RecordingCanvas(trace).words(), Not(Contains("Ate")));
}

// Safety rule 12.
TEST(DaySheet, with_foods_left_off_neither_foods_nor_grams_stand_in_lane_or_table) {
    ReviewInput input = input_of(steady(midnight, midnight + 24h));
    input.foods_left_off = true;
    input.diary = {entry(DiaryKind::meal, midnight + 8h, "porridge"),
                   entry(DiaryKind::meal, midnight + 13h, "rice"),
                   entry(DiaryKind::symptom, midnight + 14h, "shaky"),
                   entry(DiaryKind::alcohol, midnight + 20h, "wine with peanuts")};
    input.diary[0].carbohydrate_g = Amount{45, 0, false};
    input.diary[1].slot = "lunch";
    input.diary[2].carbohydrate_g = Amount{15, 0, false};
    input.diary[3].carbohydrate_g = Amount{7, 0, false};
    const FirstReview review = first_review(std::move(input));
    const Figure sheet = day_sheet(review, review.days[0]);
    std::vector<std::string> all = RecordingCanvas(sheet).words();
    for (const auto& row : sheet.rows) {
        all.insert(all.end(), row.begin(), row.end());
    }
    for (const char* left_off : {"porridge", "rice", "wine", "carbohydrate", "45 g", "15 g"}) {
        EXPECT_THAT(all, Not(Contains(HasSubstr(left_off))));
    }
    EXPECT_THAT(all, Contains("lunch"));
    EXPECT_THAT(all, Contains("shaky"));
}

TEST(DaySheet, a_meter_that_showed_no_number_stands_as_that_in_the_table) {
    Diary diary{entry(DiaryKind::finger_prick, midnight + 9h, "LO")};
    set_meter_limit(diary[0], MeterLimit::shows_low, GlucoseUnit::mg_per_dl);
    const FirstReview review =
        one_day(steady(midnight, midnight + 24h), ZoneHistory{Zone::floating()}, std::move(diary));
    EXPECT_THAT(day_sheet(review, review.days[0]).rows,
                Contains(Contains("LO, below what the meter can show")));
}

TEST(DaySheet, steps_by_the_quarter_hour_are_ticks_and_a_walk_keeps_its_words) {
    Diary diary;
    for (int i = 0; i < 40; ++i) {
        diary.push_back(entry(DiaryKind::movement, midnight + 8h + 15min * i, ""));
        diary.back().number = 100 + i;
        diary.back().number_unit = "steps";
    }
    diary.push_back(entry(DiaryKind::movement, midnight + 19h, "walk to the station"));
    const FirstReview review =
        one_day(steady(midnight, midnight + 24h), ZoneHistory{Zone::floating()}, std::move(diary));
    const Figure sheet = day_sheet(review, review.days[0]);
    EXPECT_THAT(RecordingCanvas(sheet).words(), Contains("walk to the station"));
    EXPECT_THAT(RecordingCanvas(sheet).words(), Not(Contains(HasSubstr("steps"))));
    EXPECT_THAT(sheet.rows, Contains(Contains("139 steps")));
}

// T5: the clock of Berlin shows 02:00 twice on 26 October 2025.
TEST(DaySheet, a_repeated_hour_is_written_twice_on_a_day_of_25_hours) {
    const ZoneHistory berlin{*Zone::named("Europe/Berlin")};
    const CivilDay day = berlin.day_of(std::chrono::local_days{std::chrono::year{2025} / 10 / 26});
    const FirstReview review = one_day(steady(day.from, day.to), berlin);
    ASSERT_EQ(review.days.size(), 1U);
    const Figure sheet = day_sheet(review, review.days[0]);
    const std::vector<std::string> words = RecordingCanvas(sheet).words();
    EXPECT_EQ(std::count(words.begin(), words.end(), "02"), 2);
    EXPECT_THAT(words, Contains("clock back by 1 h"));
    EXPECT_EQ(std::count_if(sheet.rows.begin(), sheet.rows.end(),
                            [](const auto& row) { return row[1] == "glucose"; }),
              25);
}

TEST(DaySheet, a_skipped_hour_is_not_written_on_a_day_of_23_hours) {
    const ZoneHistory berlin{*Zone::named("Europe/Berlin")};
    const CivilDay day = berlin.day_of(std::chrono::local_days{std::chrono::year{2026} / 3 / 29});
    const FirstReview review = one_day(steady(day.from, day.to), berlin);
    const Figure sheet = day_sheet(review, review.days[0]);
    const std::vector<std::string> words = RecordingCanvas(sheet).words();
    EXPECT_THAT(words, Contains("clock forward by 1 h"));
    EXPECT_THAT(words, Not(Contains("02")));
    for (const auto& row : sheet.rows) {
        EXPECT_FALSE(row[0].starts_with("02:")) << row[0];
    }
}

// T6: New York until noon of 10 May 2026, Berlin after: that civil day has 18 hours.
TEST(DaySheet, a_day_of_travel_says_that_the_clock_went_forward) {
    ZoneHistory zones{*Zone::named("America/New_York")};
    const Instant noon = std::chrono::sys_days{std::chrono::year{2026} / 5 / 10} + 16h;
    zones.change(noon, *Zone::named("Europe/Berlin"));
    const CivilDay day = zones.day_of(std::chrono::local_days{std::chrono::year{2026} / 5 / 10});
    ASSERT_EQ(day.length(), 18h);
    const FirstReview review = one_day(steady(day.from, day.to), zones);
    const Figure sheet = day_sheet(review, review.days[0]);
    EXPECT_THAT(RecordingCanvas(sheet).words(), Contains("clock forward by 6 h"));
    EXPECT_THAT(RecordingCanvas(sheet).words(), Not(Contains("15:00")));
}

TEST(DaySheet, a_low_is_marked_under_the_trace_and_the_very_low_in_it_told_beside) {
    auto readings = waves(1);
    dip(readings, midnight + 3h, 90min, 62);
    dip(readings, midnight + 3h + 30min, 30min, 50);
    const FirstReview review = one_day(readings);
    const Figure sheet = day_sheet(review, review.days[0]);
    EXPECT_THAT(RecordingCanvas(sheet).words(), Contains("low 1 h 30 min, very low 30 min"));
    EXPECT_THAT(sheet.rows, Contains(Contains("low 1 h 30 min, very low 30 min, until 04:30")));
}

TEST(DaySheet, a_day_without_marks_has_no_room_kept_for_them) {
    auto readings = waves(2);
    dip(readings, midnight + 27h, 90min, 62);
    const FirstReview review = one_day(readings);
    EXPECT_LT(day_sheet(review, review.days[1]).height - day_sheet(review, review.days[0]).height,
              20);
    EXPECT_GT(day_sheet(review, review.days[1]).height, day_sheet(review, review.days[0]).height);
}

TEST(DaySheet, a_gap_is_left_open) {
    auto readings = waves(1);
    std::erase_if(readings,
                  [](const Reading& r) { return r.at >= midnight + 10h && r.at < midnight + 14h; });
    const FirstReview review = one_day(readings);
    const RecordingCanvas drawn(day_sheet(review, review.days[0]));
    int parts = 0;
    for (const RecordingCanvas::Line& line : drawn.lines) {
        if (line.stroke.ink == Ink::accent && line.points.size() > 2) {
            ++parts;
            for (std::size_t i = 1; i < line.points.size(); ++i) {
                EXPECT_LT(line.points[i].x - line.points[i - 1].x, 3);
            }
        }
    }
    EXPECT_EQ(parts, 2);
    EXPECT_THAT(day_sheet(review, review.days[0]).rows, Contains(Contains("not seen")));
}

TEST(DaySheet, a_finger_prick_above_every_reading_still_has_its_place) {
    Diary diary{entry(DiaryKind::finger_prick, midnight + 9h, "")};
    diary[0].glucose = mg(420);
    const FirstReview review = one_day(waves(1), ZoneHistory{Zone::floating()}, diary);
    const RecordingCanvas drawn(day_sheet(review, review.days[0]));
    ASSERT_EQ(drawn.circles.size(), 1U);
    EXPECT_GT(drawn.circles[0].y, 12);
    EXPECT_LT(drawn.circles[0].y, 50);
}

TEST(TextMeasure, shortens_between_characters_and_only_where_it_must) {
    TextMeasure measure;
    const TextStyle style{10, false, Anchor::start, Ink::text};
    const std::string text = "\xC3\x84pfel mit N\xC3\xBCssen";
    EXPECT_EQ(measure.shortened(text, 500, style), text);
    EXPECT_EQ(measure.shortened("", 1, style), "");
    EXPECT_EQ(measure.shortened(text, 0, style), "\xE2\x80\xA6");
    for (double width = 8; width < measure.width(text, style); width += 0.7) {
        const std::string shorter = measure.shortened(text, width, style);
        EXPECT_LE(measure.width(shorter, style), std::max(width, 12.0));
        EXPECT_TRUE(shorter.ends_with("\xE2\x80\xA6"));
        // What is kept is a beginning of the text, whole characters only.
        const std::string kept = shorter.substr(0, shorter.size() - 3);
        EXPECT_TRUE(text.starts_with(kept));
        EXPECT_FALSE((static_cast<unsigned char>(text[kept.size()]) & 0xC0U) == 0x80U);
    }
}
