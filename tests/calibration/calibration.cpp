// How often the questions' answers are wrong, on lives whose truth is known: prints the table of
// docs/calibration.md. Draws a cell by the first argument (2,000); progress on standard error where
// that is a terminal.
#include "client_life.hpp"

#include "findings/driver_fit.hpp"
#include "findings/meal_report.hpp"
#include "findings/question_findings.hpp"

#include <fmt/format.h>
#include <unistd.h>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <functional>
#include <iostream>

using namespace tracewright;

namespace {

constexpr double worth = 5.4;  // mg/dL

void progress(int done, int of) {
    if (::isatty(STDERR_FILENO) == 1 && (done % 20 == 0 || done == of)) {
        std::cerr << fmt::format("\r[{:<40}] {} of {}{}",
                                 std::string(static_cast<std::size_t>(40 * done / of), '#'), done,
                                 of, done == of ? "\n" : "");
    }
}

/// The linear model: hours slept (SD 1) and hour of dinner (SD 1.2), fasting in mg/dL.
struct Cell {
    int nights;
    double together;
    double day_to_day;
    double effect;  ///< of dinner three hours later
    double noise;
};

DriverRows linear(const Cell& cell, std::uint64_t seed) {
    boost::random::mt19937_64 engine(seed);
    boost::random::normal_distribution<double> normal;
    DriverRows rows;
    rows.drivers = 2;
    double u = cell.noise * normal(engine);
    const double own = std::sqrt(1 - cell.together * cell.together);
    const double fresh = std::sqrt(1 - cell.day_to_day * cell.day_to_day);
    for (int night = 0; night < cell.nights; ++night) {
        const double z = normal(engine);
        const double sleep = -(cell.together * z + own * normal(engine));
        u = cell.day_to_day * u + cell.noise * fresh * normal(engine);
        rows.x.insert(rows.x.end(), {7 + sleep, 19.5 + 1.2 * z});
        rows.y.push_back(130 + cell.effect / 3 * 1.2 * z + u);
        rows.wear.push_back(static_cast<std::size_t>(night / 14));
        rows.day.push_back(night);
    }
    return rows;
}

void print_linear(const Cell& cell, int draws) {
    int sleep = 0;
    int dinner = 0;
    int either = 0;
    int open = 0;
    int covered = 0;
    double bias = 0;
    for (int draw = 1; draw <= draws; ++draw) {
        const DriverFit fit = driver_fit(linear(cell, static_cast<std::uint64_t>(draw)),
                                         {{-2, false}, {3, false}}, worth);
        const bool a = fit.drivers[0].answer == Answer::yes;
        const bool b = fit.drivers[1].answer == Answer::yes;
        sleep += a ? 1 : 0;
        dinner += b ? 1 : 0;
        either += a || b ? 1 : 0;
        const DriverResult& result = fit.drivers[1];
        if (result.gate == DriverGate::open) {
            ++open;
            bias += result.effect - cell.effect;
            covered += result.interval95[0] <= cell.effect && cell.effect <= result.interval95[1];
        }
        progress(draw, draws);
    }
    const auto share = [](int part, int all) {
        return all > 0 ? fmt::format("{:.1f} %", 100.0 * part / all) : std::string("-");
    };
    std::cout << fmt::format("| {} | {} | {} | {} | {} | {} | {} | {} | {} | {:+.1f} |\n",
                             cell.nights, cell.day_to_day, cell.together, cell.effect, cell.noise,
                             share(sleep, draws), share(dinner, draws), share(either, draws),
                             share(covered, open), bias / std::max(1, open));
    std::cout.flush();
}

/// The demo's lives, the meal model behind them: a client's story with its effects on or off.
ReviewInput input_of(const ClientStory& story, std::uint64_t seed) {
    const ClientLife life = client_life(story, seed);
    ReviewInput input;
    input.zones = life.zones;
    for (const LivedWear& lived : life.wears) {
        Wear wear;
        wear.start = lived.worn.from;
        wear.interval = lived.plan.kind.interval;
        for (const SensorReading& reading : lived.readings) {
            wear.readings.emplace_back(
                reading.at, Glucose{rounded_hundredths(reading.mg_per_dl), GlucoseUnit::mg_per_dl},
                wear.interval);
        }
        std::stable_sort(wear.readings.begin(), wear.readings.end(),
                         [](const Reading& a, const Reading& b) { return a.at < b.at; });
        const auto last =
            std::unique(wear.readings.begin(), wear.readings.end(),
                        [](const Reading& a, const Reading& b) { return a.at == b.at; });
        wear.readings.erase(last, wear.readings.end());
        input.wears.push_back(std::move(wear));
        for (const DiaryLine& line : lived.diary) {
            DiaryEntry entry;
            entry.at = life.zones.resolve(line.at).first;
            entry.written = line.at;
            if (!line.eaten.empty()) {
                entry.kind = DiaryKind::meal;
                entry.text = line.eaten;
                input.diary.push_back(entry);
            }
            if (!line.slept.empty()) {
                std::string hours = line.slept;
                std::replace(hours.begin(), hours.end(), ',', '.');
                entry.kind = DiaryKind::sleep;
                entry.text.clear();
                entry.number = std::atof(hours.c_str());
                entry.number_unit = "h";
                entry.until = entry.at;
                entry.at -= std::chrono::seconds{std::lround(*entry.number * 3600)};
                entry.time_uncertain = true;
                input.diary.push_back(entry);
            }
        }
    }
    std::stable_sort(input.diary.begin(), input.diary.end(),
                     [](const DiaryEntry& a, const DiaryEntry& b) { return a.at < b.at; });
    input.as_of = life.zones.resolve(story_today).first;
    return input;
}

struct Lived {
    const char* key;
    bool planted;
};

void print_lived(const Lived& cell, int draws) {
    const auto stories = client_stories();
    ClientStory story = *std::find_if(stories.begin(), stories.end(),
                                      [&](const ClientStory& one) { return one.key == cell.key; });
    if (!cell.planted) {
        story.effects = PlantedEffects{};
    }
    int sleep = 0;
    int dinner_higher = 0;
    int dinner_lower = 0;
    double nights = 0;
    for (int draw = 1; draw <= draws; ++draw) {
        constexpr std::array causes = {Cause::sleep, Cause::dinner_time};
        const QuestionAnswers answers = answer_questions(
            input_of(story, static_cast<std::uint64_t>(1000 + draw)), Outcome::fasting, causes);
        nights += static_cast<double>(answers.rows) / draws;
        sleep += answers.findings[0].finding.answer == Answer::yes ? 1 : 0;
        if (answers.findings[1].finding.answer == Answer::yes) {
            (answers.findings[1].result.effect > 0 ? dinner_higher : dinner_lower) += 1;
        }
        progress(draw, draws);
    }
    std::cout << fmt::format("| {} | {} | {} | {:.0f} | {:.1f} % | {:.1f} % | {:.1f} % |\n",
                             cell.key, cell.planted ? "planted" : "taken out", draws, nights,
                             100.0 * sleep / draws, 100.0 * dinner_higher / draws,
                             100.0 * dinner_lower / draws);
    std::cout.flush();
}

}  // namespace

int main(int argc, char** argv) {
    const int draws = argc > 1 ? std::max(1, std::atoi(argv[1])) : 2000;
    const int lives = argc > 2 ? std::max(1, std::atoi(argv[2])) : draws;
    std::cout << fmt::format("Linear model, {} draws a cell\n\n", draws)
              << "| nights | day to day | together | effect | noise | sleep 'yes' | dinner 'yes' | "
                 "either | covered | bias |\n|---|---|---|---|---|---|---|---|---|---|\n";
    for (const int nights : {14, 28, 42}) {
        for (const double day_to_day : {0.0, 0.3, 0.6}) {
            print_linear({nights, 0, day_to_day, 0, 12}, draws);
        }
    }
    for (const Cell& cell : {Cell{28, 0, 0, 18, 9}, Cell{28, 0, 0, 18, 12}, Cell{28, 0, 0.3, 18, 9},
                             Cell{14, 0, 0, 18, 9}, Cell{42, 0, 0, 18, 9}, Cell{28, 0.8, 0, 18, 9},
                             Cell{28, 0.8, 0.3, 18, 9}, Cell{14, 0.8, 0, 18, 9}}) {
        print_linear(cell, draws);
    }
    std::cout << "\nMeal model, fasting asked for sleep and dinner together\n\n"
              << "| story | effects | lives | nights used | sleep 'yes' | dinner 'yes', higher | "
                 "dinner 'yes', lower |\n|---|---|---|---|---|---|---|\n";
    for (const Lived& cell : {Lived{"alder", false}, Lived{"alder", true}, Lived{"linden", false},
                              Lived{"linden", true}, Lived{"rowan", false}, Lived{"rowan", true},
                              Lived{"yarrow", true}}) {
        print_lived(cell, lives);
    }
    return 0;
}
