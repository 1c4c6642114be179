// The rows are those of data/habit-effects.csv, each with its DOI there; arithmetic is checked on
// confirmed rows only.
#include "findings/published_effects.hpp"
#include "source_folder.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <fstream>
#include <string>
#include <vector>

using namespace tracewright;

// A row that the reader passes over (a comma too many, an effect that is no number) would be missed
// by nobody: the lines of the file, read a second way, are counted against what was read.
TEST(PublishedEffects, every_row_of_the_table_is_read) {
    std::ifstream file(TRACEWRIGHT_SOURCE_FOLDER "/data/habit-effects.csv");
    std::vector<std::string> habits;
    for (std::string line; std::getline(file, line);) {
        if (!line.empty()) {
            habits.push_back(line.starts_with('"') ? line.substr(1, line.find('"', 1) - 1)
                                                   : line.substr(0, line.find(',')));
        }
    }
    ASSERT_GT(habits.size(), 80U);
    EXPECT_EQ(habits.front(), "habit");
    habits.erase(habits.begin());
    std::vector<std::string> read;
    for (const PublishedEffect& effect : published_effects()) {
        read.push_back(effect.habit);
    }
    EXPECT_EQ(read, habits);
}

TEST(PublishedEffects, each_row_has_what_is_shown_of_it) {
    for (const PublishedEffect& effect : published_effects()) {
        EXPECT_FALSE(effect.habit.empty());
        EXPECT_FALSE(effect.units.empty());
        EXPECT_FALSE(effect.source.empty()) << effect.habit;
    }
}

TEST(PublishedEffects, spread_as_the_table_writes_it) {
    const auto effects = published_effects_in(
        "habit,outcome,effect,units,se_or_ci,population,design,n,source_doi,confirmed\r\n"
        "a,b,0.88,ratio,ci:0.78;0.99,T2D,x,41,10.1/x,yes\r\n"
        "a,b,497,mmol/L*min,se:168;derived_unpaired,T2D,x,16,10.1/x,yes\r\n"
        "\"a, or c\",b,-0.3,mmol/L,p:0.05,T2D,x,,10.1/x,yes\r\n"
        "a,b,5,mmol/L,none,T2D,x,,10.1/x,yes\r\n"
        "not a row\r\n");
    ASSERT_EQ(effects.size(), 4U);
    EXPECT_NEAR(*effects[0].standard_error(), 0.21 / 3.92, 1e-12);
    EXPECT_EQ(effects[1].standard_error(), 168);
    EXPECT_NEAR(*effects[2].standard_error(), 0.3 / 1.959964, 1e-5);
    EXPECT_FALSE(effects[3].standard_error());
    EXPECT_EQ(effects[2].habit, "a, or c");
}

TEST(PublishedEffects, a_direction_without_a_size_is_told_in_words) {
    const OthersSay say = others_say(Cause::sleep, Outcome::breakfast_rise);
    ASSERT_EQ(say.rows.size(), 1U);
    EXPECT_FALSE(say.prior);
    EXPECT_NE(say.rows[0].sentence().find("next breakfast higher, size not told; healthy, n 953"),
              std::string::npos)
        << say.rows[0].sentence();
}

TEST(PublishedEffects, a_ratio_is_told_as_times_and_no_unit_by_its_code) {
    int ratios = 0;
    for (const PublishedEffect& effect : published_effects()) {
        const std::string sentence = effect.sentence();
        EXPECT_EQ(sentence.find(" ratio;"), std::string::npos) << sentence;
        EXPECT_EQ(sentence.find("percent_"), std::string::npos) << sentence;
        if (effect.units == "ratio") {
            EXPECT_NE(sentence.find(fmt::format("times {:g};", effect.effect)), std::string::npos)
                << sentence;
            ++ratios;
        }
    }
    EXPECT_GE(ratios, 2);
}

// dinner at 21:00 vs 18:00 (10.1016/j.diabres.2017.05.010): 497 mmol/L x min over nine hours is
// 0.92 mmol/L, halved 8.3 mg/dL, as wide as the effect itself.
TEST(PublishedEffects, a_prior_is_halved_and_widened) {
    const OthersSay say = others_say(Cause::dinner_time, Outcome::overnight);
    ASSERT_EQ(say.rows.size(), 1U);
    ASSERT_TRUE(say.prior);
    EXPECT_NEAR(say.prior->mean, 497.0 / 540 * 18.016 / 2, 1e-9);
    EXPECT_NEAR(say.prior->deviation, 497.0 / 540 * 18.016, 1e-9);
}

TEST(PublishedEffects, what_was_measured_otherwise_is_shown_and_gives_no_prior) {
    const OthersSay say = others_say(Cause::walk_after, Outcome::dinner_rise);
    EXPECT_EQ(say.rows.size(), 1U);
    EXPECT_FALSE(say.prior);
    EXPECT_TRUE(others_say(Cause::weekend, Outcome::fasting).rows.empty());
}
