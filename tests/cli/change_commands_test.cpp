// trial, before-after and labs: their JSON by its schema, their errors. What they say stands in
// tests/days. Everybody in here is invented.
#include "cli/command_for_tests.hpp"
#include "cli/json_schema.hpp"
#include "cli/trial_record.hpp"
#include "source_folder.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

using namespace tracewright;
using namespace tracewright::testing;
using nlohmann::json;
using ::testing::HasSubstr;
namespace fs = std::filesystem;

namespace {

const std::string source = TRACEWRIGHT_SOURCE_FOLDER;

/// The shipped example with all that a plan asks of a client answered.
class ChangeCommands : public ::testing::Test {
  protected:
    void SetUp() override {
        folder_ = fs::temp_directory_path() / ("tracewright-change-" + std::to_string(::getpid()));
        fs::create_directories(folder_);
        json cautions = {
            {"pregnancy", "no"},
            {"eating_screen", {{"asked_on", "2026-02-01"}, {"by", "Larch"}, {"positive", "no"}}},
            {"last_eye_check", "2025-10-01"}};
        for (const char* key :
             {"severe_low_before", "kidney_disease", "liver_disease", "heart_disease",
              "chest_symptoms", "eye_disease", "numb_feet_or_wound", "stomach_surgery", "frail",
              "another_autoimmune_disease"}) {
            cautions[key] = "no";
        }
        const json facts = {
            {"born_year", 1966},
            {"medicines_asked_on", "2026-02-20"},
            {"medicines", {{{"written", "metformin 500"}}}},
            {"cautions", cautions},
            {"labs", {{{"on", "2026-03-10"}, {"what", "HbA1c"}, {"value", 7.1}, {"unit", "%"}}}}};
        std::ofstream(at("facts.json")) << facts.dump();
    }
    void TearDown() override { fs::remove_all(folder_); }

    std::string at(const std::string& name) const { return (folder_ / name).string(); }

    /// A command on the example; a second wear is the example moved by 60 days where asked for.
    Ran on_example(std::vector<std::string> args, bool two_wears = false) const {
        args.insert(args.begin() + 1, source + "/data/invented-wear.csv");
        if (two_wears) {
            std::ofstream other(at("other.csv"));
            other << "time,glucose mg/dL\n";
            for (int day = 1; day <= 14; ++day) {
                for (int hour = 0; hour < 24; ++hour) {
                    other << "2026-01-" << (day < 10 ? "0" : "") << day << " "
                          << (hour < 10 ? "0" : "") << hour << ":00,"
                          << 120 + 9 * ((day * 7 + hour) % 11) << "\n";
                }
            }
            args.insert(args.begin() + 1, at("other.csv"));
        }
        args.insert(args.end(), {"--zone", "Europe/Berlin", "--facts", at("facts.json")});
        return run(args);
    }

  private:
    fs::path folder_;
};

}  // namespace

TEST_F(ChangeCommands, a_plan_its_record_and_its_calendar_are_by_their_formats) {
    const std::vector<std::string> args = {
        "trial",   "--question",     "walk-after-dinner", "--pairs",      "7",
        "--write", at("trial.json"), "--calendar",        at("days.ics"), "--json"};
    const Ran plan = on_example(args);
    ASSERT_EQ(plan.exit, Exit::done) << plan.err << plan.out;
    meets(plan.out, "trial.schema.json");
    meets(text_of(at("trial.json")), "trial-record.schema.json");
    const std::string calendar = text_of(at("days.ics"));
    EXPECT_THAT(calendar, HasSubstr("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n"));
    std::size_t events = 0;
    for (auto from = calendar.find("BEGIN:VEVENT"); from != std::string::npos;
         from = calendar.find("BEGIN:VEVENT", from + 1)) {
        ++events;
    }
    EXPECT_EQ(events, 14U);
    for (std::size_t from = 0; from < calendar.size();) {
        const auto end = calendar.find("\r\n", from);
        ASSERT_NE(end, std::string::npos);
        EXPECT_LE(end - from, 75U);  // RFC 5545, 3.1
        from = end + 2;
    }
    EXPECT_EQ(on_example(args).out, plan.out);
    const Ran read = on_example({"trial", "--read", at("trial.json"), "--json"});
    EXPECT_EQ(read.exit, Exit::done) << read.err;
    meets(read.out, "trial.schema.json");
    EXPECT_FALSE(json::parse(read.out)["reading"]["ended"]);
    const Ran ended =
        on_example({"trial", "--read", at("trial.json"), "--json", "--as-of", "2026-06-01"});
    meets(ended.out, "trial.schema.json");
    EXPECT_TRUE(json::parse(ended.out)["reading"]["ended"]);
}

TEST_F(ChangeCommands, a_record_changed_after_the_lot_is_refused) {
    ASSERT_EQ(on_example({"trial", "--question", "walk-after-dinner", "--pairs", "7", "--write",
                          at("trial.json")})
                  .exit,
              Exit::done);
    json record = json::parse(text_of(at("trial.json")));
    const auto read = trial_read(record.dump());
    ASSERT_TRUE(read) << read.error();
    EXPECT_EQ(json_of_trial(*read).dump(), Json::parse(text_of(at("trial.json"))).dump());
    record["pairs"][3]["a_first"] = !record["pairs"][3]["a_first"].get<bool>();
    std::ofstream(at("trial.json")) << record.dump();
    const Ran changed = on_example({"trial", "--read", at("trial.json")});
    EXPECT_EQ(changed.exit, Exit::bad_input);
    EXPECT_THAT(changed.err, HasSubstr("changed after the lot"));
    for (const char* bad : {"", "[]", "{}", "{\"version\": 2}", "{\"version\": 1, \"code\": 4}"}) {
        EXPECT_FALSE(trial_read(bad)) << bad;
    }
}

// A gate that has closed since the lot: the trial is read, but no more offered (safety rules 7 to
// 12).
TEST_F(ChangeCommands, a_trial_whose_gate_has_closed_since_is_not_offered_when_read) {
    ASSERT_EQ(on_example({"trial", "--question", "walk-after-dinner", "--pairs", "7", "--write",
                          at("trial.json")})
                  .exit,
              Exit::done);
    const auto read = [&](const char* as_of) {
        return on_example({"trial", "--read", at("trial.json"), "--as-of", as_of, "--json"}).out;
    };
    EXPECT_TRUE(json::parse(read("2026-03-16"))["reading"]["gates"].empty());
    json facts = json::parse(text_of(at("facts.json")));
    facts["cautions"]["pregnancy"] = "pregnant";
    std::ofstream(at("facts.json")) << facts.dump();
    for (const char* as_of : {"2026-03-16", "2026-06-01"}) {
        const json document = json::parse(read(as_of));
        meets(document.dump(), "trial.schema.json");
        ASSERT_EQ(document["reading"]["gates"].size(), 1U);
        EXPECT_NE(document["reading"]["finding"]["next"]["step"], "run_trial");
        EXPECT_NE(document["reading"]["finding"]["next"]["step"], "agree_change");
    }
    const Ran told = on_example({"trial", "--read", at("trial.json"), "--as-of", "2026-03-16"});
    EXPECT_THAT(told.out, HasSubstr("Next: Don't go on with it. No trial is offered now."));
    EXPECT_THAT(told.out, HasSubstr("maternity or diabetes clinic leads"));
}

TEST_F(ChangeCommands, before_after_labs_and_sensor_are_by_their_schemas) {
    const Ran compared = on_example({"before-after", "--json"}, true);
    ASSERT_EQ(compared.exit, Exit::done) << compared.err;
    meets(compared.out, "before-after.schema.json");
    EXPECT_EQ(json::parse(compared.out)["finding"]["caveats"][0]["code"], "other_kind_of_sensor");
    const Ran labs = on_example({"labs", "--json"});
    ASSERT_EQ(labs.exit, Exit::done) << labs.err;
    meets(labs.out, "labs.schema.json");
    EXPECT_EQ(json::parse(labs.out)["remission"]["state"], "on_medicine");
    EXPECT_EQ(json::parse(labs.out)["findings"].size(), 3U);
    const Ran sensor = on_example({"sensor", "--json"});
    ASSERT_EQ(sensor.exit, Exit::done) << sensor.err;
    meets(sensor.out, "sensor.schema.json");
}

TEST_F(ChangeCommands, labs_tells_what_it_could_not_read) {
    std::ofstream(at("facts.json"))
        << R"({"labs": [{"on": "2026-03-10", "what": "HbA1c", "value": 7.1, "unit": "%"},
                        {"on": "2026-03-11", "what": "glycohaem.", "value": 7, "unit": "%"}]})";
    const Ran told = on_example({"labs"});
    ASSERT_EQ(told.exit, Exit::done) << told.err;
    EXPECT_THAT(told.out, HasSubstr("Kept, but not read as A1c"));
    EXPECT_THAT(told.out, HasSubstr("2026-03-11  glycohaem. 7 %"));
    const Ran labs = on_example({"labs", "--json"});
    meets(labs.out, "labs.schema.json");
    EXPECT_EQ(json::parse(labs.out)["not_read"][0]["words"], "glycohaem. 7 %");
}

TEST_F(ChangeCommands, what_is_asked_wrongly_is_told) {
    EXPECT_EQ(run({"trial", "--list"}).exit, Exit::done);
    EXPECT_EQ(on_example({"trial"}).exit, Exit::wrong_usage);
    EXPECT_EQ(on_example({"trial", "--question", "no-such-thing"}).exit, Exit::wrong_usage);
    EXPECT_EQ(on_example({"trial", "--question", "walk-after-lunch", "--worth", "0"}).exit,
              Exit::wrong_usage);
    EXPECT_EQ(on_example({"trial", "--read", at("nowhere.json")}).exit, Exit::bad_input);
    EXPECT_EQ(on_example({"before-after"}).exit, Exit::cannot_answer);
    EXPECT_EQ(on_example({"before-after", "--before", "1", "--after", "1"}, true).exit,
              Exit::wrong_usage);
    EXPECT_EQ(on_example({"before-after", "--before", "7"}, true).exit, Exit::wrong_usage);
    EXPECT_EQ(on_example({"labs", "--surgery-on", "soon"}).exit, Exit::wrong_usage);
    const Ran unasked = run({"trial", source + "/data/invented-wear.csv", "--question",
                             "walk-after-dinner", "--pairs", "7"});
    EXPECT_EQ(unasked.exit, Exit::cannot_answer);
    EXPECT_THAT(unasked.out, HasSubstr("please ask"));
}
