#include "coaching/trial_plan.hpp"

#include "findings/question_rows.hpp"
#include "findings/question_sentences.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

constexpr int fewest_pairs = 6;
constexpr int fewest_balanced = 8;
constexpr int most_pairs = 60;
constexpr std::size_t fewest_differences = 5;
constexpr int days_apart_at_most = 2;

std::string p_words(double p) {
    return p < 0.0001 ? "under 0.0001" : fmt::format("{:.4f}", p);
}

// What stands against the number of pairs itself.
std::string refusal(const TrialWish& wish) {
    if (!wish.pairs) {
        return {};
    }
    const int pairs = *wish.pairs;
    if (wish.draw == Draw::balanced && (pairs % 2 != 0 || pairs < fewest_balanced)) {
        return fmt::format(
            "A balanced draw needs an even number of at least {} pairs; {} were "
            "asked for.",
            fewest_balanced, pairs);
    }
    if (pairs < 1 || pairs > most_pairs) {
        return fmt::format("Found {} pairs, expected {} to {}.", pairs, fewest_pairs, most_pairs);
    }
    if (const double p = smallest_block_p(pairs, wish.draw); p > 0.05) {
        return fmt::format(
            "{} pairs are too few for a 5 % test: even if all went one way, p could "
            "not go below {}. {} pairs are the fewest ({}).",
            pairs, p_words(p), fewest_pairs,
            p_words(smallest_block_p(fewest_pairs, Draw::fair_coins)));
    }
    return {};
}

std::optional<int> fewest_by_closed_form(double effect, double sd) {
    for (int pairs = fewest_pairs; pairs <= most_pairs; ++pairs) {
        if (paired_t_power(pairs, effect, sd) >= 0.8) {
            return pairs;
        }
    }
    return std::nullopt;
}

class Planner {
  public:
    Planner(const TrialWish& wish, const ReviewInput& input, const CareInput& care)
        : wish_(wish), input_(input), care_(care), made_from_(*wish.made_from) {}

    TrialPlan plan() {
        plan_.gates = gates_before_trial(made_from_, care_);
        plan_.refused_because = refusal(wish_);
        const OutcomeFacts& facts = facts_of(made_from_.outcome);
        worth_ = wish_.worth.value_or(2 * facts.worth_acting_on);
        const auto noise = own_pair_noise(input_, made_from_.outcome, &plan_.own_values);
        if (noise.size() >= fewest_differences) {
            plan_.length = trial_length(noise, worth_, wish_.seed, 0.8, most_pairs);
        }
        if (plan_.length.noise_sd > 0) {
            const auto bounds = spread_bounds(plan_.length.noise_sd, plan_.own_values - 1, 0.8);
            plan_.pairs_range = {fewest_by_closed_form(worth_, bounds[0]),
                                 fewest_by_closed_form(worth_, bounds[1])};
        }
        if (!plan_.gates.empty()) {
            return std::move(plan_);
        }
        if (plan_.refused_because.empty()) {
            pairs_ = wish_.pairs ? wish_.pairs : plan_.length.blocks;
            if (pairs_ && wish_.draw == Draw::balanced) {
                *pairs_ = std::max(fewest_balanced, *pairs_ + *pairs_ % 2);
            }
            say();
            make();
        }
        return std::move(plan_);
    }

  private:
    const TrialWish& wish_;
    const ReviewInput& input_;
    const CareInput& care_;
    const TrialTemplate& made_from_;
    TrialPlan plan_;
    double worth_ = 0;
    std::optional<int> pairs_;

    std::string size(double value) const {
        return size_words(value, made_from_.outcome, input_.unit);
    }

    void say_noise() {
        const std::string own = rows_called(made_from_.outcome, plan_.own_values);
        if (!(plan_.length.noise_sd > 0)) {
            plan_.sentences.push_back(fmt::format(
                "{} {} of this client can be read; at least 6 on neighbouring days are needed to "
                "say how many pairs would do.",
                plan_.own_values, own));
            return;
        }
        plan_.sentences.push_back(fmt::format(
            "Two like days next to each other differ by {} (standard deviation, from {} of this "
            "client's {}).",
            size(plan_.length.noise_sd), plan_.own_values, own));
        std::string needed =
            plan_.length.blocks
                ? fmt::format("{} pairs would show a difference of {} in at least 80 % of trials",
                              *plan_.length.blocks, size(worth_))
                : fmt::format("Not even {} pairs would show a difference of {} in 80 % of trials",
                              most_pairs, size(worth_));
        const auto& range = plan_.pairs_range;
        if (plan_.length.blocks && range[0]) {
            needed +=
                fmt::format(" (between {} and {}, as the noise itself is not known better)",
                            std::min(*range[0], *plan_.length.blocks),
                            range[1] ? std::to_string(std::max(*range[1], *plan_.length.blocks))
                                     : fmt::format("over {}", most_pairs));
        }
        const bool simulated = plan_.length.rows.back().simulated;
        plan_.sentences.push_back(
            needed + (simulated ? "; worked out by running the exact test on simulated trials."
                                : fmt::format("; beyond {} pairs by the paired t test's formula, "
                                              "which the exact test stays near.",
                                              most_blocks_simulated)));
    }

    double power_of(int pairs) const {
        const auto noise = own_pair_noise(input_, made_from_.outcome);
        return pairs <= most_blocks_simulated
                   ? sign_flip_power(noise, worth_, pairs,
                                     wish_.seed + static_cast<std::uint64_t>(pairs))
                   : paired_t_power(pairs, worth_, plan_.length.noise_sd);
    }

    void say() {
        say_noise();
        if (pairs_) {
            std::string said = fmt::format("With {} pairs the smallest p that can come out is {}.",
                                           *pairs_, p_words(smallest_block_p(*pairs_, wish_.draw)));
            if (wish_.pairs && plan_.length.noise_sd > 0) {
                said += fmt::format(" They show a difference of {} in {:.0f} % of trials.",
                                    size(worth_), 100 * power_of(*pairs_));
            }
            plan_.sentences.push_back(std::move(said));
        }
        plan_.sentences.emplace_back(made_from_.carries_over);
        plan_.sentences.emplace_back(made_from_.keep_alike);
        plan_.sentences.emplace_back(
            "The order is drawn by lot before the first day and kept. Nothing is read before the "
            "last day, or the lot is worth nothing.");
        plan_.sentences.emplace_back(
            "Stop at once, and say so, if you feel unwell or glucose is low; a trial that was "
            "stopped is told as stopped.");
    }

    void make() {
        if (!pairs_) {
            return;
        }
        Trial trial = trial_of(made_from_);
        trial.draw = wish_.draw;
        trial.seed = wish_.seed;
        trial.drawn_at = care_.as_of;
        trial.worth = worth_;
        trial.noise_sd = plan_.length.noise_sd;
        if (plan_.length.noise_sd > 0) {
            trial.power = power_of(*pairs_);
        }
        const CivilDate tomorrow = care_.clock.date_at(care_.as_of) + std::chrono::days{1};
        trial.blocks = blocks_from(std::max(tomorrow, wish_.first_day.value_or(tomorrow)), *pairs_,
                                   made_from_.free_days);
        draw_arms(trial.blocks, trial.draw, trial.seed);
        plan_.trial = std::move(trial);
    }
};

}  // namespace

std::vector<double> own_pair_noise(const ReviewInput& input, Outcome outcome, int* values) {
    const CountedTrace trace = counted_trace(input.wears, input.prefer_wear);
    std::vector<double> noise;
    const QuestionRow* before = nullptr;
    const auto rows = question_rows(input, trace, outcome, {});
    int count = 0;
    for (const QuestionRow& row : rows) {
        if (!row.outcome || row.ill) {
            continue;
        }
        ++count;
        if (before != nullptr && before->wear == row.wear &&
            (row.date - before->date).count() <= days_apart_at_most) {
            noise.push_back(*row.outcome - *before->outcome);
        }
        before = &row;
    }
    if (values != nullptr) {
        *values = count;
    }
    return noise;
}

std::vector<Gate> gates_before_trial(const TrialTemplate& made_from, const CareInput& care) {
    return gates_before_offer(made_from.proposed, std::string(made_from.a) + "; " + made_from.b,
                              care);
}

TrialPlan plan_trial(const TrialWish& wish, const ReviewInput& input, const CareInput& care) {
    return Planner(wish, input, care).plan();
}

}  // namespace tracewright
