#include "diary/told_duration.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

using namespace std::chrono_literals;

// Wednesday, 11 March 2026, 14:00.
constexpr WallTime written =
    WallTime{std::chrono::local_days{std::chrono::year{2026} / 3 / 11}} + 14h;

// Ours, no source: how clients tell how long it has lasted.
TEST(ToldDuration, reads_hours_days_and_beginnings_in_figures_and_words) {
    const struct {
        const char* text;
        std::chrono::minutes lasted;
    } rows[] = {
        {"vomiting for 10 hours", 10h},
        {"vomiting 10h", 10h},
        {"throwing up for ten hours now", 10h},
        {"diarrhoea, 6-8 hrs", 8h},
        {"sick for one and a half hours", 90min},
        {"flu for three days, in bed with fever", 72h},
        {"loose stools for two days", 48h},
        {"two days of diarrhoea", 48h},
        {"a 3-day fever", 72h},
        {"fever the last 2 nights", 48h},
        {"ill a couple of days", 48h},
        {"a few days of flu", 72h},
        {"sick for days", 48h},
        {"vomiting for hours", 7h},
        {"third day of fever", 72h},
        {"day 3 of flu", 72h},
        {"a week of flu", 168h},
        {"vomiting all night", 8h},
        {"the runs the whole day", 12h},
        {"vomiting overnight", 8h},
        {"ill since yesterday", 38h},
        {"ill since yesterday evening", 20h},
        {"vomiting since last night", 17h},
        {"vomiting since this morning", 8h},
        {"vomiting since 3 am", 11h},
        {"vomiting since 3:30", 10h + 30min},
        {"vomiting since 11 pm", 15h},
        {"vomiting since breakfast", 6h},
        {"flu since Monday", 62h},
        {"flu since last Wed", 182h},
        {"flu since the weekend", 110h},
        {"flu started two days ago", 48h},
        {"since two days ill", 48h},
        {"fever for a day, flu for three days", 72h},
    };
    for (const auto& row : rows) {
        EXPECT_EQ(told_duration(row.text, written).value_or(0min).count(), row.lasted.count())
            << row.text;
    }
}

TEST(ToldDuration, is_none_where_a_length_is_of_something_else) {
    for (const char* text :
         {"", "vomiting", "flu", "flu jab two days ago", "doctor in two days",
          "tablets every 4 hours", "vomited 2 hours after lunch", "vomited two hours ago",
          "fever 38.5", "vomited 3 times", "vomited three times a day", "better since",
          "since the new tablets", "day off", "all of it"}) {
        EXPECT_FALSE(told_duration(text, written)) << text;
    }
}

TEST(ToldDuration, takes_any_number_without_running_over) {
    EXPECT_TRUE(told_duration("ill for 9999 months", written));
    EXPECT_FALSE(told_duration("ill for 99999999999999999999 days", written));
    EXPECT_LE(told_duration("day 999999999 of flu", written), std::chrono::days{1000});
}

}  // namespace
}  // namespace tracewright
