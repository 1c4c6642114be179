// The same life with an effect and without it differs by the effect alone: what was eaten, slept,
// walked and written stays. Its size per night is read from the blood, not from the sensor.
#include "calibration/cells.hpp"
#include "calibration/lived_input.hpp"
#include "demo/life_measures.hpp"

#include "findings/question_findings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iostream>

namespace tracewright {

namespace {

struct BiasCell {
    const char* key;
    Cause cause;
};

struct Truth {
    double planted = 0;  // by the effect alone
    double whole = 0;    // with what the model itself does, as after a late dinner
};

double slope(const std::vector<double>& x, const std::vector<double>& y) {
    const auto n = static_cast<double>(x.size());
    double mean_x = 0;
    double mean_y = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        mean_x += x[i] / n;
        mean_y += y[i] / n;
    }
    double xy = 0;
    double xx = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        xy += (x[i] - mean_x) * (y[i] - mean_y);
        xx += (x[i] - mean_x) * (x[i] - mean_x);
    }
    return xy / xx;
}

// Slopes of what really was in the blood on the cause as it really was, for the change told.
Truth truth_of(const ClientLife& with, const ClientLife& without, Cause cause) {
    std::vector<double> x;
    std::vector<double> alone;
    std::vector<double> whole;
    for (std::size_t w = 0; w < with.wears.size(); ++w) {
        for (std::size_t d = 1; d < with.days.size(); ++d) {
            const auto a = testing::fasting_true(with, with.wears[w], with.days[d]);
            const auto b = testing::fasting_true(without, without.wears[w], without.days[d]);
            if (a && b) {
                x.push_back(cause == Cause::sleep ? with.days[d].slept_hours
                                                  : with.days[d - 1].dinner_hour);
                alone.push_back(*a - *b);
                whole.push_back(*a);
            }
        }
    }
    const double change = facts_of(cause).change_size;
    return {slope(x, alone) * change, slope(x, whole) * change};
}

}  // namespace

void print_bias_cells(int lives) {
    std::cout << "\nSize of the effect on fasting, meal model, mg/dL for the change told\n\n"
              << "| story | cause | lives | planted alone | in the blood | told | told less in the "
                 "blood | 95 % of "
                 "lives | covered |\n|---|---|---|---|---|---|---|---|---|\n";
    for (const BiasCell& cell :
         {BiasCell{"alder", Cause::dinner_time}, BiasCell{"linden", Cause::sleep},
          BiasCell{"rowan", Cause::dinner_time}}) {
        const auto stories = client_stories();
        const ClientStory story =
            *std::find_if(stories.begin(), stories.end(),
                          [&](const ClientStory& one) { return one.key == cell.key; });
        ClientStory plain = story;
        plain.effects = PlantedEffects{};
        double planted = 0;
        double whole = 0;
        double told = 0;
        int covered = 0;
        std::vector<double> off;
        for (int draw = 1; draw <= lives; ++draw) {
            const auto seed = static_cast<std::uint64_t>(5000 + draw);
            const ClientLife life = client_life(story, seed);
            const Truth truth = truth_of(life, client_life(plain, seed), cell.cause);
            constexpr std::array causes = {Cause::sleep, Cause::dinner_time};
            const QuestionAnswers answers =
                answer_questions(input_of(life), Outcome::fasting, causes);
            const DriverResult& result =
                answers.findings[cell.cause == Cause::sleep ? 0 : 1].result;
            progress(draw, lives);
            if (result.gate != DriverGate::open) {
                continue;
            }
            planted += truth.planted;
            whole += truth.whole;
            told += result.effect;
            off.push_back(result.effect - truth.whole);
            covered +=
                result.interval95[0] <= truth.whole && truth.whole <= result.interval95[1] ? 1 : 0;
        }
        std::sort(off.begin(), off.end());
        const auto n = static_cast<double>(std::max<std::size_t>(1, off.size()));
        const auto at = [&](double p) {
            return off.empty() ? 0 : off[static_cast<std::size_t>(p * (n - 1))];
        };
        std::cout << fmt::format(
            "| {} | {} | {} | {:.1f} | {:.1f} | {:.1f} | {:+.1f} | {:+.1f} to {:+.1f} | {:.1f} % "
            "|\n",
            cell.key, facts_of(cell.cause).code, off.size(), planted / n, whole / n, told / n,
            (told - whole) / n, at(0.025), at(0.975), 100.0 * covered / n);
        std::cout.flush();
    }
}

}  // namespace tracewright
