#include "intake/clock_text.hpp"
#include "intake/serial_time.hpp"

#include "intake/number_text.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

using namespace tracewright;
using namespace std::chrono;
using namespace std::chrono_literals;

namespace {

WallTime wall(int y, int m, int d, int hh = 0, int mm = 0, int ss = 0) {
    return local_days{year{y} / m / d} + hours{hh} + minutes{mm} + seconds{ss};
}

}  // namespace

// RFC 3339, RFC 9557 (Sharma & Bormann 2024) and ISO 8601-1:2019; the rest as people write.
TEST(ClockText, reads_what_people_and_standards_write) {
    struct Row {
        const char* text;
        DateOrder order;
        WallTime wall;
        std::optional<seconds> offset;
    };
    const auto day = DateOrder::day_first;
    const auto month = DateOrder::month_first;
    const Row rows[] = {
        {"2026-03-02T08:15:00+01:00", day, wall(2026, 3, 2, 8, 15), 1h},
        {"2026-03-02T08:15:00Z", day, wall(2026, 3, 2, 8, 15), 0s},
        {"2026-03-02t08:15:00z", day, wall(2026, 3, 2, 8, 15), 0s},
        {"2026-03-02T08:15:00-05:30", day, wall(2026, 3, 2, 8, 15), -(5h + 30min)},
        {"2026-03-02T08:15:00+01:00[Europe/Berlin]", day, wall(2026, 3, 2, 8, 15), 1h},
        {"2026-03-02 08:15", day, wall(2026, 3, 2, 8, 15), {}},
        {"2026-03-02 08:15:07.25", day, wall(2026, 3, 2, 8, 15, 7), {}},
        {"20260302T081507", day, wall(2026, 3, 2, 8, 15, 7), {}},
        {"2026/3/2 8:15", day, wall(2026, 3, 2, 8, 15), {}},
        {"02.03.2026 08:15", day, wall(2026, 3, 2, 8, 15), {}},
        {"2.3.26, 8:15 Uhr", day, wall(2026, 3, 2, 8, 15), {}},
        {"3/2/2026 8:15 PM", month, wall(2026, 3, 2, 20, 15), {}},
        {"03-02-2026 12:05 AM", month, wall(2026, 3, 2, 0, 5), {}},
        {"03/02/2026 12:05 p.m.", month, wall(2026, 3, 2, 12, 5), {}},
        {"2 March 2026 08:15", day, wall(2026, 3, 2, 8, 15), {}},
        {"Mar 2, 2026 8:15 AM", day, wall(2026, 3, 2, 8, 15), {}},
        {"Mon 2 Mar 2026 08:15", day, wall(2026, 3, 2, 8, 15), {}},
        {"2. M\xC3\xA4rz 2026 08:15", day, wall(2026, 3, 2, 8, 15), {}},
        {"2-Mar-2026 08:15", day, wall(2026, 3, 2, 8, 15), {}},
        {"2020\xE5\xB9\xB4"
         "12\xE6\x9C\x88"
         "21\xE6\x97\xA5 9:44",
         day,
         wall(2020, 12, 21, 9, 44),
         {}},
        {"2026/3/2 \xE4\xB8\x8A\xE5\x8D\x88"
         "12:07",
         day,
         wall(2026, 3, 2, 0, 7),
         {}},
        {"2026\xE5\xB9\xB4"
         "3\xE6\x9C\x88"
         "2\xE6\x97\xA5\xE4\xB8\x8B\xE5\x8D\x88"
         "1:07:30",
         day,
         wall(2026, 3, 2, 13, 7, 30),
         {}},
        {"02/03/2026 12:07 a. m.", day, wall(2026, 3, 2, 0, 7), {}},
        {"02/03/2026 8 p. m.", day, wall(2026, 3, 2, 20), {}},
        {"02.03.2026 00.07", day, wall(2026, 3, 2, 0, 7), {}},
        {"02.03.2026, 8.15.30 Uhr", day, wall(2026, 3, 2, 8, 15, 30), {}},
        {"02/03/2026 0h07", day, wall(2026, 3, 2, 0, 7), {}},
        {"2026-03-02 24:00", day, wall(2026, 3, 3), {}},
        {"2026-03-02 23:59:60", day, wall(2026, 3, 2, 23, 59, 59), {}},
    };
    for (const Row& row : rows) {
        const auto time = written_time(row.text);
        ASSERT_TRUE(time.has_value()) << row.text;
        ASSERT_TRUE(time->date(row.order).has_value()) << row.text;
        EXPECT_EQ(*time->date(row.order) + time->clock, row.wall) << row.text;
        EXPECT_EQ(time->offset, row.offset) << row.text;
    }
}

TEST(ClockText, refuses_what_is_almost_a_time) {
    for (const char* text :
         {"13:05 PM", "0:05 AM", "25:00", "24:01", "08:60", "2026-03-02 08:15 XM", "2026-13", "abc",
          "", "2026-03-02T08:15:00+25:00", "8", "142", "5.6", "08:15:61", "2026-03-02 08:15 08:16",
          "00.07", "0h07", "2026-03-02 8.75", "\xE4\xB8\x8B\xE5\x8D\x88 13:05"}) {
        EXPECT_FALSE(written_time(text).has_value()) << text;
    }
}

TEST(ClockText, a_day_that_is_not_in_the_calendar_is_no_date) {
    EXPECT_FALSE(written_time("2026-02-30 08:00")->date(DateOrder::year_first).has_value());
    EXPECT_FALSE(written_time("13/13/2026")->date(DateOrder::day_first).has_value());
    EXPECT_TRUE(written_time("29/02/2024")->date(DateOrder::day_first).has_value());
}

// The usual form is read by its places; a blank behind it sends it through the general reader.
RC_GTEST_PROP(ClockText, the_usual_form_reads_as_by_the_general_reader, ()) {
    const auto digits = [](int from, int to, int width) {
        std::string text = std::to_string(*rc::gen::inRange(from, to));
        text.insert(0, static_cast<std::size_t>(width) - text.size(), '0');
        return text;
    };
    std::string text = digits(1990, 2110, 4) + "-" + digits(0, 15, 2) + "-" + digits(0, 34, 2) +
                       *rc::gen::element(' ', 'T', 't', ',') + digits(0, 27, 2) +
                       *rc::gen::element(':', '.') + digits(0, 63, 2);
    text += *rc::gen::element(0, 1) == 0 ? "" : ":" + digits(0, 63, 2);
    const auto quick = written_time(text);
    const auto general = written_time(text + " ");
    RC_ASSERT(quick.has_value() == general.has_value());
    if (quick) {
        RC_ASSERT(quick->has_date == general->has_date && quick->has_clock == general->has_clock);
        RC_ASSERT(quick->year_first == general->year_first && quick->year == general->year);
        RC_ASSERT(quick->first == general->first && quick->second == general->second);
        RC_ASSERT(quick->clock == general->clock && quick->offset == general->offset);
        RC_ASSERT(quick->twelve_hour == general->twelve_hour);
        RC_ASSERT(quick->instant == general->instant);
    }
    const std::string number = std::to_string(*rc::gen::inRange(0, 10'000'000));
    RC_ASSERT(written_time(number).has_value() == written_time(number + " ").has_value());
}

TEST(ClockText, unix_seconds_and_milliseconds_are_instants) {
    EXPECT_EQ(*written_time("1772439300")->instant, sys_days{year{2026} / 3 / 2} + 8h + 15min);
    EXPECT_EQ(*written_time("1772439300123")->instant, sys_days{year{2026} / 3 / 2} + 8h + 15min);
}

// interchange 4.3: 46083.34375 is 2 March 2026 08:15.
TEST(ClockText, spreadsheet_serials) {
    const auto time = serial_time(46083.34375, false);
    ASSERT_TRUE(time.has_value());
    EXPECT_EQ(*time->date(DateOrder::year_first) + time->clock, wall(2026, 3, 2, 8, 15));
    EXPECT_EQ(serial_time(46083.34375 - 1462, true)->clock, 8h + 15min);
    EXPECT_FALSE(serial_time(142, false).has_value());
    EXPECT_TRUE(serial_time(0.5, false)->has_clock);
}

TEST(NumberText, hundredths_are_exact_and_more_decimals_round_away_from_zero) {
    struct Row {
        const char* text;
        char mark;
        std::int64_t hundredths;
        bool rounded;
    };
    const Row rows[] = {{"5.6", '.', 560, false},
                        {"5,6", ',', 560, false},
                        {"102.60000000000001", '.', 10260, false},
                        {"95.399999999999991", '.', 9540, false},
                        {"5.555", '.', 556, true},
                        {"5.554", '.', 555, true},
                        {"1.234,5", ',', 123450, false},
                        {"1,234.5", '.', 123450, false},
                        {"1 234,5", ',', 123450, false},
                        {"1'234.5", '.', 123450, false},
                        {"5.6E+00", '.', 560, false},
                        {"56e-1", '.', 560, false},
                        {"-3", '.', -300, false},
                        {".5", '.', 50, false},
                        {"007", '.', 700, false}};
    for (const Row& row : rows) {
        const auto number = written_number(row.text, row.mark);
        ASSERT_TRUE(number.has_value()) << row.text;
        EXPECT_EQ(number->hundredths, row.hundredths) << row.text;
        EXPECT_EQ(number->rounded, row.rounded) << row.text;
        EXPECT_TRUE(number->tail.empty()) << row.text;
    }
    for (const char* text : {"", "abc", "-", ".", "1e", "99999999999999999999"}) {
        const auto number = written_number(text, '.');
        EXPECT_TRUE(!number || !number->tail.empty()) << text;
    }
}

TEST(NumberText, marks_tell_what_they_can) {
    EXPECT_EQ(mark_evidence("5.6"), MarkEvidence::point);
    EXPECT_EQ(mark_evidence("5,6"), MarkEvidence::comma);
    EXPECT_EQ(mark_evidence("1.234"), MarkEvidence::lone_point);
    EXPECT_EQ(mark_evidence("1,234"), MarkEvidence::lone_comma);
    EXPECT_EQ(mark_evidence("0.234"), MarkEvidence::point);
    EXPECT_EQ(mark_evidence("1.234,5"), MarkEvidence::comma);
    EXPECT_EQ(mark_evidence("1,234,567"), MarkEvidence::point);
    EXPECT_EQ(mark_evidence("142"), MarkEvidence::none);
}
