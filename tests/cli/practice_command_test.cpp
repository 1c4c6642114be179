// The commands on a practice: keys, leaks, and what is said when something is amiss.
#include "cli/command_for_tests.hpp"
#include "cli/json_schema.hpp"
#include "source_folder.hpp"
#include "store/diary_book.hpp"
#include "store/meal_photo_book.hpp"
#include "store/sqlite_practice.hpp"

#include <gtest/gtest.h>
#include <unistd.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <iostream>
#include <optional>

using namespace tracewright;
using namespace tracewright::testing;
namespace fs = std::filesystem;

namespace {

/// A practice with one invented client, made anew for each test.
class PracticeCommand : public ::testing::Test {
  protected:
    void SetUp() override {
        folder = fs::temp_directory_path() / ("tracewright-practice-" + std::to_string(::getpid()));
        fs::create_directories(folder);
        std::ofstream(place("pass")) << "an invented passphrase\n";
        std::ofstream wear(place("wear of Tansy.csv"));
        wear << "time,glucose mg/dL\n";
        for (int i = 0; i < 500; ++i) {
            wear << "2026-03-0" << 2 + i / 288 << " " << (i % 288) / 12 / 10 << (i % 288) / 12 % 10
                 << ":" << i % 12 * 5 / 10 << i % 12 * 5 % 10 << "," << 110 + i % 37 << "\n";
        }
        wear.close();
        made = on({"init", "Sorrel (invented)"});
        on({"client", "add", "Tansy (invented)", "--zone", "Europe/Berlin"});
        on({"bring-in", "c1", place("wear of Tansy.csv")});
        on({"note", "c1", "Tansy told of Ragwort"});
    }
    void TearDown() override { fs::remove_all(folder); }
    static std::string place(const std::string& name) { return (folder / name).string(); }
    static Ran on(std::vector<std::string> args) {
        args.insert(args.end(), {"--practice", place("p"), "--passphrase-file", place("pass")});
        return run(args);
    }

    static inline fs::path folder;
    static inline Ran made;
};

nlohmann::json schema_of(const std::string& name) {
    std::ifstream file(TRACEWRIGHT_SOURCE_FOLDER "/docs/formats/" + name);
    return nlohmann::json::parse(file);
}

void expect_fits(const nlohmann::json& document, const std::string& schema) {
    const auto told = schema_of(schema);
    for (const std::string& misfit : misfits(document, told, told)) {
        ADD_FAILURE() << schema << ": " << misfit;
    }
}

std::string recovery_key_in(const std::string& text) {
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        if (line.size() > 60 && line.starts_with("  ")) {
            return line.substr(2);
        }
    }
    return {};
}

}  // namespace

TEST_F(PracticeCommand, writes_dates_and_times_as_the_practice_does) {
    EXPECT_NE(on({"writing", "--as-of", "2026-03-05T14:40Z"}).out.find("Thu 5 March 2026, 14:40"),
              std::string::npos);
    EXPECT_NE(on({"wear", "c1"}).out.find("2 March 00:00"), std::string::npos);
    const Ran set = on({"writing", "--dates", "month-first", "--hours", "12", "--glucose", "mg/dL",
                        "--as-of", "2026-03-05T14:40Z"});
    EXPECT_EQ(set.out,
              "Dates and times: Thu March 5, 2026, 2:40 pm. Glucose of a client who was "
              "not asked: mg/dL.\n");
    EXPECT_NE(on({"wear", "c1"}).out.find("Mon March 2, 12:00 am"), std::string::npos);
    ASSERT_EQ(on({"client", "add", "Yarrow (invented)", "--handle", "c8"}).exit, Exit::done);
    EXPECT_NE(on({"client", "show", "c8", "--json"}).out.find("\"unit\": \"mg/dL\""),
              std::string::npos);
    ASSERT_EQ(on({"client", "erase", "c8", "--confirm", "c8", "--without-export"}).exit,
              Exit::done);
    expect_fits(nlohmann::json::parse(writing_document({{true, true}, GlucoseUnit::mg_per_dl})),
                "practice-writing.schema.json");
    const Ran wrong = on({"writing", "--hours", "13"});
    EXPECT_EQ(wrong.exit, Exit::wrong_usage);
    EXPECT_NE(wrong.err.find("key 'hours': found another value, expected one of '24' '12'"),
              std::string::npos)
        << wrong.err;
    on({"writing", "--dates", "day-first", "--hours", "24", "--glucose", "mmol/L"});
    EXPECT_NE(on({"wear", "c1"}).out.find("2 March 00:00"), std::string::npos);
}

// Safety rule 11.
TEST_F(PracticeCommand, under_18_is_not_taken_on) {
    std::ofstream(place("young.json")) << R"({"born_year": 2015})";
    const Ran refused = on({"client", "add", "Bramble (invented)", "--facts", place("young.json"),
                            "--as-of", "2026-03-05T12:00Z"});
    EXPECT_NE(refused.exit, Exit::done);
    EXPECT_NE(refused.err.find("under 18 is not taken on"), std::string::npos);
    EXPECT_EQ(on({"client", "list"}).out.find("Bramble"), std::string::npos);
}

TEST_F(PracticeCommand, init_prints_a_recovery_key_that_opens_the_practice) {
    ASSERT_EQ(made.exit, Exit::done) << made.err;
    const std::string key = recovery_key_in(made.out);
    ASSERT_EQ(key.size(), 69U) << made.out;
    std::ofstream(place("key")) << key << "\n";
    const Ran listed =
        run({"client", "list", "--practice", place("p"), "--recovery-key-file", place("key")});
    EXPECT_EQ(listed.exit, Exit::done) << listed.err;
    EXPECT_NE(listed.out.find("Tansy (invented)"), std::string::npos);
    std::ofstream(place("wrong-key")) << "0" << key.substr(1) << "\n";
    const Ran wrong = run(
        {"client", "list", "--practice", place("p"), "--recovery-key-file", place("wrong-key")});
    EXPECT_EQ(wrong.exit, key[0] == '0' ? Exit::done : Exit::cannot_answer);
}

// The other tests ask for less, to be quick; whoever starts the program does not.
TEST_F(PracticeCommand, a_practice_is_made_with_a_passphrase_that_is_slow_to_try) {
    ASSERT_EQ(run({"init", "S", "--practice", place("slow"), "--passphrase-file", place("pass")},
                  Streams{std::cout, std::cerr, false, {}}.passphrase_work)
                  .exit,
              Exit::done);
    std::optional<PassphraseWork> work;
    const auto opened = SqlitePractice::open(
        place("slow"),
        [&](const LockedPracticeKey& locked) -> tl::expected<SecretKey, std::string> {
            work = locked.work();
            return tl::make_unexpected(std::string("not asked for"));
        });
    EXPECT_FALSE(opened);
    EXPECT_EQ(work, PassphraseWork::moderate);
}

TEST_F(PracticeCommand, a_wrong_passphrase_opens_nothing_and_a_short_one_makes_nothing) {
    std::ofstream(place("other")) << "another passphrase\n";
    const Ran wrong =
        run({"client", "list", "--practice", place("p"), "--passphrase-file", place("other")});
    EXPECT_EQ(wrong.exit, Exit::cannot_answer);
    EXPECT_TRUE(wrong.out.empty());
    EXPECT_NE(wrong.err.find("[wrong_key]"), std::string::npos) << wrong.err;
    std::ofstream(place("short")) << "short\n";
    const Ran refused =
        run({"init", "S", "--practice", place("q"), "--passphrase-file", place("short")});
    EXPECT_EQ(refused.exit, Exit::wrong_usage);
    EXPECT_FALSE(fs::exists(place("q")));
}

TEST_F(PracticeCommand, a_backup_is_restored_to_the_same_export) {
    const Ran backed_up = on({"backup", place("b")});
    ASSERT_EQ(backed_up.exit, Exit::done) << backed_up.err;
    const Ran restored =
        run({"restore", place("b"), "--practice", place("r"), "--passphrase-file", place("pass")});
    ASSERT_EQ(restored.exit, Exit::done) << restored.err;
    on({"client", "export", "c1", "--out", place("x1")});
    run({"client", "export", "c1", "--out", place("x2"), "--practice", place("r"),
         "--passphrase-file", place("pass")});
    for (const char* name : {"client.json", "readings.csv", "diary.csv"}) {
        std::ifstream a(place("x1") + "/" + name);
        std::ifstream b(place("x2") + "/" + name);
        std::ostringstream text_a, text_b;
        text_a << a.rdbuf();
        text_b << b.rdbuf();
        EXPECT_GT(text_a.str().size(), 50U) << name;
        EXPECT_EQ(text_a.str(), text_b.str()) << name;
    }
}

// What a recovery key was printed as, alone on its line.
std::string printed_key(const std::string& out) {
    const auto from = out.find("\n\n  ") + 4;
    return out.substr(from, out.find('\n', from) - from);
}

TEST_F(PracticeCommand, new_keys_open_the_practice_in_the_place_of_the_old_ones) {
    const std::string practice = place("keys");
    const auto at = [&](std::vector<std::string> args, const std::string& option,
                        const std::string& key) {
        std::ofstream(place("key")) << key << "\n";
        args.insert(args.end(), {"--practice", practice, option, place("key")});
        return run(args);
    };
    const auto by_passphrase = [&](std::vector<std::string> args, const std::string& passphrase) {
        return at(std::move(args), "--passphrase-file", passphrase);
    };
    const auto opens = [&](const std::string& recovery) {
        return at({"client", "list"}, "--recovery-key-file", recovery).exit == Exit::done;
    };
    const std::string first =
        printed_key(by_passphrase({"init", "Sorrel (invented)"}, "an invented passphrase").out);
    ASSERT_TRUE(opens(first));
    const Ran renewed = by_passphrase({"keys", "recovery"}, "an invented passphrase");
    ASSERT_EQ(renewed.exit, Exit::done) << renewed.err;
    EXPECT_FALSE(opens(first));
    EXPECT_TRUE(opens(printed_key(renewed.out)));

    std::ofstream(place("next")) << "quite another one\n";
    std::ofstream(place("short")) << "short\n";
    const auto change = [&](const std::string& file) {
        return by_passphrase({"keys", "passphrase", "--new-passphrase-file", place(file)},
                             "an invented passphrase");
    };
    EXPECT_EQ(change("short").exit, Exit::wrong_usage);
    ASSERT_EQ(change("next").exit, Exit::done);
    EXPECT_EQ(by_passphrase({"client", "list"}, "an invented passphrase").exit,
              Exit::cannot_answer);
    EXPECT_EQ(by_passphrase({"client", "list"}, "quite another one").exit, Exit::done);
    EXPECT_TRUE(opens(printed_key(renewed.out)));
}

TEST_F(PracticeCommand, is_made_at_the_time_told) {
    const std::vector<std::string> to{"--practice", place("told"), "--passphrase-file",
                                      place("pass")};
    const auto with = [&](std::vector<std::string> args) {
        args.insert(args.end(), to.begin(), to.end());
        return run(args).exit;
    };
    EXPECT_EQ(with({"init", "S", "--as-of", "yesterday"}), Exit::wrong_usage);
    EXPECT_FALSE(fs::exists(place("told")));
    ASSERT_EQ(with({"init", "S", "--as-of", "2026-03-01T09:00"}), Exit::done);
    const auto store = SqlitePractice::open(place("told"), [](const LockedPracticeKey& locked) {
        return locked.opened_by_passphrase("an invented passphrase");
    });
    ASSERT_TRUE(store);
    const auto deed = (*store)->last_deed("practice_made");
    ASSERT_TRUE(deed && *deed);
    EXPECT_EQ((*deed)->at, Instant{std::chrono::sys_days{std::chrono::March / 1 / 2026}} +
                               std::chrono::hours{9});
}

TEST_F(PracticeCommand, a_reader_takes_no_backup_and_makes_no_keys) {
    const auto ran = [&](std::vector<std::string> args) {
        args.insert(args.end(), {"--practice", place("read"), "--passphrase-file", place("pass")});
        return run(args).exit;
    };
    ASSERT_EQ(ran({"init", "Sorrel (invented)"}), Exit::done);
    ASSERT_EQ(ran({"coach", "add", "r1", "Teasel (invented)", "--role", "reader"}), Exit::done);
    EXPECT_EQ(ran({"client", "list", "--coach", "r1"}), Exit::done);
    EXPECT_EQ(ran({"backup", place("taken"), "--coach", "r1"}), Exit::cannot_answer);
    EXPECT_FALSE(fs::exists(place("taken")));
    EXPECT_EQ(ran({"keys", "recovery", "--coach", "r1"}), Exit::cannot_answer);
    EXPECT_EQ(ran({"backup", place("taken"), "--coach", "o1"}), Exit::done);
}

// Safety: no name, note or value in errors; no path with a name either (architecture rule 12).
TEST_F(PracticeCommand, errors_bear_nothing_of_a_client) {
    const std::vector<std::vector<std::string>> failing = {
        {"client", "add", "Tansy (invented)", "--handle", "tansy"},
        {"client", "add", "Tansy (invented)", "--handle", "c1"},
        {"client", "show", "nobody"},
        {"client", "erase", "c1", "--without-export"},
        {"undo", "c9"},
        {"promise", "c1", "--kept", "77"},
        {"acknowledge", "c1", "5", "--by", "Tansy", "--done", "Ragwort"},
        {"acknowledge", "c1", "5", "--by", "Tansy"},
        {"review", "c1", "--from", "2020-01-01", "--to", "2020-02-01", "--out", place("none")},
        {"coach", "change", "o1", "--left"},
    };
    for (const auto& args : failing) {
        const Ran result = on(args);
        EXPECT_NE(result.exit, Exit::done) << args[0];
        for (const char* personal : {"Tansy", "tansy", "Ragwort"}) {
            EXPECT_EQ(result.err.find(personal), std::string::npos) << result.err;
        }
    }
}

TEST_F(PracticeCommand, the_list_as_json_is_one_versioned_object) {
    const auto list = nlohmann::json::parse(on({"client", "list", "--json"}).out);
    expect_fits(list, "clients.schema.json");
    EXPECT_EQ(list.at("format"), "clients");
    EXPECT_EQ(list.at("version"), 1);
    ASSERT_EQ(list.at("clients").size(), 1U);
    EXPECT_EQ(list.at("clients")[0].at("handle"), "c1");
    EXPECT_EQ(list.at("clients")[0].at("last_reading"), "2026-03-03T16:35:00Z");
}

TEST_F(PracticeCommand, the_caseload_as_json_is_by_its_schema) {
    const auto list = nlohmann::json::parse(on({"caseload", "--json"}).out);
    expect_fits(list, "caseload.schema.json");
    ASSERT_EQ(list.at("clients").size(), 1U);
    EXPECT_EQ(list.at("clients")[0].at("handle"), "c1");
}

// One look for the list, with the coach and the time and without a client
// (docs/methods/caseload.md).
TEST_F(PracticeCommand, opening_the_caseload_is_one_line_of_the_audit) {
    const auto looks = [] {
        const auto practice = SqlitePractice::open(place("p"), [](const LockedPracticeKey& locked) {
            return locked.opened_by_passphrase("an invented passphrase");
        });
        std::size_t count = 0;
        const auto lines = (*practice)->audit(std::nullopt);
        for (const AuditLine& line : *lines) {
            count += line.deed == "caseload_seen" && !line.client ? 1U : 0U;
        }
        return count;
    };
    const std::size_t before = looks();
    ASSERT_EQ(on({"caseload"}).exit, Exit::done);
    EXPECT_EQ(looks(), before + 1);
}

TEST_F(PracticeCommand, a_message_that_is_not_there_is_bad_input_and_none_is_wrong_usage) {
    EXPECT_EQ(on({"jot", "c1", "--from", place("no-such-message")}).exit, Exit::bad_input);
    EXPECT_EQ(on({"jot", "c1"}).exit, Exit::wrong_usage);
}

// Safety rule 2, from what a client wrote to whom to tell.
TEST_F(PracticeCommand, a_meter_that_showed_lo_is_previewed_and_then_escalates) {
    const std::vector<std::string> jot = {"jot",        "c1",      "7:30 finger prick LO", "--day",
                                          "2026-03-03", "--as-of", "2026-03-04T12:00Z"};
    const Ran shown = on(jot);
    EXPECT_NE(shown.out.find("finger-prick: finger prick LO, LO, below what the meter can show"),
              std::string::npos)
        << shown.out;
    EXPECT_NE(shown.out.find("Nothing is stored"), std::string::npos);
    std::vector<std::string> keep = jot;
    keep.emplace_back("--keep");
    const Ran kept = on(keep);
    EXPECT_NE(kept.out.find("Same day"), std::string::npos) << kept.out;
    EXPECT_NE(kept.out.find("a finger-prick that showed LO"), std::string::npos) << kept.out;
    EXPECT_EQ(on({"undo", "c1"}).exit, Exit::done);
}

// It is said wherever something of the client goes out or comes in; nothing is refused, for safety
// may need it.
TEST_F(PracticeCommand, consent_withdrawn_is_told_to_the_coach_wherever_something_goes_out_or_in) {
    std::ofstream(place("withdrawn.json")) << R"({"consent": {"given_on": "2026-01-05",
        "withdrawn_on": "2026-03-03"}})";
    on({"client", "add", "Willow (invented)", "--handle", "w", "--facts", place("withdrawn.json"),
        "--zone", "Europe/Berlin"});
    constexpr const char* told = "Consent was withdrawn on Tue 3 March";
    const Ran stored = on({"bring-in", "w", TRACEWRIGHT_SOURCE_FOLDER "/data/invented-wear.csv"});
    EXPECT_NE(stored.err.find(told), std::string::npos) << stored.err;
    const Ran jotted = on({"jot", "w", "8:10 toast", "--keep"});
    EXPECT_NE(jotted.err.find(told), std::string::npos) << jotted.err;
    for (const char* paper : {"handout", "letter", "talk"}) {
        const Ran printed = on({paper, "w"});
        EXPECT_EQ(printed.exit, Exit::done) << printed.err;
        EXPECT_NE(printed.out.find(told), std::string::npos) << printed.out;
    }
    const Ran list = on({"caseload"});
    EXPECT_NE(list.out.find(told), std::string::npos) << list.out;
    EXPECT_EQ(on({"letter", "c1"}).out.find("Consent was"), std::string::npos);
}

// Safety rules 11 and 14: no trial for a client of whom pregnancy was not asked, and the gates told
// in the scope of the coach who opened the practice.
TEST_F(PracticeCommand, a_closed_gate_offers_no_trial_and_is_told_by_the_coachs_licence) {
    std::ofstream(place("pregnant.json")) << R"({"born_year": 1990, "cautions":
        {"pregnancy": "pregnant"}})";
    on({"client", "add", "Yarrow (invented)", "--handle", "y", "--facts", place("pregnant.json"),
        "--zone", "Europe/Berlin"});
    on({"bring-in", "y", TRACEWRIGHT_SOURCE_FOLDER "/data/invented-wear.csv"});
    const Ran asked = on({"ask", "y", "--about", "fasting", "--because", "sleep,dinner-time"});
    ASSERT_EQ(asked.exit, Exit::done) << asked.err;
    EXPECT_EQ(asked.out.find("by lot"), std::string::npos) << asked.out;
    EXPECT_EQ(asked.out.find("trial would"), std::string::npos) << asked.out;
    const auto trial = [](const std::string& client, const std::string& coach) {
        return on({"trial", client, "--question", "low-carb-breakfast", "--coach", coach}).out;
    };
    EXPECT_NE(trial("y", "o1").find("clinic leads"), std::string::npos);
    on({"coach", "add", "n1", "Larch (invented)", "--licence", "nurse"});
    const std::string by_nurse = trial("c1", "n1");
    const std::string by_none = trial("c1", "o1");
    EXPECT_NE(by_none.find("Ask the clinic."), std::string::npos) << by_none;
    EXPECT_NE(by_nurse, by_none);
    EXPECT_LT(by_nurse.find("Not offered now:"), by_nurse.size());
}

TEST_F(PracticeCommand, facts_that_do_not_read_name_the_key_and_change_nothing) {
    std::ofstream(place("facts.json")) << R"({"born_year": "soon"})";
    const Ran refused = on({"client", "change", "c1", "--facts", place("facts.json")});
    EXPECT_EQ(refused.exit, Exit::bad_input);
    EXPECT_NE(refused.err.find("'born_year'"), std::string::npos) << refused.err;
    std::ofstream(place("facts.json")) << R"({"born_year": 1961, "colour": "blue"})";
    const Ran unknown = on({"client", "change", "c1", "--facts", place("facts.json")});
    EXPECT_NE(unknown.err.find("'colour'"), std::string::npos) << unknown.err;
    EXPECT_NE(on({"client", "show", "c1"}).out.find("\"born_year\": null"), std::string::npos);
}

TEST_F(PracticeCommand, shares_as_json_are_by_their_schema_and_in_the_export) {
    const Ran given = on({"share", "c1", "--to", "Reed", "--for", "to help at night", "--kinds",
                          "lows, day-sheets", "--as-of", "2026-03-05T12:00Z"});
    ASSERT_EQ(given.exit, Exit::done) << given.err;
    EXPECT_NE(given.out.find("No consent is written down"), std::string::npos);
    EXPECT_NE(given.out.find("not answered: day sheets."), std::string::npos);
    const auto list =
        nlohmann::json::parse(on({"share", "c1", "--json", "--as-of", "2026-03-05T12:00Z"}).out);
    expect_fits(list, "shares.schema.json");
    EXPECT_EQ(list.at("format"), "shares");
    EXPECT_EQ(list.at("consent_holds"), false);
    ASSERT_EQ(list.at("shares").size(), 1U);
    EXPECT_EQ(list.at("shares")[0].at("state"), "open");
    EXPECT_EQ(list.at("shares")[0].at("kinds"), (nlohmann::json{"lows", "day sheets"}));
    on({"client", "export", "c1", "--out", place("shared")});
    std::ifstream file(place("shared") + "/client.json");
    const auto document = nlohmann::json::parse(file);
    expect_fits(document, "client.schema.json");
    EXPECT_EQ(document.at("shares")[0].at("recipient"), "Reed");
}

TEST_F(PracticeCommand, the_export_fits_its_schemas) {
    on({"promise", "c1", "a recipe", "--by", "2026-03-20"});
    ASSERT_EQ(on({"client", "export", "c1", "--out", place("fits")}).exit, Exit::done);
    std::ifstream file(place("fits") + "/client.json");
    const auto document = nlohmann::json::parse(file);
    expect_fits(document, "client.schema.json");
    expect_fits(document.at("facts"), "client-facts.schema.json");
    EXPECT_EQ(document.at("promises")[0].at("text"), "a recipe");
}

TEST_F(PracticeCommand, the_export_writes_each_photo_of_a_meal_beside_it) {
    ASSERT_EQ(on({"jot", "c1", "8:10 porridge", "--day", "2026-03-03", "--keep"}).exit, Exit::done);
    const std::string invented = "invented photo bytes";
    {
        const auto practice = SqlitePractice::open(place("p"), [](const LockedPracticeKey& locked) {
            return locked.opened_by_passphrase("an invented passphrase");
        });
        const auto meals = DiaryBook(**practice).entries(1, {Instant::min(), Instant::max()});
        ASSERT_FALSE(meals->empty());
        const Acting owner{1, Instant{}};
        ASSERT_TRUE(MealPhotoBook(**practice).add(1, meals->back().id, {invented}, owner));
    }
    const Ran exported = on({"client", "export", "c1", "--out", place("with photo")});
    ASSERT_EQ(exported.exit, Exit::done) << exported.err;
    std::ifstream file(place("with photo") + "/client.json");
    const auto document = nlohmann::json::parse(file);
    expect_fits(document, "client.schema.json");
    ASSERT_EQ(document.at("photos").size(), 1U);
    const auto photo =
        fs::path(place("with photo")) / document.at("photos")[0].at("file").get<std::string>();
    EXPECT_NE(exported.out.find(photo.string()), std::string::npos);
    std::ifstream kept(photo, std::ios::binary);
    EXPECT_EQ(std::string(std::istreambuf_iterator<char>(kept), {}), invented);
}
