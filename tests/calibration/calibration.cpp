// How often the questions' answers are wrong, on lives whose truth is known: prints the table of
// docs/calibration.md. Draws a cell by the first argument (2,000); progress on standard error where
// that is a terminal.
#include "calibration/cells.hpp"
#include "calibration/lived_input.hpp"

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
        const QuestionAnswers answers =
            answer_questions(input_of(client_life(story, static_cast<std::uint64_t>(1000 + draw))),
                             Outcome::fasting, causes);
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
    if (argc > 1 && std::string(argv[1]) == "change") {  // that part alone
        print_change_cells(argc > 2 ? std::max(1, std::atoi(argv[2])) : 2000);
        return 0;
    }
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
    print_bias_cells(lives);
    print_standing_cells(draws);
    print_unwritten_cells(lives);
    print_change_cells(draws);
    return 0;
}
