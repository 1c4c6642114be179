// plan, kept trials, remind and story: their JSON by its schema, their errors. What they say stands
// in tests/days. Everybody in here is invented.
#include "cli/command_for_tests.hpp"
#include "cli/json_schema.hpp"
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

/// A practice with one client, the shipped example, of whom everything was asked.
class PlanCommands : public ::testing::Test {
  protected:
    void SetUp() override {
        folder_ = fs::temp_directory_path() / ("tracewright-plan-" + std::to_string(::getpid()));
        fs::create_directories(folder_);
        std::ofstream(at("pass")) << "an invented passphrase\n";
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
            {"told_type", "Type 2"},
            {"zones", {{{"zone", "Europe/Berlin"}, {"from", nullptr}}}},
            {"medicines_asked_on", "2026-02-20"},
            {"medicines", {{{"written", "metformin 500"}}}},
            {"cautions", cautions},
            {"labs", {{{"on", "2025-12-10"}, {"what", "HbA1c"}, {"value", 7.1}, {"unit", "%"}}}}};
        std::ofstream(at("facts.json")) << facts.dump();
        ASSERT_EQ(practice({"init", "Sorrel (invented)"}).exit, Exit::done);
        ASSERT_EQ(practice({"client", "add", "Tansy (invented)", "--handle", "c1", "--facts",
                            at("facts.json")})
                      .exit,
                  Exit::done);
        ASSERT_EQ(practice({"bring-in", "c1", source + "/data/invented-wear.csv"}).exit,
                  Exit::done);
    }
    void TearDown() override { fs::remove_all(folder_); }

    std::string at(const std::string& name) const { return (folder_ / name).string(); }
    Ran practice(std::vector<std::string> args, const char* as_of = "2026-03-20T12:00") const {
        args.insert(args.end(), {"--practice", at("practice"), "--passphrase-file", at("pass"),
                                 "--as-of", as_of});
        return run(args);
    }

  private:
    fs::path folder_;
};

const std::vector<std::string> whole = {
    "plan",       "c1",         "--agree",       "a walk with the dog",
    "--kind",     "walking",    "--when",        "after dinner",
    "--where",    "the park",   "--how-often",   "five evenings",
    "--if-not",   "the stairs", "--how-checked", "the next wear",
    "--check-on", "2026-04-05", "--stop-when",   "unwell"};

}  // namespace

TEST_F(PlanCommands, plan_story_and_reminders_are_by_their_formats) {
    const Ran plan = practice({"plan", "c1", "--json"});
    ASSERT_EQ(plan.exit, Exit::done) << plan.err;
    meets(plan.out, "plan.schema.json");
    EXPECT_EQ(practice({"plan", "c1", "--json"}).out, plan.out);
    ASSERT_EQ(practice(whole).exit, Exit::done) << practice(whole).err;
    const Ran agreed = practice({"plan", "c1", "--json"});
    meets(agreed.out, "plan.schema.json");
    EXPECT_EQ(json::parse(agreed.out)["says"], "one_is_agreed");
    EXPECT_EQ(json::parse(agreed.out)["agreed"]["if_not"], "the stairs");
    const Ran told = practice({"story", "c1", "--json", "--html", at("story.html")});
    ASSERT_EQ(told.exit, Exit::done) << told.err;
    meets(told.out, "story.schema.json");
    EXPECT_THAT(text_of(at("story.html")), HasSubstr("Our story so far"));
    const Ran reminders = practice({"remind", "--json"}, "2026-04-20T12:00");
    ASSERT_EQ(reminders.exit, Exit::done) << reminders.err;
    meets(reminders.out, "reminders.schema.json");
    EXPECT_EQ(json::parse(reminders.out)["clients"][0]["reminders"][0]["kind"], "agreed_change");
}

TEST_F(PlanCommands, a_change_is_agreed_whole_once_and_ended_with_its_outcome) {
    const Ran part = practice({"plan", "c1", "--agree", "a walk", "--kind", "walking"});
    EXPECT_EQ(part.exit, Exit::wrong_usage);
    EXPECT_THAT(part.err,
                HasSubstr("found nothing of: when, where, how often, if not, how checked, stop "
                          "when"));
    ASSERT_EQ(practice(whole).exit, Exit::done);
    EXPECT_EQ(practice(whole).exit, Exit::cannot_answer);
    EXPECT_EQ(practice({"plan", "c1", "--ended", "perhaps"}).exit, Exit::wrong_usage);
    const Ran ended = practice({"plan", "c1", "--ended", "kept", "--on", "2026-04-05"});
    ASSERT_EQ(ended.exit, Exit::done) << ended.err;
    EXPECT_THAT(ended.out, HasSubstr("kept on 2026-04-05"));
    EXPECT_EQ(practice({"plan", "c1", "--ended", "kept"}).exit, Exit::cannot_answer);
    const json facts = json::parse(practice({"client", "show", "c1", "--json"}).out);
    EXPECT_EQ(facts["earlier_changes"][0]["outcome"], "kept");
    EXPECT_TRUE(facts["agreed_change"].is_null());
}

// Safety rules 8, 9 and 12.
TEST_F(PlanCommands, a_change_in_other_words_is_agreed_once_it_is_told_what_it_does) {
    std::vector<std::string> words = whole;
    words[5] = "other";
    words[3] = "as we said on Monday";
    const Ran refused = practice(words);
    EXPECT_EQ(refused.exit, Exit::cannot_answer);
    EXPECT_THAT(refused.out, HasSubstr("safety rule 9"));
    EXPECT_THAT(refused.out, HasSubstr("--eating nothing, as-much or less"));
    words.insert(words.end(), {"--eating", "perhaps"});
    EXPECT_EQ(practice(words).exit, Exit::wrong_usage);
    words.back() = "nothing";
    words.insert(words.end(), {"--moves", "no", "--medicine", "no"});
    const Ran agreed = practice(words);
    EXPECT_EQ(agreed.exit, Exit::done) << agreed.out << agreed.err;
    const json facts = json::parse(practice({"client", "show", "c1", "--json"}).out);
    EXPECT_EQ(facts["agreed_change"]["eating"], "nothing");
}

TEST_F(PlanCommands, a_medicine_is_never_agreed_on) {
    std::vector<std::string> words = whole;
    words[3] = "half a tablet of metformin less";
    const Ran refused = practice(words);
    EXPECT_EQ(refused.exit, Exit::cannot_answer);
    EXPECT_THAT(refused.out, HasSubstr("name a medicine"));
}

TEST_F(PlanCommands, a_trial_is_kept_once_told_day_by_day_and_read_after_its_end) {
    const std::vector<std::string> draw = {"trial",   "c1", "--question", "walk-after-dinner",
                                           "--pairs", "7",  "--keep"};
    ASSERT_EQ(practice(draw).exit, Exit::done);
    const Ran again = practice(draw);
    EXPECT_EQ(again.exit, Exit::cannot_answer);
    EXPECT_THAT(again.err, HasSubstr("one at a time"));
    const Ran listed = practice({"trial", "c1", "--kept", "--json"}, "2026-03-23T12:00");
    ASSERT_EQ(listed.exit, Exit::done) << listed.err;
    meets(listed.out, "trial.schema.json");
    const json kept = json::parse(listed.out)["kept"][0];
    EXPECT_EQ(kept["state"], "running");
    const std::string first = kept["first_day"];
    ASSERT_EQ(
        practice({"trial", "c1", "--number", "1", "--done", first + "=a"}, "2026-03-23T12:00").exit,
        Exit::done);
    EXPECT_EQ(practice({"trial", "c1", "--number", "1", "--done", "2026-01-01=a"}).exit,
              Exit::cannot_answer);
    EXPECT_EQ(practice({"trial", "c1", "--number", "1", "--done",
                        kept["last_day"].get<std::string>() + "=a"})
                  .exit,
              Exit::wrong_usage);
    const Ran peek = practice({"trial", "c1", "--number", "1", "--json"}, "2026-03-25T12:00");
    meets(peek.out, "trial.schema.json");
    EXPECT_FALSE(json::parse(peek.out)["reading"]["ended"]);
    EXPECT_TRUE(json::parse(peek.out)["reading"]["as_allotted"].is_null());
    const Ran read = practice({"trial", "c1", "--number", "1", "--json"}, "2026-06-01T12:00");
    EXPECT_TRUE(json::parse(read.out)["reading"]["ended"]);
    ASSERT_EQ(practice({"client", "export", "c1", "--out", at("export")}).exit, Exit::done);
    const json exported = json::parse(text_of(at("export") + "/client.json"));
    meets(exported.dump(), "client.schema.json");
    EXPECT_EQ(exported["trials"][0]["days"][0]["done"], "a");
}

TEST_F(PlanCommands, rules_of_reminders_are_set_and_a_slip_is_said) {
    const Ran set = practice({"remind", "--quiet-from", "20:00", "--off", "laboratory"});
    ASSERT_EQ(set.exit, Exit::done) << set.err;
    EXPECT_THAT(set.out, HasSubstr("Quiet from 20:00 to 08:00"));
    EXPECT_THAT(set.out, HasSubstr("Off: laboratory"));
    EXPECT_THAT(practice({"remind", "--on", "laboratory"}).out, HasSubstr("Off: none"));
    EXPECT_EQ(practice({"remind", "--quiet-from", "25:00"}).exit, Exit::wrong_usage);
    EXPECT_EQ(practice({"remind", "--off", "unsafe"}).exit, Exit::wrong_usage);
}

TEST_F(PlanCommands, from_files_nothing_is_kept) {
    const std::string wear = source + "/data/invented-wear.csv";
    EXPECT_EQ(run({"plan", wear, "--zone", "Europe/Berlin", "--facts", at("facts.json"), "--agree",
                   "a walk"})
                  .exit,
              Exit::wrong_usage);
    EXPECT_EQ(run({"trial", wear, "--zone", "Europe/Berlin", "--kept"}).exit, Exit::wrong_usage);
    const Ran plan =
        run({"plan", wear, "--zone", "Europe/Berlin", "--facts", at("facts.json"), "--json"});
    ASSERT_EQ(plan.exit, Exit::done) << plan.err;
    meets(plan.out, "plan.schema.json");
}
