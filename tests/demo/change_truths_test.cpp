// The planted truths of demo/README.md that show over time: a trial, wears compared, labs, and who
// needs the coach first. Asked of the files a coach would receive. Everybody in here is invented.
#include "clients/story_clock.hpp"
#include "coaching/before_after.hpp"
#include "coaching/caseload.hpp"
#include "coaching/client_clock.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/lab_report.hpp"
#include "coaching/trial_reading.hpp"
#include "demo/story_input.hpp"
#include "practice_folder.hpp"
#include "set_up_papers.hpp"
#include "store/client_document.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <map>

using namespace tracewright;
using namespace tracewright::testing;
using ::testing::HasSubstr;

namespace {

constexpr std::uint64_t seeds[] = {1, 2, 3, 4, 5};

const std::map<std::string, std::string>& papers() {
    static const std::map<std::string, std::string> all = [] {
        std::map<std::string, std::string> made;
        for (auto& [name, bytes] : set_up_papers(practice_manifest(practice_clients(1), 1))) {
            made.emplace(name, bytes);
        }
        return made;
    }();
    return all;
}

ClientFacts facts_of(const std::string& key) {
    auto facts = client_facts_read(papers().at(key + ".json"));
    EXPECT_TRUE(facts) << facts.error();
    return *facts;
}

CivilDate in_2026_on(unsigned month, unsigned day) {
    return std::chrono::floor<std::chrono::days>(in_2026(month, day, 0));
}

/// The trial as the programme draws it from what the record states.
Trial hazels_trial() {
    const auto record = nlohmann::json::parse(papers().at("hazel-trial.json"));
    const TrialTemplate& made_from = *trial_template_called(record["code"].get<std::string>());
    Trial trial = trial_of(made_from);
    trial.seed = record["seed"].get<std::uint64_t>();
    trial.worth = record["worth"].get<double>();
    trial.blocks = blocks_from(in_2026_on(3, 21), 7, made_from.free_days);
    draw_arms(trial.blocks, trial.draw, trial.seed);
    return trial;
}

BeforeAfter aspens(const ClientStory& of, std::uint64_t seed, const MedicineTimeline& medicines) {
    // Wear 3 lies beside wear 2 and takes no part.
    return before_after(input_of(of, seed), {0}, {1}, medicines);
}

MedicineTimeline aspens_medicines() {
    const ClientFacts facts = facts_of("aspen");
    return client_medicines(facts, client_clock(facts));
}

bool has(const Finding& finding, CaveatKind kind) {
    return std::ranges::any_of(finding.caveats,
                               [&](const Caveat& caveat) { return caveat.kind == kind; });
}

}  // namespace

TEST(ChangeTruths, hazels_evenings_are_those_of_the_lot) {
    const Trial trial = hazels_trial();
    const auto record = nlohmann::json::parse(papers().at("hazel-trial.json"));
    ASSERT_EQ(record["pairs"].size(), trial.blocks.size());
    for (const PlannedWalk& planned : story("hazel").planned_walks) {
        const CivilDate day = first_story_day + std::chrono::days{planned.day};
        const auto block = std::ranges::find_if(trial.blocks, [&](const TrialBlock& one) {
            return one.days[0] == day || one.days[1] == day;
        });
        ASSERT_NE(block, trial.blocks.end());
        EXPECT_EQ(planned.walks, block->day_of_a() == day) << planned.day;
    }
    for (std::size_t i = 0; i < trial.blocks.size(); ++i) {
        EXPECT_EQ(record["pairs"][i]["a_first"].get<bool>(), trial.blocks[i].a_first) << i;
    }
}

// What the walk did is known: the same evenings lived with it and without. Seven pairs seldom show
// an effect of this size against her dinners' spread; the reading must not claim otherwise.
TEST(ChangeTruths, hazels_trial_of_the_walk_is_read_right) {
    const Trial trial = hazels_trial();
    ClientStory seated = story("hazel");
    for (PlannedWalk& planned : seated.planned_walks) {
        planned.walks = false;
    }
    int covered = 0;
    for (const std::uint64_t seed : seeds) {
        const TrialReading reading = read_trial(trial, input_of(story("hazel"), seed));
        const TrialReading without = read_trial(trial, input_of(seated, seed));
        ASSERT_TRUE(reading.ended);
        EXPECT_GE(reading.as_allotted.pairs, 6) << seed;
        EXPECT_LE(reading.broken, 1) << seed;  // a dinner written late can hide a walk
        double truth = 0;
        int evenings = 0;
        for (std::size_t i = 0; i < reading.days.size(); ++i) {
            if (reading.days[i].allotted_a && reading.days[i].value && without.days[i].value) {
                truth += *reading.days[i].value - *without.days[i].value;
                ++evenings;
            }
        }
        ASSERT_GE(evenings, 6) << seed;
        truth /= evenings;
        EXPECT_LT(truth, 0) << seed;
        ASSERT_TRUE(reading.as_allotted.interval95) << seed;
        const auto [low, high] = *reading.as_allotted.interval95;
        covered += low <= truth && truth <= high ? 1 : 0;
        if (reading.finding.answer == Answer::yes) {
            EXPECT_LT(reading.as_allotted.estimate, 0) << seed;
        }
        EXPECT_NE(reading.finding.answer, Answer::no_difference_worth_acting_on) << seed;
    }
    EXPECT_GE(covered, 4);
}

TEST(ChangeTruths, without_the_planted_effect_hazels_trial_seldom_shows_a_difference) {
    const Trial trial = hazels_trial();
    ClientStory without = story("hazel");
    without.effects = PlantedEffects{};
    int found = 0;
    for (const std::uint64_t seed : seeds) {
        const TrialReading reading = read_trial(trial, input_of(without, seed));
        found += reading.finding.answer == Answer::yes ? 1 : 0;
    }
    EXPECT_LE(found, 1);
}

// Aspen with an unchanged body: what differs between the wears is the sensors' alone.
TEST(ChangeTruths, another_kind_of_sensor_is_not_sold_as_progress) {
    ClientStory unchanged = story("aspen");
    unchanged.levels.clear();
    for (const std::uint64_t seed : seeds) {
        const BeforeAfter found = aspens(unchanged, seed, MedicineTimeline({}, {}));
        EXPECT_NE(found.finding.answer, Answer::yes) << seed << " " << found.finding.sentence;
        EXPECT_TRUE(has(found.finding, CaveatKind::other_kind_of_sensor)) << seed;
        EXPECT_LT(found.interval95[0], found.interval95_of_days[0]) << seed;
        EXPECT_GT(found.interval95[1], found.interval95_of_days[1]) << seed;
    }
}

TEST(ChangeTruths, the_medicine_change_takes_the_credit_from_habits) {
    const MedicineTimeline medicines = aspens_medicines();
    for (const std::uint64_t seed : seeds) {
        const Finding finding = aspens(story("aspen"), seed, medicines).finding;
        EXPECT_TRUE(has(finding, CaveatKind::medicine_changed)) << seed;
        EXPECT_TRUE(has(finding, CaveatKind::other_kind_of_sensor)) << seed;
        for (const Caveat& caveat : finding.caveats) {
            if (caveat.kind == CaveatKind::medicine_changed) {
                EXPECT_THAT(caveat.sentence, HasSubstr("can't take the credit"));
            }
        }
        for (const char* word : {"walk", "habit helped", "worked"}) {
            EXPECT_EQ(finding.sentence.find(word), std::string::npos) << finding.sentence;
        }
    }
}

// Riddle et al. 2021, 10.2337/dci21-0034; three months taken as 90 days (ours).
TEST(ChangeTruths, elders_dates_are_right_to_the_day) {
    const ClientFacts facts = facts_of("elder");
    ReviewInput input = input_of(story("elder"), 1);
    const LabReport report = lab_report({input, facts, {}, {}});
    EXPECT_EQ(report.remission.state, RemissionState::meets);
    EXPECT_EQ(report.remission.earliest, in_2026_on(4, 15));
    EXPECT_EQ(report.remission.counted_on, in_2026_on(4, 16));
    ClientFacts before = facts;
    before.labs.pop_back();
    input.as_of = client_clock(facts).day_of(in_2026_on(4, 14)).from + std::chrono::hours{9};
    const LabReport early = lab_report({input, before, {}, {}});
    EXPECT_EQ(early.remission.state, RemissionState::not_yet);
    EXPECT_EQ(early.remission.earliest, in_2026_on(4, 15));
    std::vector<std::string> labs;
    for (const LineRow& row : report.line) {
        if (row.kind == "lab") {
            labs.push_back(row.words);
            EXPECT_TRUE(row.on == in_2026_on(1, 12) || row.on == in_2026_on(3, 2) ||
                        row.on == in_2026_on(4, 16));
        }
    }
    EXPECT_EQ(labs.size(), 3U);
}

TEST(ChangeTruths, maples_night_lows_head_the_caseload) {
    std::vector<CaseloadClient> clients;
    Instant as_of;
    for (const ClientStory& of : client_stories()) {
        ReviewInput input = input_of(of, 1);
        as_of = input.as_of;
        CaseloadClient client;
        client.handle = of.key;
        client.name = of.name;
        client.facts = facts_of(of.key);
        const ZoneHistory clock = client_clock(client.facts);
        const MedicineTimeline medicines = client_medicines(client.facts, clock);
        for (const Escalation& one : escalations({input.wears,
                                                  input.diary,
                                                  medicines,
                                                  clock,
                                                  client.facts.unit,
                                                  {},
                                                  client.facts.labs})) {
            client.escalations.push_back({one, as_of, {}});
        }
        for (const Wear& wear : input.wears) {
            if (!wear.empty()) {
                client.last_reading =
                    std::max(client.last_reading.value_or(Instant{}), wear.readings.back().at);
            }
        }
        client.wears = std::move(input.wears);
        client.diary = std::move(input.diary);
        clients.push_back(std::move(client));
    }
    const auto lines = caseload(clients, as_of);
    ASSERT_EQ(lines.size(), 12U);
    EXPECT_EQ(lines[0].handle, "maple") << lines[0].first().why;
    EXPECT_EQ(lines[0].first().kind, NeedKind::unsafe);
    EXPECT_THAT(lines[0].first().why, HasSubstr("Sat 18 April"));
}
