// What columns mean where their titles say little, nothing, or too much.
#include "intake/bring_in.hpp"

#include "intake/intake_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fmt/format.h>

using namespace tracewright;
using namespace tracewright::testing;
using ::testing::HasSubstr;

namespace {

/// Rows a quarter of an hour apart from 2 March 2026 on: `%` of a row is its time.
std::string rows(const std::string& titles, const std::vector<std::string>& some,
                 std::size_t count = 12) {
    std::string text = titles.empty() ? "" : titles + "\n";
    for (std::size_t i = 0; i < count; ++i) {
        std::string row = some[i % some.size()];
        const std::string time =
            fmt::format("2026-03-{:02} {:02}:{:02}", 2 + i / 96, i / 4 % 24, i % 4 * 15);
        row.replace(row.find('%'), 1, time);
        text += row + "\n";
    }
    return text;
}

/// The same rows on the day after.
std::string a_day_later(std::string text) {
    for (std::size_t at = 0; (at = text.find("2026-03-02", at)) != std::string::npos;) {
        text.replace(at, 10, "2026-03-03");
    }
    return text;
}

}  // namespace

TEST(CutDecimals, rows_whose_decimal_comma_is_cut_are_refused_where_no_title_asks_for_the_rest) {
    const Intake intake = read(rows("time,glucose mmol/L", {"%,6,9", "%,7,4"}));
    EXPECT_EQ(intake.readings.size(), 0U);
    EXPECT_EQ(count(intake, Fate::rejected), 12U);
    EXPECT_THAT(note(intake, "too_many_fields").expected, HasSubstr("decimal comma"));
    expect_sums(intake);
    // So too in mg/dL, and where a few levels were whole.
    EXPECT_EQ(
        code(read(rows("time,glucose mg/dL", {"%,120,5", "%,121", "%,119,25"})), "too_many_fields"),
        8U);
}

TEST(CutDecimals, where_rows_cannot_tell_it_is_asked) {
    for (const char* titles : {"time,glucose mmol/L,note", ""}) {
        const Intake intake = read(rows(titles, {"%,6,9,", "%,7,4,"}));
        EXPECT_TRUE(asks(intake, "decimal_comma")) << titles;
        EXPECT_THAT(intake.questions.at(0).sentence, HasSubstr("'6,9'"));
        EXPECT_EQ(intake.ledger.read(), 0U) << titles;
    }
    EXPECT_TRUE(asks(read(rows("", {"%,6,9", "%,7,4"})), "decimal_comma"));
    EXPECT_TRUE(
        asks(read(rows("time,glucose mmol/L,note", {"%,6,9,bread", "%,7,4,"})), "decimal_comma"));
    IntakeOptions answered;
    answered.glucose_column = "2";
    EXPECT_EQ(read(rows("", {"%,6,9", "%,7,4"}), answered).readings.size(), 12U);
}

TEST(CutDecimals, a_column_without_a_title_loses_nothing_where_nothing_was_cut) {
    EXPECT_EQ(read(rows("time,glucose mmol/L", {"%,6.9,"})).readings.size(), 12U);
    EXPECT_EQ(read(rows("time,glucose mmol/L", {"%,6,", "%,7,"})).readings.size(), 12U);
    EXPECT_EQ(read(rows("time;glucose mmol/L", {"%;6,9;"})).readings.size(), 12U);
    const Intake noted = read(rows("time,glucose mmol/L", {"%,6.9,bread"}));
    EXPECT_EQ(noted.readings.size(), 12U);
    EXPECT_EQ(noted.diary.at(0).text, "bread");
}

TEST(CutDecimals, numbers_in_a_column_without_a_title_are_told_where_commas_cut_nothing) {
    const Intake intake = read(rows("time;glucose mmol/L", {"%;6,9;31"}));
    EXPECT_EQ(intake.readings.size(), 12U);
    EXPECT_THAT(note(intake, "column_without_a_title").found, HasSubstr("column 3"));
}

TEST(Titles, stay_above_rows_that_have_a_time_and_no_value_yet) {
    for (const char* nothing : {"%,,,", "%,---,---,---", "%"}) {
        const std::string text = rows("time,heart rate,glucose (mg/dL),carbs (g)", {nothing}, 3) +
                                 a_day_later(rows("", {"%,62,198,", "%,64,201,20"}));
        const Intake intake = read(text);
        ASSERT_EQ(intake.columns.size(), 4U) << nothing;
        EXPECT_EQ(intake.columns[1].role, "ignored");
        EXPECT_EQ(intake.columns[2].role, "glucose");
        EXPECT_EQ(intake.readings.size(), 12U);
        EXPECT_EQ(code(intake, "no_value"), 3U);
        EXPECT_EQ(count(intake, Fate::rejected), 3U);
        EXPECT_EQ(count(intake, Fate::not_data), 1U);
        EXPECT_EQ(note(intake, "no_value").line, 2U);
    }
    // A date that stands alone above the titles is no row of theirs.
    const Intake dated = read("2026-03-02 07:00\n" + table({"110", "111", "112"}));
    EXPECT_EQ(dated.readings.size(), 3U);
    EXPECT_EQ(count(dated, Fate::not_data), 2U);
    // Nor does a line of nothing part titles from their rows.
    EXPECT_EQ(
        read("time,heart rate,glucose (mg/dL)\n,,\n" + rows("", {"%,62,198"})).columns[2].role,
        "glucose");
}

TEST(GlucoseColumn, is_asked_for_where_two_would_do_and_no_title_says_which) {
    const std::string without = rows("", {"%,62,198", "%,64,201"});
    const Intake intake = read(without);
    EXPECT_TRUE(asks(intake, "glucose_column"));
    EXPECT_EQ(intake.questions.size(), 1U);
    EXPECT_THAT(intake.questions.at(0).sentence, HasSubstr("columns 2 and 3"));
    EXPECT_EQ(intake.questions.at(0).option, "--glucose-column");
    EXPECT_EQ(intake.ledger.read(), 0U);
    EXPECT_THAT(read(rows("time,pulse,reading", {"%,62,198"})).questions.at(0).sentence,
                HasSubstr("2 ('pulse') and 3 ('reading')"));
    IntakeOptions answered;
    answered.glucose_column = "3";
    EXPECT_EQ(read(without, answered).readings.at(0).hundredths(), 19800);
    EXPECT_EQ(read(without, answered).readings.size(), 12U);
}

TEST(GlucoseColumn, is_taken_where_one_says_more_for_itself) {
    // Its unit, LOW and HIGH, a "value"; and numbers of rows are none.
    for (const char* titles : {"time,pulse,sugar mg/dL", "time,pulse,value"}) {
        EXPECT_EQ(read(rows(titles, {"%,62,198"})).readings.at(0).hundredths(), 19800) << titles;
    }
    const Intake low = read(rows("", {"%,62,198", "%,64,LOW", "%,63,180"}));
    EXPECT_EQ(low.readings.at(0).hundredths(), 19800);
    std::string numbered;
    for (int i = 0; i < 12; ++i) {
        numbered += fmt::format("{},2026-03-02 08:{:02},{}\n", i + 3, i * 5, 190 + i % 3);
    }
    EXPECT_EQ(read(numbered).readings.at(0).hundredths(), 19000);
}

TEST(GlucoseColumn, beside_a_diary_is_the_one_that_says_it_is) {
    for (const char* titles : {"time,mg/dL,note", "time,(mg/dL),meal", "time,value,note"}) {
        const Intake intake = read(rows(titles, {"%,120,", "%,121,after tea", "%,122,"}));
        EXPECT_EQ(intake.readings.size(), 12U) << titles;
        EXPECT_EQ(intake.diary.size(), 4U) << titles;
    }
    EXPECT_EQ(read(rows("time,Wert,carbs", {"%,120,30", "%,121,40"})).readings.size(), 12U);
    EXPECT_EQ(read(rows("time,reading,note", {"%,62,", "%,64,", "%,LOW,"})).readings.size(), 12U);
    EXPECT_EQ(read(rows("time,mmol/L,note", {"%,5.6,", "%,5.8,tea"}, 2)).unit,
              GlucoseUnit::mmol_per_l);
    EXPECT_TRUE(
        asks(read(rows("time,mg/dL,mmol/L,note", {"%,108,6.0,", "%,126,7.0,"})), "glucose_column"));
}

TEST(GlucoseColumn, beside_words_of_a_diary_a_value_may_be_theirs_and_is_told_as_not_read) {
    const Intake intake = read(rows("time,exercise,value", {"%,walk,45", "%,cycling,60"}));
    EXPECT_TRUE(intake.readings.empty());
    EXPECT_EQ(intake.diary.size(), 12U);
    EXPECT_THAT(note(intake, "column_not_read").found, HasSubstr("column 3 ('value') in 12 rows"));
    EXPECT_TRUE(read(rows("time,note,LDL mg/dL", {"%,fasting,120", "%,,130"})).readings.empty());
    // What stands beside the time is no "no value".
    EXPECT_THAT(note(read(rows("time,reading,note", {"%,62,", "%,64,tea"})), "no_value").found,
                HasSubstr("in a column that is read"));
}

TEST(Titles, bear_their_unit_on_the_line_below_among_other_words) {
    for (const char* below : {"yyyy-mm-dd hh:mm,mg/dL,text", "datetime,mg/dL,string",
                              "(local),(mg/dL),-", "local,mg/dL,"}) {
        const Intake intake =
            read(rows("Time,Glucose,Note\n" + std::string(below), {"%,120,", "%,121,tea"}));
        EXPECT_EQ(intake.readings.size(), 12U) << below;
        EXPECT_EQ(intake.diary.size(), 6U) << below;
        EXPECT_EQ(intake.columns.at(1).title, "Glucose") << below;
        EXPECT_EQ(intake.columns.at(1).unit, "mg/dL") << below;
        EXPECT_EQ(count(intake, Fate::not_data), 2U) << below;
    }
}

TEST(Persons, a_column_that_names_two_persons_is_asked_about_whatever_its_title) {
    for (const char* title : {"ID", "Id", "Name", "Nachname", "Vorname", "Patient", "PatientID",
                              "Client", "Patient ID", "Full name", "Benutzer", "Surname"}) {
        const std::string text =
            rows(std::string(title) + ",time,glucose mg/dL", {"A7,%,120", "B9,%,180"});
        EXPECT_TRUE(asks(read(text), "person")) << title;
        IntakeOptions options;
        options.person = "A7";
        const Intake one = read(text, options);
        EXPECT_EQ(one.readings.size(), 6U) << title;
        EXPECT_EQ(code(one, "other_person"), 6U) << title;
    }
    EXPECT_TRUE(asks(read(rows("ID,time,glucose mg/dL", {"101,%,120", "101,%,120", "102,%,180"})),
                     "person"));
    EXPECT_TRUE(asks(read(rows("ID,time,meal", {"A7,%,bread", "B9,%,soup"})), "person"));
}

TEST(Persons, one_person_or_numbers_of_rows_are_not_asked_about) {
    EXPECT_EQ(read(rows("ID,time,glucose mg/dL", {"A7,%,120"})).readings.size(), 12U);
    std::vector<std::string> numbered;
    std::vector<std::string> in_days;
    for (int i = 0; i < 192; ++i) {
        numbered.push_back(fmt::format("r{:x},%,120", i * 7919));
        in_days.push_back(fmt::format("{},%,120", 1 + i % 96));
    }
    for (const auto& some : {numbered, in_days}) {
        const Intake intake = read(rows("ID,time,glucose mg/dL", some, 192));
        EXPECT_TRUE(intake.questions.empty());
        EXPECT_EQ(intake.readings.size(), 192U);
        EXPECT_EQ(intake.columns.at(0).role, "ignored");
    }
    // A name beside no glucose, or on some rows only, is a dish's.
    EXPECT_TRUE(read(rows("time,glucose mg/dL,name,carbs (g)",
                          {"%,120,bread,20", "%,121,,", "%,122,,", "%,123,soup,10", "%,124,,"}))
                    .questions.empty());
    EXPECT_TRUE(read(rows("time,name,carbs (g)", {"%,bread,20", "%,soup,10"})).questions.empty());
}

TEST(Persons, a_family_is_told_apart_by_first_names) {
    const std::string text =
        rows("Nachname;Vorname;Zeit;Glukose mg/dL", {"Berg;Anna;%;120", "Berg;Otto;%;180"});
    EXPECT_TRUE(asks(read(text), "person"));
    IntakeOptions options;
    options.person = "Anna";
    EXPECT_EQ(read(text, options).readings.size(), 6U);
    // Where a name is that of two persons nothing is merged.
    EXPECT_TRUE(asks(read(rows("Nachname;Vorname;Zeit;Glukose mg/dL",
                               {"Berg;Anna;%;120", "Thal;Anna;%;180", "Berg;Otto;%;150"}),
                          options),
                     "person"));
}

TEST(Sensors, two_of_them_in_one_file_are_two_wears) {
    for (const char* title :
         {"Serial", "Device", "Sensor ID", "Serial number", "Seriennummer", "Sensor number"}) {
        std::string text = "time," + std::string(title) + ",glucose mg/dL\n";
        for (int i = 0; i < 96; ++i) {
            const std::string time = fmt::format("2026-03-02 {:02}:{:02}", i / 4, i % 4 * 15);
            text += time + ",X1,120\n" + time + ",X2,180\n";
        }
        Intake intake = read(text + "2026-03-02 00:00,X2,180\n2026-03-02 00:15,X2,181\n");
        EXPECT_EQ(count(intake, Fate::stored), 191U) << title;
        EXPECT_EQ(count(intake, Fate::duplicate), 1U) << title;
        EXPECT_EQ(count(intake, Fate::conflict), 2U) << title;
        EXPECT_EQ(intake.ledger.read(), 194U);
        expect_sums(intake);
        EXPECT_EQ(intake.count_of_readings(), 191U) << title;
        const std::vector<Wear> wears = wears_in(intake, "test.csv", std::chrono::hours{12});
        ASSERT_EQ(wears.size(), 2U) << title;
        for (const Wear& wear : wears) {
            EXPECT_EQ(wear.interval, std::chrono::minutes{15});
            EXPECT_TRUE(std::ranges::all_of(wear.readings, [&](const Reading& reading) {
                return reading.hundredths() == wear.readings.front().hundredths();
            }));
        }
    }
}

TEST(Sensors, one_after_the_other_are_two_wears_and_one_alone_is_one) {
    std::vector<std::string> change(48, "%,X1,120");
    change.insert(change.end(), 48, "%,X2,121");
    Intake two = read(rows("time,serial,glucose mg/dL", change, 96));
    EXPECT_EQ(wears_in(two, "", std::chrono::hours{12}).size(), 2U);
    Intake one = read(rows("time,serial,glucose mg/dL", {"%,X1,120", "%,,121"}, 96));
    EXPECT_EQ(wears_in(one, "", std::chrono::hours{12}).size(), 1U);
}

TEST(Sensors, two_devices_that_take_turns_show_one_sensor) {
    std::vector<std::string> turns;
    for (int i = 0; i < 192; ++i) {
        turns.push_back(i / 12 % 2 == 0 ? "%,phone,120" : "%,reader,121");
    }
    const Intake intake = read(rows("time,device,glucose mg/dL", turns, 192));
    EXPECT_EQ(intake.readings.size(), 192U);
    EXPECT_EQ(code(intake, "devices_take_turns"), 1U);
}

TEST(FingerPrickColumn, blood_glucose_beside_a_sensors_is_the_diarys_in_any_order) {
    for (const char* title : {"Blood Glucose mg/dL", "Strip Glucose (mg/dL)", "Blutzucker (mg/dL)",
                              "BG", "Meter", "Fingerstick"}) {
        for (const bool first : {false, true}) {
            const Intake intake =
                first
                    ? read(rows("time," + std::string(title) + ",Sensor Glucose mg/dL",
                                {"%,131,120", "%,,121"}))
                    : read(rows("time,CGM (mg/dL)," + std::string(title), {"%,120,131", "%,121,"}));
            EXPECT_EQ(intake.readings.size(), 12U) << title << first;
            EXPECT_EQ(intake.readings.at(0).hundredths(), 12000) << title << first;
            ASSERT_EQ(intake.diary.size(), 6U) << title << first;
            EXPECT_EQ(intake.diary[0].kind, DiaryKind::finger_prick);
            EXPECT_EQ(intake.diary[0].glucose, (Glucose{13100, GlucoseUnit::mg_per_dl}));
        }
    }
}

TEST(FingerPrickColumn, blood_glucose_alone_is_the_trace) {
    for (const char* title : {"Blood Glucose mg/dL", "Blutzucker (mg/dL)", "BG"}) {
        EXPECT_EQ(read(rows("time," + std::string(title), {"%,120"})).readings.size(), 12U);
    }
}

TEST(FingerPrickColumn, a_second_level_of_a_row_is_told) {
    const Intake intake = read(rows("time,historic glucose mg/dL,scan glucose mg/dL",
                                    {"%,120,131", "%,121,", "%,,122", "%,123,123"}));
    EXPECT_EQ(intake.readings.size(), 12U);
    EXPECT_EQ(code(intake, "second_value"), 3U);
    EXPECT_EQ(note(intake, "second_value").found, "'131'");
}

TEST(FingerPrickColumn, a_number_that_stands_for_a_kind_is_no_note) {
    const Intake intake =
        read(rows("time,Record Type,glucose mg/dL", {"%,0,120", "%,1,121", "%,5,122"}));
    EXPECT_EQ(intake.readings.size(), 12U);
    EXPECT_TRUE(intake.diary.empty());
}

TEST(TimeColumn, a_stamp_of_time_is_one_whatever_made_it_and_an_unclear_title_is_tried_by_content) {
    for (const char* title : {"Ger\xC3\xA4tezeitstempel", "Device timestamp", "Date of result",
                              "Result", "Sample type date", "Person seen on"}) {
        const Intake intake = read(rows(std::string(title) + ",glucose mg/dL", {"%,120"}));
        EXPECT_EQ(intake.readings.size(), 12U) << title;
        EXPECT_EQ(intake.columns.at(0).role, "time") << title;
    }
}

TEST(TimeColumn, a_title_that_leads_to_a_time_goes_before_an_unclear_one) {
    const Intake intake = read(rows("Result,time,glucose mg/dL", {"2026-01-01 00:00,%,120"}));
    EXPECT_EQ(intake.columns.at(1).role, "time");
    EXPECT_EQ(intake.readings.size(), 12U);
}

TEST(SerialTimes, numbers_of_days_are_read_where_the_whole_column_is_such_and_said_so) {
    for (const char* text :
         {"time,glucose mg/dL\n46083.34375,120\n46083.354166667,121\n46084,122\n",
          "46083.34375,120\n46083.354166667,121\n46084,122\n",
          "Zeit;Glukose mg/dL\n46083,34375;120\n46083,354166667;121\n46084;122\n"}) {
        for (const bool named : {false, true}) {
            IntakeOptions options;
            if (named) {
                options.time_column = "1";
            }
            const Intake intake = read(text, options);
            ASSERT_EQ(intake.readings.size(), 3U) << text << named;
            const auto day = Instant{std::chrono::sys_days{std::chrono::year{2026} / 3 / 2}};
            EXPECT_EQ(intake.readings[0].at, day + std::chrono::minutes{8 * 60 + 15});
            EXPECT_EQ(intake.readings[1].at, day + std::chrono::minutes{8 * 60 + 30});
            EXPECT_EQ(intake.readings[2].at, day + std::chrono::hours{24});
            EXPECT_TRUE(std::ranges::any_of(intake.guesses, [](const Guess& guess) {
                return guess.what == "times" && guess.why.find("46083") != std::string::npos;
            }));
        }
    }
}

TEST(SerialTimes, other_numbers_are_no_times) {
    for (const char* text : {"a,glucose mg/dL\n463.5,120\n464.5,121\n465.5,122\n",
                             "a,glucose mg/dL\n46083.5,120\n12.5,121\n46084.5,122\n",
                             "a,glucose mg/dL\n46083,120\n46084,121\n46085,122\n"}) {
        EXPECT_EQ(read(text).error->kind, FileErrorKind::no_time_column) << text;
    }
}

TEST(SameAgain, is_said_only_of_entries_that_say_the_same_throughout) {
    const auto twice = [](const char* titles, const char* one, const char* other) {
        const Intake both = read(rows(titles, {one, other}, 1) + rows("", {other}, 1));
        EXPECT_EQ(both.diary.size(), 2U) << other;
        EXPECT_EQ(count(both, Fate::duplicate), 0U) << other;
        const Intake again = read(rows(titles, {one}, 1) + rows("", {one}, 1));
        EXPECT_EQ(count(again, Fate::duplicate), 1U) << one;
    };
    twice("start,end", "%,2026-03-02 07:00", "%,2026-03-02 02:00");
    const char* meal = "time,meal,portion,energy kcal,protein (g),fat (g),fibre (g),carbs (g)";
    twice(meal, "%,rice,a cup,200,4,1,2,45", "%,rice,a bowl,200,4,1,2,45");
    twice(meal, "%,rice,a cup,200,4,1,2,45", "%,rice,a cup,300,4,1,2,45");
    twice(meal, "%,rice,a cup,200,4,1,2,45", "%,rice,a cup,200,6,1,2,45");
    twice(meal, "%,rice,a cup,200,4,1,2,45", "%,rice,a cup,200,4,3,2,45");
    twice(meal, "%,rice,a cup,200,4,1,2,45", "%,rice,a cup,200,4,1,5,45");
    twice(meal, "%,rice,a cup,200,4,1,2,45", "%,rice,a cup,200,4,1,2,~45");
    twice("time,type,steps,minutes", "%,WALKING,500,15", "%,RUNNING,500,15");
    twice("time,type,steps,minutes", "%,SEDENTARY,0,15", "%,GENERIC,0,15");
}

TEST(Movement, takes_the_word_of_its_type) {
    const Intake intake =
        read(rows("time,type,steps,minutes", {"%,WALKING,500,15", "%,RUNNING,900,10"}));
    ASSERT_EQ(intake.diary.size(), 12U);
    EXPECT_THAT(intake.diary[0].text, HasSubstr("WALKING"));
    EXPECT_EQ(intake.diary[0].number, 15);
}

TEST(Columns, the_mark_against_a_formula_is_no_part_of_what_a_client_wrote) {
    const Intake intake =
        read("time,note\r\n2026-03-02 08:10,'-1 kg today!\r\n2026-03-02 09:10,'tis fine\r\n");
    ASSERT_EQ(intake.diary.size(), 2U);
    EXPECT_EQ(intake.diary[0].text, "-1 kg today!");
    EXPECT_EQ(intake.diary[1].text, "'tis fine");
}
