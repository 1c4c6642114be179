#include "store/client_document.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tracewright {
namespace {

using testing::HasSubstr;

TEST(ClientDocument, brings_back_a_prescribers_answer) {
    ClientFacts facts;
    const CivilDate on{std::chrono::days{20'500}};
    facts.prescriber_answers = {
        {AskedAbout::fasting, true, "Dr Larch", on, {}},
        {AskedAbout::diabetes_type, false, "Dr Larch", on, on + std::chrono::days{30}}};
    const std::string written = client_document(facts, -1);
    const auto read = client_facts_read(written);
    ASSERT_TRUE(read) << read.error();
    ASSERT_EQ(read->prescriber_answers.size(), 2U);
    EXPECT_EQ(read->prescriber_answers[0].about, AskedAbout::fasting);
    EXPECT_TRUE(read->prescriber_answers[0].agreed);
    EXPECT_EQ(read->prescriber_answers[1].by, "Dr Larch");
    EXPECT_EQ(read->prescriber_answers[1].valid_until, on + std::chrono::days{30});
    EXPECT_EQ(client_document(*read, -1), written);
}

TEST(ClientDocument, an_answer_needs_who_when_and_about_what) {
    for (const char* patch :
         {R"({"prescriber_answers": [{"about": "fasting", "agreed": true, "on": "2026-02-16"}]})",
          R"({"prescriber_answers": [{"about": "fasting", "agreed": true, "by": "Dr Larch"}]})",
          R"({"prescriber_answers": [{"agreed": true, "by": "Dr Larch", "on": "2026-02-16"}]})"}) {
        const auto changed = client_facts_changed({}, patch);
        ASSERT_FALSE(changed) << patch;
        EXPECT_THAT(changed.error(), HasSubstr("who answered"));
    }
}

TEST(ClientDocument, of_an_earlier_program_has_no_answers) {
    const auto read = client_facts_read(R"({"told_type": "type 2"})");
    ASSERT_TRUE(read);
    EXPECT_TRUE(read->prescriber_answers.empty());
}

TEST(ClientDocument, a_change_of_an_earlier_program_goes_on_with_nothing_more_told) {
    const auto read = client_facts_read(
        R"({"agreed_change": {"words": "a walk", "agreed_on": "2026-03-01", "check_on": null}})");
    ASSERT_TRUE(read) << read.error();
    ASSERT_TRUE(read->agreed_change);
    EXPECT_EQ(read->agreed_change->words, "a walk");
    EXPECT_TRUE(read->agreed_change->when.empty());
    EXPECT_FALSE(read->agreed_change->check_days);
    EXPECT_EQ(read->agreed_change->outcome, ChangeOutcome::open);
    EXPECT_TRUE(read->earlier_changes.empty());
}

TEST(ClientDocument, a_change_is_agreed_or_earlier_never_both) {
    for (const char* patch : {
             R"({"agreed_change": {"words": "a walk", "outcome": "kept"}})",
             R"({"agreed_change": {"words": "a walk", "ended_on": "2026-03-15"}})",
             R"({"earlier_changes": [{"words": "a walk", "outcome": "kept"}]})",
             R"({"earlier_changes": [{"words": "a walk", "ended_on": "2026-03-15"}]})",
         }) {
        const auto changed = client_facts_changed({}, patch);
        ASSERT_FALSE(changed) << patch;
        EXPECT_THAT(changed.error(), HasSubstr("outcome")) << patch;
    }
}

constexpr const char* full = R"json({
  "why_they_came": "To sleep", "born_year": 1953, "told_type": "type 2",
  "diagnosed_on": "2009-05-01", "language": "de", "unit": "mg/dL",
  "zones": [{"zone": "Europe/Berlin", "from": null},
            {"zone": "America/New_York", "from": "2026-02-10T12:00"}],
  "contacts": [{"kind": "prescriber", "name": "Dr Burdock (invented)", "telephone": "1"}],
  "medicines_asked_on": "2026-02-28",
  "medicines": [{"written": "gliclazide 80 mg", "from": "2016-06-01", "until": null}],
  "labs": [{"on": "2026-02-25", "what": "HbA1c", "value": 6.6, "unit": "%"}],
  "cautions": {"pregnancy": "unsure", "kidney_disease": "yes", "frail": "no",
               "eating_screen": {"asked_on": "2026-02-28", "by": "Fern", "positive": "yes"},
               "last_eye_check": "2025-11-02", "others": "drives"},
  "goals": {"kind": "older", "agreed_with": "daughter", "agreed_on": "2026-02-28"},
  "consent": {"given_on": "2026-02-28", "what_is_kept": "my record", "who_sees": "coach",
              "until": "2027-02-28", "withdrawn_on": null},
  "sessions": {"bought": 6, "used": 3}, "sensors": {"bought": 3, "used": 2},
  "agreed_change": {"words": "a walk", "agreed_on": "2026-03-01", "check_on": "2026-03-15",
                    "when": "right after dinner", "where": "round the park",
                    "how_often": "five days a week", "if_not": "the stairs, twice",
                    "how_checked": "hours in range of the next wear", "check_days": 12,
                    "stop_when": "unwell, or glucose low", "kind": "walking",
                    "candidate": "walk-after-dinner", "eating": "as much", "moves": "yes",
                    "medicine": "no"},
  "earlier_changes": [{"words": "smaller plates", "agreed_on": "2026-01-10", "outcome": "dropped",
                       "ended_on": "2026-02-20"}]
})json";

// Bounds of a client's own goals: own rule, no source; the consensus: Battelino et al. 2019,
// 10.2337/dci19-0028.
TEST(ClientDocument, own_goals_have_bounds_and_a_consensus_has_its_own_numbers) {
    const auto with = [](const ClientFacts& facts, const char* patch) {
        return client_facts_changed(facts, patch);
    };
    const auto own = with({}, R"({"goals": {"kind": "own", "in_range_above": 60,
        "below_range_below": 3, "very_low_below": null}})");
    ASSERT_TRUE(own) << own.error();
    EXPECT_EQ(own->goals.kind, GoalKind::own);
    EXPECT_EQ(own->goals.in_range_above, 60);
    EXPECT_EQ(own->goals.below_range_below, 3);
    EXPECT_FALSE(own->goals.very_low_below);
    for (const char* wrong :
         {R"({"goals": {"in_range_above": 100}})", R"({"goals": {"in_range_above": 0}})",
          R"({"goals": {"below_range_below": 4.5}})", R"({"goals": {"very_low_below": 2}})",
          R"({"goals": {"above_range_below": 20, "very_high_below": 21}})"}) {
        EXPECT_FALSE(with(*own, wrong)) << wrong;
    }
    EXPECT_EQ(with(*own, R"({"goals": {"below_range_below": 5}})").error(),
              "key 'goals.below_range_below': found another value, expected a percentage over 0 "
              "and up to 4");
    // What was agreed before holds no longer once a consensus is taken.
    const auto older = with(*own, R"({"goals": {"kind": "older"}})");
    ASSERT_TRUE(older);
    EXPECT_EQ(older->goals.in_range_above, 50);
    EXPECT_EQ(older->goals.below_range_below, 1);
    EXPECT_FALSE(older->goals.very_low_below);
    const auto pregnant = with(*own, R"({"goals": {"kind": "pregnancy"}})");
    ASSERT_TRUE(pregnant);
    EXPECT_FALSE(pregnant->goals.in_range_above);
}

TEST(ClientDocument, what_is_read_is_written_and_read_again) {
    const auto facts = client_facts_read(full);
    ASSERT_TRUE(facts) << facts.error();
    EXPECT_EQ(facts->cautions.pregnancy, Pregnancy::unsure);
    EXPECT_EQ(facts->cautions.kidney_disease, Answered::yes);
    EXPECT_EQ(facts->cautions.liver_disease, Answered::not_yet);
    EXPECT_EQ(facts->goals.in_range_above, 50);
    EXPECT_EQ(facts->agreed_change->if_not, "the stairs, twice");
    EXPECT_EQ(facts->agreed_change->check_days, 12);
    EXPECT_EQ(facts->agreed_change->kind, Proposed::walking);
    EXPECT_EQ(facts->agreed_change->candidate, "walk-after-dinner");
    EXPECT_EQ(facts->agreed_change->does.eating, EatingChange::as_much);
    EXPECT_EQ(facts->agreed_change->does.moves, Answered::yes);
    EXPECT_EQ(facts->agreed_change->does.medicine, Answered::no);
    EXPECT_EQ(facts->earlier_changes.at(0).does.eating, EatingChange::not_answered);
    ASSERT_EQ(facts->earlier_changes.size(), 1U);
    EXPECT_EQ(facts->earlier_changes[0].outcome, ChangeOutcome::dropped);
    EXPECT_EQ(facts->zones[1].from,
              WallTime{std::chrono::sys_days{std::chrono::year{2026} / 2 / 10}.time_since_epoch()} +
                  std::chrono::hours{12});
    const std::string written = client_document(*facts);
    const auto again = client_facts_read(written);
    ASSERT_TRUE(again) << again.error();
    EXPECT_EQ(client_document(*again), written);
}

TEST(ClientDocument, an_empty_one_is_a_new_client) {
    const auto facts = client_facts_read("{}");
    ASSERT_TRUE(facts);
    EXPECT_EQ(client_document(*facts), client_document(ClientFacts{}));
}

struct Row {
    const char* document;
    const char* key;
};
TEST(ClientDocument, what_does_not_read_is_named) {
    for (const Row& row :
         {Row{R"({"born_year": "x"})", "born_year"}, Row{R"({"unit": "stone"})", "unit"},
          Row{R"({"diagnosed_on": "01.02.2020"})", "diagnosed_on"},
          Row{R"({"medicines": {}})", "medicines"},
          Row{R"({"medicines": [{"written": 5}]})", "medicines[1].written"},
          Row{R"({"zones": [{"zone": "Atlantis", "from": null}]})", "zones[1].zone"},
          Row{R"({"zones": [{"zone": "UTC", "from": null}, {"zone": "UTC", "from": null}]})",
              "zones[2].from"},
          Row{R"({"cautions": {"pregnancy": "maybe"}})", "cautions.pregnancy"},
          Row{R"({"cautions": {"colour": "blue"}})", "cautions.colour"},
          Row{R"({"favourite": 1})", "favourite"}}) {
        const auto facts = client_facts_read(row.document);
        ASSERT_FALSE(facts) << row.document;
        EXPECT_NE(facts.error().find(std::string("'") + row.key + "'"), std::string::npos)
            << facts.error();
    }
    EXPECT_FALSE(client_facts_read("[]"));
    EXPECT_FALSE(client_facts_read("{"));
}

// Own bounds, no source: beyond them is a slip of the keys.
TEST(ClientDocument, what_is_told_is_held_to_bounds) {
    for (const Row& row :
         {Row{R"({"born_year": 4294969256})", "born_year"},
          Row{R"({"born_year": 1899})", "born_year"}, Row{R"({"born_year": 1e30})", "born_year"},
          Row{R"({"sessions": {"bought": -5}})", "sessions.bought"},
          Row{R"({"diagnosed_on": "2026-2-3"})", "diagnosed_on"},
          Row{R"({"diagnosed_on": "-2026-01-01"})", "diagnosed_on"},
          Row{R"({"diagnosed_on": "1899-12-31"})", "diagnosed_on"},
          Row{R"({"zones": [{"zone": "Europe/Berlin", "from": null},
                            {"zone": "America/New_York", "from": "0001-01-01T00:00"}]})",
              "zones[2].from"},
          Row{R"({"medicines": [{"written": "gliclazide", "from": "2026-03-02",
                                 "until": "2026-03-01"}]})",
              "medicines[1].until"}}) {
        const auto changed = client_facts_changed({}, row.document);
        ASSERT_FALSE(changed) << row.document;
        EXPECT_THAT(changed.error(), HasSubstr(std::string("'") + row.key + "'"));
    }
    EXPECT_TRUE(client_facts_changed({}, R"({"medicines": [{"written": "gliclazide",
        "from": "2026-03-02", "until": "2026-03-02"}]})"));
}

// London's noon is read on New York's clock, so it is later than Berlin's two o'clock on London's.
TEST(ClientDocument, a_change_of_zone_that_the_clock_would_pass_over_is_refused) {
    const auto changed = client_facts_changed({}, R"({"zones": [
        {"zone": "America/New_York", "from": null},
        {"zone": "Europe/London", "from": "2026-03-20T12:00"},
        {"zone": "Europe/Berlin", "from": "2026-03-20T14:00"}]})");
    ASSERT_FALSE(changed);
    EXPECT_THAT(changed.error(), HasSubstr("'zones[3].from'"));
    EXPECT_TRUE(client_facts_changed({}, R"({"zones": [
        {"zone": "America/New_York", "from": null},
        {"zone": "Europe/London", "from": "2026-03-20T12:00"},
        {"zone": "Europe/Berlin", "from": "2026-03-20T17:00"}]})"));
}

TEST(ClientDocument, a_laboratory_result_has_its_day_name_value_and_unit) {
    const auto told = [](const char* lab) {
        return client_facts_changed({}, R"({"labs": [)" + std::string(lab) + "]}");
    };
    for (const char* lab : {R"({"what": "HbA1c", "value": 6.6, "unit": "%"})",
                            R"({"on": "", "what": "HbA1c", "value": 6.6, "unit": "%"})",
                            R"({"on": "2026-02-25", "what": "", "value": 6.6, "unit": "%"})",
                            R"({"on": "2026-02-25", "what": "HbA1c", "unit": "%"})",
                            R"({"on": "2026-02-25", "what": "HbA1c", "value": 6.6, "unit": ""})",
                            R"({"on": "2026-02-25", "what": "HbA1c", "value": 44, "unit": "%"})",
                            R"({"on": "2026-02-25", "what": "HbA1c", "value": 6.6,
                                "unit": "mmol/mol"})",
                            R"({"on": "2026-02-25", "what": "LDL", "value": -1, "unit": "g"})"}) {
        EXPECT_FALSE(told(lab)) << lab;
    }
    EXPECT_TRUE(told(R"({"on": "2026-02-25", "what": "LDL", "value": 2.1, "unit": "mmol/L"})"));
    EXPECT_TRUE(
        told(R"x({"on": "2026-02-25", "what": "HbA1c (lab)", "value": 44, "unit": "mmol/mol"})x"));
}

// What an earlier program kept stays readable, and is in the way of no other change.
TEST(ClientDocument, what_was_stored_before_the_bounds_is_read_and_changed) {
    const auto stored = client_facts_read(R"({"sessions": {"bought": -5, "used": 0},
        "labs": [{"what": "HbA1c", "value": 6.6}],
        "zones": [{"zone": "Europe/Berlin", "from": null},
                  {"zone": "America/New_York", "from": "0001-01-01T00:00"}]})");
    ASSERT_TRUE(stored) << stored.error();
    EXPECT_TRUE(client_facts_changed(*stored, R"({"language": "de"})"));
    EXPECT_FALSE(client_facts_changed(*stored, R"({"sessions": {"used": 1}})"));
}

// RFC 7396 (Hoffman & Snell 2014), section 3: null removes, lists are replaced whole.
TEST(ClientDocument, a_merge_patch_changes_what_it_names_and_forgets_what_is_null) {
    const auto facts = client_facts_read(full);
    const auto changed =
        client_facts_changed(*facts, R"({"born_year": null, "sessions": {"used": 4}, "labs": []})");
    ASSERT_TRUE(changed) << changed.error();
    EXPECT_FALSE(changed->born_year);
    EXPECT_EQ(changed->sessions.used, 4);
    EXPECT_EQ(changed->sessions.bought, 6);
    EXPECT_TRUE(changed->labs.empty());
    EXPECT_EQ(changed->why_they_came, "To sleep");
}

}  // namespace
}  // namespace tracewright
