#pragma once

#include "inference/sign_flip.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace tracewright {

/// How the order within each block of two was drawn.
enum class Draw : std::uint8_t {
    fair_coins,  ///< a coin for each block: 2^blocks orders were possible
    balanced     ///< as many blocks A first as B first: C(blocks, blocks / 2) orders
};

/// The exact test over the set actually drawn from, and its interval by inversion.
struct BlockRandomisation {
    SignFlip test;
    /// Differences not refuted at 0.05; empty where no p of so many blocks could go that low.
    std::optional<std::array<double, 2>> interval95;
};

/// `differences`: A less B of each block; `a_first`: the order drawn, as long. Fair coins as in
/// sign_flip; of a balanced draw all orders with as many blocks A first as were drawn (so that a
/// block that was lost leaves the rest exact, given its own order), up to 20 blocks, else 99,999
/// seeded draws. std::invalid_argument where the lengths differ.
BlockRandomisation block_randomisation(std::span<const double> differences,
                                       const std::vector<bool>& a_first, Draw draw,
                                       std::uint64_t seed = 1);

/// The smallest two-sided p that so many blocks can give: 2 over the orders possible.
double smallest_block_p(int blocks, Draw draw);

/// An order drawn: true where A comes first in a block. A balanced draw needs an even number
/// (std::invalid_argument). Same seed, same order.
std::vector<bool> drawn_order(int blocks, Draw draw, std::uint64_t seed);

}  // namespace tracewright
