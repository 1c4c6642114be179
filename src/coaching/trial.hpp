#pragma once

#include "coaching/trial_templates.hpp"
#include "inference/block_randomisation.hpp"
#include "time/instant.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// Two like days next to each other, one of each arm, in the order the lot gave.
struct TrialBlock {
    std::array<CivilDate, 2> days;
    bool a_first = false;

    CivilDate day_of_a() const { return a_first ? days[0] : days[1]; }
    CivilDate day_of_b() const { return a_first ? days[1] : days[0]; }
};

/// A question put to one client as a randomised comparison, as written down before its first day.
/// Nothing in it changes afterwards.
struct Trial {
    std::string code;  ///< of its template
    std::string question;
    std::string a;
    std::string b;
    Outcome outcome{};
    Draw draw = Draw::fair_coins;
    std::uint64_t seed = 0;
    Instant drawn_at;
    double worth = 0;             ///< smallest difference worth acting on: mg/dL or hours
    double noise_sd = 0;          ///< of a pair's difference, from the client's own days
    std::optional<double> power;  ///< chance of seeing `worth` with so many pairs
    std::vector<TrialBlock> blocks;

    CivilDate first_day() const { return blocks.front().days[0]; }
    CivilDate last_day() const { return blocks.back().days[1]; }
    double smallest_p() const { return smallest_block_p(static_cast<int>(blocks.size()), draw); }
};

/// A trial that asks the template's question, not drawn yet.
Trial trial_of(const TrialTemplate& made_from);

/// Pairs of like days from a date on: weekday with weekday, Saturday with Sunday, `free_days`
/// between the two of a pair and after each, as near as the week allows. Arms not drawn yet.
std::vector<TrialBlock> blocks_from(CivilDate first, int blocks, int free_days);

/// Draws the order of each pair by lot from the seed.
void draw_arms(std::vector<TrialBlock>& blocks, Draw draw, std::uint64_t seed);

/// The order drawn, as block_randomisation takes it.
std::vector<bool> order_of(std::span<const TrialBlock> blocks);

}  // namespace tracewright
