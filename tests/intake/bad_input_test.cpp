// The project's table of bad inputs (interchange, section 4.4), a test for each row by its number;
// rows 20 and 29 to 33, about times, are in bad_times_test.cpp; of
// row 41 the footers that sum up are in footer_rows_test.cpp.
#include "intake/bring_in.hpp"

#include "intake/intake_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::HasSubstr;

TEST(BadInput, row_01_a_byte_order_mark_is_stripped) {
    const Intake intake = read("\xEF\xBB\xBF" + table(plenty({})));
    EXPECT_EQ(intake.readings.size(), 10U);
    EXPECT_EQ(intake.columns[0].title, "time");
}

TEST(BadInput, row_02_utf_16_with_and_without_mark_is_decoded) {
    const std::string plain = table(plenty({}));
    for (const bool little : {true, false}) {
        for (const bool mark : {true, false}) {
            std::string bytes = mark ? (little ? "\xFF\xFE" : "\xFE\xFF") : "";
            for (const char c : plain) {
                bytes += little ? std::string{c, '\0'} : std::string{'\0', c};
            }
            const Intake intake = read(bytes);
            EXPECT_EQ(intake.readings.size(), 10U) << little << mark;
            EXPECT_EQ(intake.facts.encoding, little ? "UTF-16LE" : "UTF-16BE");
        }
    }
}

TEST(BadInput, row_03_windows_1252_and_gb_18030_are_told_apart) {
    const Intake western = read(
        "time,glucose mg/dL,meal\n2026-03-02 08:00,120,Fr\xFChst\xFC"
        "ck\n2026-03-02 08:15,121,\n");
    EXPECT_EQ(western.facts.encoding, "Windows-1252");
    ASSERT_EQ(western.diary.size(), 1U);
    EXPECT_EQ(western.diary[0].text,
              "Fr\xC3\xBChst\xC3\xBC"
              "ck");
    const Intake chinese = read(
        "time,glucose mg/dL,meal\n2026-03-02 08:00,120,\xC3\xD7\xB7\xB9\n2026-03-02 08:15,121,\n");
    EXPECT_EQ(chinese.facts.encoding, "GB 18030");
    EXPECT_EQ(chinese.diary[0].text, "\xE7\xB1\xB3\xE9\xA5\xAD");  // cooked rice
}

TEST(BadInput, row_04_a_broken_byte_costs_a_note_nothing_and_a_value_its_row) {
    std::string text = "time,glucose mg/dL,note\n";
    for (int i = 0; i < 30; ++i) {
        text += "2026-03-02 " + std::to_string(10 + i / 4) + ":" +
                (i % 4 == 0 ? "00" : std::to_string(i % 4 * 15)) +
                ",120,\xC3\xBC\xC3\xA4\xC3\xB6 good\n";
    }
    text +=
        "2026-03-02 20:00,121,bro\xFFken\n2026-03-02 20:15,1\xFF"
        "1,\n2026-03-02 20:30\xFF,120,\n";
    const Intake intake = read(text);
    EXPECT_EQ(intake.facts.encoding, "UTF-8");
    EXPECT_EQ(count(intake, Fate::rejected), 2U);
    EXPECT_EQ(code(intake, "broken_characters"), 1U);
    expect_sums(intake);
}

TEST(BadInput, row_05_a_decimal_comma_beside_semicolons) {
    const Intake intake = read(table(plenty({"5,6"}, "6,1"), "glucose mmol/L", ';'));
    EXPECT_EQ(intake.readings.back().value(), (Glucose{560, GlucoseUnit::mmol_per_l}));
}

TEST(BadInput, row_06_an_unquoted_decimal_comma_in_a_comma_file_is_rejected_with_the_reason) {
    const Intake intake = read(table(plenty({"5,6"}, "6.1"), "glucose mmol/L"));
    EXPECT_EQ(count(intake, Fate::rejected), 1U);
    EXPECT_THAT(note(intake, "too_many_fields").expected, HasSubstr("decimal comma"));
    EXPECT_EQ(note(intake, "too_many_fields").line, 12U);
}

TEST(BadInput, row_07_a_quoted_decimal_comma_in_a_comma_file) {
    const Intake intake = read(table(plenty({"\"5,6\""}, "\"6,1\""), "glucose mmol/L"));
    EXPECT_EQ(intake.readings.back().value(), (Glucose{560, GlucoseUnit::mmol_per_l}));
}

TEST(BadInput, row_08_grouped_thousands_by_the_columns_evidence_and_a_lone_one_is_asked) {
    IntakeOptions options;
    const Intake grouped = read(
        "time;glucose mg/dL;energy kcal\n2026-03-02 08:00;120;1.234,5\n2026-03-02 "
        "08:15;121;980,0\n");
    ASSERT_EQ(grouped.diary.size(), 2U);
    EXPECT_EQ(*grouped.diary[0].energy_kcal, 1234.5);
    const Intake lone =
        read("time;energy kcal;meal\n2026-03-02 08:00;1.234;bread\n2026-03-02 12:15;1.100;soup\n");
    EXPECT_TRUE(asks(lone, "decimal_mark"));
    EXPECT_EQ(count(lone, Fate::question), 2U);
    EXPECT_EQ(lone.ledger.read(), 0U);
}

TEST(BadInput, row_09_mixed_decimal_marks_are_asked_about) {
    const Intake intake = read(table({"5,6", "5.7", "6,1", "6.2"}, "glucose mmol/L", ';'));
    EXPECT_TRUE(asks(intake, "decimal_mark"));
    EXPECT_TRUE(intake.readings.empty());
    IntakeOptions answered;
    answered.decimal_mark = '.';
    EXPECT_FALSE(asks(read(table({"5,6", "5.7", "6,1", "6.2"}, "glucose mmol/L", ';'), answered),
                      "decimal_mark"));
}

TEST(BadInput, row_10_low_words_are_censored_below) {
    for (const char* word : {"LOW", "LO", "low", "<2.2", "< 2.2"}) {
        const Intake intake = read(table(plenty({word}, "6.1"), "glucose mmol/L"));
        ASSERT_EQ(intake.readings.size(), 11U) << word;
        EXPECT_EQ(intake.readings.back().limit(), Limit::below) << word;
        EXPECT_EQ(intake.readings.back().hundredths(), 220) << word;
        EXPECT_EQ(code(intake, "beyond_the_limit"), 1U);
    }
}

TEST(BadInput, row_11_high_words_are_censored_above) {
    for (const char* word : {"HIGH", "HI", ">400", "> 400"}) {
        const Intake intake = read(table(plenty({word})));
        EXPECT_EQ(intake.readings.back().limit(), Limit::above) << word;
        EXPECT_EQ(intake.readings.back().hundredths(), 40000) << word;
    }
}

TEST(BadInput, row_10_and_11_low_and_high_in_the_languages_whose_titles_are_read) {
    const std::vector<std::string> low = {
        "trop bas", "Bas",   "bajo",         "muy bajo",     "niedrig",
        "zu tief",  "basso", "troppo basso", "\xE4\xBD\x8E", "\xE5\x81\x8F\xE4\xBD\x8E"};
    const std::vector<std::string> high = {"\xC3\x89lev\xC3\xA9",
                                           "\xC3\x89LEV\xC3\x89",
                                           "trop haut",
                                           "alto",
                                           "hoch",
                                           "zu hoch",
                                           "elevado",
                                           "\xE9\xAB\x98",
                                           "\xE5\x81\x8F\xE9\xAB\x98"};
    for (const std::string& word : low) {
        EXPECT_EQ(read(table(plenty({word}))).readings.back().limit(), Limit::below) << word;
    }
    for (const std::string& word : high) {
        EXPECT_EQ(read(table(plenty({word}))).readings.back().limit(), Limit::above) << word;
    }
}

TEST(BadInput, row_11_the_files_own_limit_is_taken_for_a_bare_word) {
    const Intake intake = read(table(plenty({"HIGH", "> 500"})));
    EXPECT_EQ(intake.readings[10].hundredths(), 50000);
    EXPECT_EQ(code(intake, "limit_assumed"), 0U);
}

TEST(BadInput, row_12_words_for_nothing_are_no_value) {
    for (const char* word : {"---", "NA", "null", "", "0"}) {
        const Intake intake = read(table(plenty({word, "121"})));
        EXPECT_EQ(count(intake, Fate::rejected), 1U) << word;
        EXPECT_EQ(code(intake, "no_value"), 1U) << word;
        EXPECT_EQ(intake.readings.size(), 11U) << word;
    }
}

TEST(BadInput, row_13_mixed_units_are_explained_by_a_unit_column_or_asked) {
    std::string text = "time,glucose,unit\n";
    std::string bare = "time,glucose\n";
    for (int i = 0; i < 20; ++i) {
        const std::string time =
            "2026-03-02 10:" + std::string(i < 10 ? "0" : "") + std::to_string(i);
        text += time + (i % 2 == 0 ? ",5.4,mmol/L\n" : ",97,mg/dL\n");
        bare += time + (i % 2 == 0 ? ",5.4\n" : ",97\n");
    }
    const Intake explained = read(text);
    ASSERT_EQ(explained.readings.size(), 20U);
    EXPECT_EQ(explained.readings[0].unit(), GlucoseUnit::mmol_per_l);
    EXPECT_EQ(explained.readings[1].unit(), GlucoseUnit::mg_per_dl);
    EXPECT_TRUE(asks(read(bare), "unit"));
}

TEST(BadInput, row_14_a_title_that_contradicts_the_numbers_is_asked_about) {
    const Intake intake = read(table(plenty({}, "110"), "glucose mmol/L"));
    ASSERT_TRUE(asks(intake, "unit"));
    EXPECT_EQ(intake.questions[0].guess, "mg/dL");
    IntakeOptions answered;
    answered.unit = GlucoseUnit::mg_per_dl;
    EXPECT_EQ(read(table(plenty({}, "110"), "glucose mmol/L"), answered).readings.size(), 10U);
}

TEST(BadInput, row_15_implausible_values_are_stored_and_marked) {
    const Intake intake = read(table(plenty({"12", "650"})));
    ASSERT_EQ(intake.readings.size(), 12U);
    EXPECT_TRUE(intake.readings[10].implausible());
    EXPECT_TRUE(intake.readings[11].implausible());
    EXPECT_FALSE(intake.readings[9].implausible());
    EXPECT_EQ(code(intake, "implausible"), 2U);
}

TEST(BadInput, row_16_the_same_row_again_is_a_duplicate) {
    const Intake intake = read(table(plenty({})) + "2026-03-02 08:00,120\n2026-03-02 08:00,120\n");
    EXPECT_EQ(count(intake, Fate::duplicate), 2U);
    EXPECT_EQ(intake.readings.size(), 10U);
    expect_sums(intake);
}

TEST(BadInput, row_17_another_value_at_the_same_time_holds_both) {
    const Intake intake = read(table(plenty({})) + "2026-03-02 08:00,140\n");
    EXPECT_EQ(count(intake, Fate::conflict), 2U);
    EXPECT_EQ(intake.held.size(), 2U);
    EXPECT_EQ(intake.readings.size(), 9U);
    expect_sums(intake);
}

TEST(BadInput, row_17_a_kind_column_tells_sensor_from_finger_prick) {
    const Intake intake = read(
        "time,kind,value\n2026-03-02 08:00,sensor glucose mg/dL,120\n2026-03-02 08:00,fingerstick "
        "mg/dL,131\n"
        "2026-03-02 08:15,sensor glucose mg/dL,121\n2026-03-02 08:30,sensor glucose mg/dL,122\n");
    EXPECT_EQ(intake.readings.size(), 3U);
    ASSERT_EQ(intake.diary.size(), 1U);
    EXPECT_EQ(intake.diary[0].kind, DiaryKind::finger_prick);
    EXPECT_EQ(intake.diary[0].glucose->hundredths, 13100);
    EXPECT_EQ(count(intake, Fate::stored), 4U);
}

TEST(BadInput, row_18_reversed_rows_are_sorted) {
    std::string text = "time,glucose mg/dL\n";
    for (int i = 9; i >= 0; --i) {
        text += "2026-03-02 08:0" + std::to_string(i) + "," + std::to_string(100 + i) + "\n";
    }
    const Intake intake = read(text);
    ASSERT_EQ(intake.readings.size(), 10U);
    EXPECT_EQ(intake.readings.front().hundredths(), 10000);
    EXPECT_EQ(intake.readings.back().hundredths(), 10900);
}

TEST(BadInput, row_19_a_file_twice_over_stores_its_rows_once) {
    const std::string once = table(plenty({}));
    const Intake intake = read(once + once.substr(once.find('\n') + 1));
    EXPECT_EQ(count(intake, Fate::stored), 10U);
    EXPECT_EQ(count(intake, Fate::duplicate), 10U);
}

TEST(BadInput, row_21_no_header_two_header_rows_and_a_units_row) {
    const std::string data = "2026-03-02 08:00,5.6\n2026-03-02 08:15,5.8\n2026-03-02 08:30,6.0\n";
    EXPECT_EQ(read(data).readings.size(), 3U);
    const Intake units = read("time,glucose\n,mmol/L\n" + data);
    EXPECT_EQ(units.readings.size(), 3U);
    EXPECT_EQ(units.unit, GlucoseUnit::mmol_per_l);
    EXPECT_EQ(count(units, Fate::not_data), 2U);
}

TEST(BadInput, row_22_title_rows_with_a_name_are_skipped_and_not_kept) {
    const Intake intake =
        read("Report for Example Person,,\nborn 1 April 1960\n\n" + table(plenty({})));
    EXPECT_EQ(intake.readings.size(), 10U);
    EXPECT_EQ(count(intake, Fate::not_data), 4U);
    for (const Guess& guess : intake.guesses) {
        EXPECT_EQ((guess.found + guess.why).find("Example"), std::string::npos);
    }
    for (const RowNote& n : intake.ledger.notes()) {
        EXPECT_EQ((n.found + n.expected).find("Example"), std::string::npos);
    }
}

TEST(BadInput, row_23_short_rows_are_padded_and_long_ones_rejected) {
    const Intake intake = read(
        "time,glucose mg/dL,note\n2026-03-02 08:00,120\n2026-03-02 08:15,121,ok\n"
        "2026-03-02 08:30,122,ok,more\n2026-03-02 08:45,123,,\n");
    EXPECT_EQ(intake.readings.size(), 3U);
    EXPECT_EQ(code(intake, "too_many_fields"), 1U);
}

TEST(BadInput, row_24_an_unclosed_quote_is_told_where_it_opened_and_reading_goes_on) {
    const Intake intake = read(
        "time,glucose mg/dL,note\n2026-03-02 08:00,120,ok\n2026-03-02 08:15,121,\"open\n"
        "2026-03-02 08:30,122,ok\n2026-03-02 08:45,123,ok\n");
    EXPECT_EQ(intake.readings.size(), 3U);
    EXPECT_EQ(note(intake, "unclosed_quote").line, 3U);
    EXPECT_EQ(note(intake, "unclosed_quote").column, 22U);
}

TEST(BadInput, row_25_control_characters_cost_a_note_nothing) {
    const Intake intake = read(
        "time,glucose mg/dL,note\n2026-03-02 08:00,120,a\x01"
        "b\n2026-03-02 08:15,1\x01"
        "21,\n"
        "2026-03-02 08:30,122,\n2026-03-02 08:45,122,\n");
    EXPECT_EQ(intake.diary[0].text, "ab");
    EXPECT_EQ(code(intake, "broken_characters"), 1U);
    EXPECT_EQ(count(intake, Fate::rejected), 1U);
}

TEST(BadInput, row_26_any_line_end_will_do) {
    for (const char* end : {"\r", "\n", "\r\n"}) {
        std::string text = table(plenty({}));
        std::string changed;
        for (const char c : text) {
            changed += c == '\n' ? std::string(end) : std::string(1, c);
        }
        EXPECT_EQ(read(changed).readings.size(), 10U) << static_cast<int>(end[0]);
    }
    EXPECT_EQ(read("time,glucose mg/dL\r\n2026-03-02 08:00,120\r2026-03-02 08:15,121\n2026-03-02 "
                   "08:30,122\n")
                  .readings.size(),
              3U);
}

TEST(BadInput, row_27_a_first_line_that_names_the_delimiter_is_obeyed) {
    const Intake intake = read("sep=;\n" + table(plenty({}, "5,6"), "glucose mmol/L", ';'));
    EXPECT_TRUE(intake.facts.dialect.named_by_file);
    EXPECT_EQ(intake.readings.size(), 10U);
}

TEST(BadInput, row_28_full_width_and_arabic_digits_minus_and_no_break_space) {
    const Intake intake = read(
        "time,glucose mg/dL\n\xEF\xBC\x92\xEF\xBC\x90\xEF\xBC\x92\xEF\xBC\x96-03-02 08:00,"
        "\xD9\xA1\xD9\xA2\xD9\xA0\n2026-03-02 08:15,\xC2\xA0"
        "121\xC2\xA0\n2026-03-02 08:30,122\n");
    ASSERT_EQ(intake.readings.size(), 3U);
    EXPECT_EQ(intake.readings[0].hundredths(), 12000);
    EXPECT_EQ(intake.readings[1].hundredths(), 12100);
}

TEST(BadInput, row_28_arabic_indic_digits_have_a_decimal_mark_of_their_own) {
    // 6.2 twice, in the digits of Arabic and of Persian.
    const Intake intake = read(table(
        plenty({"\xD9\xA6\xD9\xAB\xD9\xA2", "\xDB\xB6\xD9\xAB\xDB\xB2"}, "5.9"), "glucose mmol/L"));
    ASSERT_EQ(intake.readings.size(), 12U);
    EXPECT_EQ(intake.readings[10].hundredths(), 620);
    EXPECT_EQ(intake.readings[11].hundredths(), 620);
}

TEST(BadInput, row_34_carbohydrate_as_people_write_it) {
    const Intake intake = read(
        "time,meal,carbs (g)\n2026-03-02 08:00,a,45g\n2026-03-02 12:00,b,45 g\n2026-03-02 "
        "15:00,c,~45\n"
        "2026-03-02 18:00,d,40-50\n2026-03-02 20:00,e,a lot\n");
    ASSERT_EQ(intake.diary.size(), 5U);
    EXPECT_EQ(intake.diary[0].carbohydrate_g->value, 45);
    EXPECT_EQ(intake.diary[1].carbohydrate_g->value, 45);
    EXPECT_TRUE(intake.diary[2].carbohydrate_g->estimated);
    EXPECT_EQ(intake.diary[3].carbohydrate_g->value, 45);
    EXPECT_EQ(intake.diary[3].carbohydrate_g->half_width, 5);
    EXPECT_FALSE(intake.diary[4].carbohydrate_g.has_value());
    EXPECT_EQ(intake.diary[4].text, "e | a lot");
}

TEST(BadInput, row_35_scientific_notation) {
    const Intake intake = read(table(plenty({"5.6E+00", "5.6e0"}, "6.1"), "glucose mmol/L"));
    EXPECT_EQ(intake.readings[10].hundredths(), 560);
    EXPECT_EQ(intake.readings[11].hundredths(), 560);
}

TEST(BadInput, row_36_what_is_no_table_is_refused_in_plain_words) {
    EXPECT_EQ(read("").error->kind, FileErrorKind::empty);
    for (const char* titles : {"time,glucose mg/dL\n", "time,glucose\n,mg/dL\n\n"}) {
        const Intake alone = read(titles);
        EXPECT_EQ(alone.error->kind, FileErrorKind::empty);
        EXPECT_THAT(alone.error->sentence(),
                    HasSubstr("test.csv:1: found titles and no row of data below them"));
        EXPECT_EQ(alone.ledger.read(), 0U);
        EXPECT_GE(count(alone, Fate::not_data), 1U);
    }
    EXPECT_EQ(read(std::string("\x7F"
                               "ELF\x02\x01\x01",
                               7) +
                   std::string(300, '\0'))
                  .error->kind,
              FileErrorKind::not_a_table);
    EXPECT_EQ(read("PK\x03\x04 no archive").error->kind, FileErrorKind::archive);
    EXPECT_EQ(read("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1 no workbook").error->kind,
              FileErrorKind::broken_workbook);
    EXPECT_EQ(read("Dear coach, I forgot the file. Best wishes.\n").error->kind,
              FileErrorKind::no_time_column);
}

TEST(BadInput, row_37_two_million_rows_and_a_line_without_end_are_bounded) {
    std::string text = "time,glucose mg/dL,note\n2026-03-02 08:00,120,\n2026-03-02 08:15,121," +
                       std::string(20U << 20U, 'x') +
                       "\n2026-03-02 08:30,122,\n2026-03-02 08:45,123,\n";
    const Intake intake = read(text);
    EXPECT_EQ(intake.readings.size(), 3U);
    EXPECT_EQ(code(intake, "field_too_long"), 1U);
}

TEST(BadInput, row_38_formula_text_is_text) {
    const Intake intake =
        read("time,glucose mg/dL,note\n2026-03-02 08:00,120,=1+1\n2026-03-02 08:15,121,\n");
    EXPECT_EQ(intake.diary[0].text, "=1+1");
}

TEST(BadInput, row_39_a_unit_within_the_cell) {
    const Intake intake =
        read(table({"5.6 mmol/L", "101 mg/dL", "5.8 mmol/L", "6.0 mmol/L"}, "glucose"));
    ASSERT_EQ(intake.readings.size(), 4U);
    EXPECT_EQ(intake.readings[0].value(), (Glucose{560, GlucoseUnit::mmol_per_l}));
    EXPECT_EQ(intake.readings[1].value(), (Glucose{10100, GlucoseUnit::mg_per_dl}));
}

TEST(BadInput, row_40_two_persons_in_a_file_are_asked_about_and_never_merged) {
    std::string text = "patient,time,glucose mg/dL\n";
    for (int i = 0; i < 6; ++i) {
        text +=
            std::string(i % 2 == 0 ? "A" : "B") + ",2026-03-02 08:0" + std::to_string(i) + ",120\n";
    }
    EXPECT_TRUE(asks(read(text), "person"));
    IntakeOptions options;
    options.person = "A";
    const Intake intake = read(text, options);
    EXPECT_EQ(intake.readings.size(), 3U);
    EXPECT_EQ(code(intake, "other_person"), 3U);
    EXPECT_EQ(note(intake, "other_person").found.find("B"), std::string::npos);
}

TEST(BadInput, row_41_titles_footers_and_lines_are_no_data) {
    const Intake intake =
        read(table(plenty({})) + "-----,-----\n\nEnd of report\ntime,glucose mg/dL\n");
    EXPECT_EQ(intake.readings.size(), 10U);
    EXPECT_EQ(intake.ledger.read(), 10U);
    EXPECT_EQ(count(intake, Fate::not_data), 5U);
}

TEST(BadInput, row_42_a_diary_item_without_glucose_is_stored) {
    const Intake intake = read(
        "time,glucose mg/dL,meal\n2026-03-02 08:00,120,\n2026-03-02 08:15,,bread\n2026-03-02 "
        "08:30,122,\n");
    EXPECT_EQ(count(intake, Fate::stored), 3U);
    EXPECT_EQ(intake.readings.size(), 2U);
    EXPECT_EQ(intake.diary.size(), 1U);
}

TEST(BadInput, row_43_a_time_alone_is_rejected_as_no_value) {
    const Intake intake = read(
        "time,glucose mg/dL,meal\n2026-03-02 08:00,120,\n2026-03-02 08:15,,\n2026-03-02 "
        "08:30,122,\n");
    EXPECT_EQ(note(intake, "no_value").line, 3U);
    EXPECT_EQ(count(intake, Fate::rejected), 1U);
}

// Row 44 (likely the wrong client's file) needs the practice: what a client's wear already holds.

TEST(BadInput, row_45_a_plain_number_at_the_sensors_floor_is_a_reading) {
    const Intake intake = read(table(plenty({"39.6"})));
    EXPECT_FALSE(intake.readings.back().censored());
    EXPECT_EQ(intake.readings.back().hundredths(), 3960);
}

TEST(BadInput, a_rejected_value_names_line_column_found_and_expected) {
    const Intake intake = read(table(plenty({"abc"})));
    const RowNote& rejected = note(intake, "value_not_a_number");
    EXPECT_EQ(rejected.line, 12U);
    EXPECT_EQ(rejected.column, 18U);
    EXPECT_EQ(rejected.found, "'abc'");
    EXPECT_EQ(rejected.expected, "a glucose value, LOW or HIGH");
}

// A title that says no more than that a dose stands here was written by nobody as the entry's text.
TEST(BringIn, a_dose_takes_its_title_only_where_that_names_the_medicine) {
    const auto text_under = [](const std::string& title) {
        const Intake intake = read("time,glucose mg/dL," + title +
                                   "\n2026-03-02 08:00,120,4\n2026-03-02 08:15,121,\n");
        EXPECT_EQ(intake.diary.size(), 1U) << title;
        EXPECT_EQ(intake.diary.at(0).kind, DiaryKind::medicine) << title;
        EXPECT_EQ(intake.diary.at(0).number, 4) << title;
        return intake.diary.at(0).text;
    };
    EXPECT_EQ(text_under("Dose"), "");
    EXPECT_EQ(text_under("dose (units)"), "");
    EXPECT_EQ(text_under("Dosis IE"), "");
    EXPECT_EQ(text_under("medicine"), "");
    EXPECT_EQ(text_under("insulin dose"), "insulin dose");
    EXPECT_EQ(text_under("basal"), "basal");
}

TEST(UnreadWord, that_stands_often_where_glucose_should_is_told) {
    std::vector<std::string> values;
    for (int i = 0; i < 3; ++i) {
        values.insert(values.end(), {"120", "121", "Nieder", "122", "xx"});
    }
    const Intake intake = read(table(values));
    EXPECT_EQ(count(intake, Fate::rejected), 6U);
    EXPECT_EQ(code(intake, "word_not_read"), 2U);
    EXPECT_EQ(note(intake, "word_not_read").found,
              "3 glucose rows with the word 'nieder', the first on line 4");
    EXPECT_EQ(note(intake, "word_not_read").line, 0U);
    EXPECT_EQ(code(read(table(plenty({"oops", "oops"}))), "word_not_read"), 0U);
}
