// What the list of clients costs: 1,000 with a year each, read anew, and after one client's change.
#include "store/caseload_cache.hpp"
#include "store/client_of_list.hpp"
#include "store/trial_document.hpp"

#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <random>

namespace {

using namespace tracewright;
namespace fs = std::filesystem;

constexpr int clients = 1000;
constexpr std::int64_t first_second = 1'770'000'000;
constexpr std::int64_t one_day = 86'400;
const Instant now{std::chrono::seconds{first_second + 365 * one_day}};

SecretKey key() {
    std::array<std::uint8_t, SecretKey::bytes> bytes{};
    bytes.fill(5);
    return SecretKey::from(bytes);
}

std::unique_ptr<SqlitePractice> opened(const std::string& path) {
    // The passphrase's own cost is libsodium's and is left out.
    return std::move(*SqlitePractice::open(
        path,
        [](const LockedPracticeKey&) -> tl::expected<SecretKey, std::string> { return key(); }));
}

/// Twenty-six wears of 13.5 days, each five minutes, and three meals a day.
BroughtIn a_year() {
    std::mt19937 draw(11);
    BroughtIn file;
    int level = 130;
    for (std::int64_t at = 0; at < 365 * one_day; at += 300) {
        level = std::clamp(level + static_cast<int>(draw() % 7) - 3, 75, 250);
        if (at % (14 * one_day) < 13 * one_day + one_day / 2) {
            file.readings.emplace_back(Instant{std::chrono::seconds{first_second + at}},
                                       Glucose{level * 100, GlucoseUnit::mg_per_dl},
                                       std::chrono::minutes{5});
        }
    }
    for (int i = 0; i < 365 * 3; ++i) {
        DiaryEntry meal;
        meal.kind = DiaryKind::meal;
        meal.at = Instant{std::chrono::seconds{first_second + i * 8 * 3'600}};
        meal.text = "a plate of something invented";
        meal.source_line = i + 1;
        file.diary.push_back(meal);
    }
    file.rows_stored = file.readings.size() + file.diary.size();
    return file;
}

ClientFacts facts() {
    ClientFacts facts;
    facts.zones = {{"Europe/Berlin", {}}};
    const CivilDate day{std::chrono::floor<std::chrono::days>(now).time_since_epoch()};
    facts.medicines_asked_on = day - std::chrono::days{300};
    facts.medicines = {{"metformin 500", {}, {}},
                       {"gliclazide 30 mg", day - std::chrono::days{200}, {}}};
    for (int quarter = 0; quarter < 4; ++quarter) {
        facts.labs.push_back({day - std::chrono::days{20 + 90 * quarter}, "HbA1c", 7.1, "%"});
    }
    facts.agreed_change = AgreedChange{"a walk after dinner", day - std::chrono::days{10},
                                       day + std::chrono::days{4}};
    return facts;
}

std::string a_trial() {
    Trial trial;
    trial.code = "walk-after-dinner";
    trial.question = "Does a walk after dinner change the rise after dinner?";
    trial.a = "walk";
    trial.b = "no walk";
    trial.seed = 7;
    trial.blocks =
        blocks_from(CivilDate{std::chrono::floor<std::chrono::days>(now).time_since_epoch()}, 7, 0);
    draw_arms(trial.blocks, Draw::fair_coins, 7);
    return trial_document(trial, -1);
}

void fill(SqlitePractice& practice) {
    const BroughtIn year = a_year();
    const std::string trial = a_trial();
    const Acting acting{1, now - std::chrono::days{1}};
    for (int c = 1; c <= clients; ++c) {
        const auto client = *practice.add_client(
            fmt::format("c{}", c), fmt::format("Client {} (invented)", c), facts(), acting);
        if (!practice.bring_in(client, year, WhoseFile::not_asked, acting)) {
            throw std::runtime_error("not stored");
        }
        std::vector<EscalationRecord> events;
        for (int i = 0; i < 6; ++i) {
            events.push_back(
                {0,
                 fmt::format("very_low@{}", i),
                 {},
                 fmt::format(R"({{"rung":1,"at":{},"what":"very low","whom":"Ring."}})",
                             first_second + i * one_day),
                 {}});
        }
        practice.put_escalations(client, events, acting);
        const auto standing = practice.escalations(client);
        for (const EscalationRecord& one : *standing) {
            practice.acknowledge(client, one.id, "Sorrel (invented)", "rang the client", acting);
        }
        for (int look = 0; look < 26; ++look) {  // a review each fortnight
            practice.note_look(client, "review_made", {1, now - std::chrono::days{14 * look + 2}});
        }
        practice.add_promise(client, "the recipe list", CivilDate{}, acting);
        practice.keep_trial(client, trial, acting);
    }
}

const std::string& a_thousand() {
    static const std::string path = [] {
        const std::string made =
            (fs::temp_directory_path() / "tracewright-bench-caseload").string();
        for (const char* end : {"", "-wal", "-shm", ".erased"}) {
            std::error_code none;
            fs::remove(made + end, none);
        }
        const auto locked = LockedPracticeKey::locked(key(), "an invented passphrase", key(),
                                                      PassphraseWork::least);
        const auto practice =
            *SqlitePractice::create(made, key(), *locked, Coach{"o1", "O (invented)"}, Instant{});
        fill(*practice);
        return made;
    }();
    return path;
}

// As a program just started makes it.
void caseload_of_a_thousand_cold(benchmark::State& state) {
    a_thousand();
    for (auto _ : state) {
        const auto practice = opened(a_thousand());
        CaseloadCache cache(client_of_list);
        benchmark::DoNotOptimize(cache.lines(*practice, now)->size());
    }
}
BENCHMARK(caseload_of_a_thousand_cold)->Unit(benchmark::kMillisecond)->MinTime(3);

// A program that stays, half a minute later, after a promise to one client. The change is not
// timed.
void caseload_of_a_thousand_after_a_change(benchmark::State& state) {
    const auto practice = opened(a_thousand());
    CaseloadCache cache(client_of_list);
    Instant at = now;
    std::size_t read = cache.lines(*practice, at)->size();
    for (auto _ : state) {
        state.PauseTiming();
        at += std::chrono::seconds{30};
        practice->add_promise(500, "a recipe", CivilDate{}, {1, at});
        state.ResumeTiming();
        benchmark::DoNotOptimize(cache.lines(*practice, at)->size());
        read = cache.read_last();
    }
    state.counters["clients_read"] = static_cast<double>(read);
}
BENCHMARK(caseload_of_a_thousand_after_a_change)->Unit(benchmark::kMillisecond)->MinTime(3);

}  // namespace
