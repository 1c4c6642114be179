#include "findings/wording.hpp"

#include <gtest/gtest.h>

using namespace tracewright;

// Which way is usual where: common practice, no source. Noon and midnight of a 12-hour clock as
// 12:00 pm and 12:00 am: common practice, no source.
TEST(Wording, dates_and_times_are_written_as_the_practice_writes) {
    const CivilDate third = std::chrono::local_days{std::chrono::March / 3 / 2026};
    const CivilDate last = std::chrono::local_days{std::chrono::October / 28 / 2025};
    constexpr WayOfWriting month{true, false};
    constexpr WayOfWriting twelve{false, true};
    constexpr WayOfWriting both{true, true};
    using std::chrono::hours;
    using std::chrono::minutes;
    const WallTime night = third + hours{2} + minutes{40};

    EXPECT_EQ(full_date(third, {}), "Tue 3 March 2026");
    EXPECT_EQ(full_date(third, month), "Tue March 3, 2026");
    EXPECT_EQ(day_words(third, {}), "Tue 3 March");
    EXPECT_EQ(day_words(third, both), "Tue March 3");
    EXPECT_EQ(short_day_words(third, {}), "Tue 3 Mar");
    EXPECT_EQ(short_day_words(third, month), "Tue Mar 3");
    EXPECT_EQ(weekday_and_day(third), "Tue 3");
    EXPECT_EQ(day_and_time(night, {}), "Tue 3 March 02:40");
    EXPECT_EQ(day_and_time(night, both), "Tue March 3, 2:40 am");
    EXPECT_EQ(day_and_time(night, month), "Tue March 3, 02:40");
    EXPECT_EQ(day_and_time(night, twelve), "Tue 3 March 2:40 am");

    EXPECT_EQ(date_range(third, third, {}), "3 March 2026");
    EXPECT_EQ(date_range(third, third, month), "March 3, 2026");
    EXPECT_EQ(date_range(third, third + std::chrono::days{12}, {}), "3 to 15 March 2026");
    EXPECT_EQ(date_range(third, third + std::chrono::days{12}, month), "March 3 to 15, 2026");
    EXPECT_EQ(date_range(last, last + std::chrono::days{6}, {}), "28 October to 3 November 2025");
    EXPECT_EQ(date_range(last, last + std::chrono::days{6}, month),
              "October 28 to November 3, 2025");
    EXPECT_EQ(date_range(last, third, {}), "28 October 2025 to 3 March 2026");
    EXPECT_EQ(date_range(last, third, month), "October 28, 2025 to March 3, 2026");

    const auto clock = [&](int hour, int minute) {
        return clock_time(third + hours{hour} + minutes{minute}, twelve);
    };
    EXPECT_EQ(clock(0, 5), "12:05 am");
    EXPECT_EQ(clock(11, 59), "11:59 am");
    EXPECT_EQ(clock(12, 0), "12:00 pm");
    EXPECT_EQ(clock(14, 40), "2:40 pm");
    EXPECT_EQ(full_hour(24, {}), "24:00");
    EXPECT_EQ(full_hour(24, twelve), "12:00 am");
    EXPECT_EQ(hour_on_scale(6, {}), "06:00");
    EXPECT_EQ(hour_on_scale(18, twelve), "6 pm");
}

TEST(Wording, an_interval_says_a_shared_unit_once_and_never_reads_as_without_width) {
    EXPECT_EQ(from_to_words("136 mg/dL", "149 mg/dL", " mg/dL"), "136 to 149 mg/dL");
    EXPECT_EQ(from_to_words("16 h 50 min", "17 h 10 min"), "16 h 50 min to 17 h 10 min");
    EXPECT_EQ(from_to_words("142 mg/dL", "142 mg/dL", " mg/dL"), "about 142 mg/dL");
    EXPECT_EQ(from_to_words("0.9", "1.1 %", " %"), "0.9 to 1.1 %");
    EXPECT_EQ(between_words("7.7 mmol/L", "8.0 mmol/L"), "between 7.7 mmol/L and 8.0 mmol/L");
    EXPECT_EQ(between_words("31 %", "31 %"), "at about 31 %");
}

TEST(Wording, an_age_is_counted_in_days_of_the_clients_clock_as_the_dates_beside_it_are) {
    using namespace std::chrono_literals;
    const ZoneHistory clock{Zone::fixed(std::chrono::seconds{2h})};
    const Instant now{std::chrono::sys_days{std::chrono::April / 20 / 2026} + 7h};  // 09:00
    const Instant evening{std::chrono::sys_days{std::chrono::April / 6 / 2026} + 16h + 55min};
    EXPECT_EQ(age_words(evening, now, clock), "14 days ago");
    // 22:30 by UTC is half past midnight of the next day there.
    const Instant night{std::chrono::sys_days{std::chrono::April / 16 / 2026} + 22h + 30min};
    EXPECT_EQ(age_words(night, now, clock), "3 days ago");
    EXPECT_EQ(age_words(now - 47h, now, clock), "47 hours ago");
    EXPECT_EQ(age_words(now - 48h, now, clock), "2 days ago");
    EXPECT_EQ(age_words(now - 35min, now, clock), "35 minutes ago");
    EXPECT_EQ(age_words(now - 30s, now, clock), "just now");
    EXPECT_EQ(age_words(now + 1s, now, clock), "in the future");
}
