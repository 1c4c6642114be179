#pragma once

#include <boost/random/mersenne_twister.hpp>

#include <cstdint>
#include <string_view>

namespace tracewright {

/// Chance that comes out the same on every machine: engine and distributions are Boost's. Each
/// purpose has its own stream, named by a text, so that a draw more in one moves no other.
class Draws {
  public:
    Draws(std::uint64_t seed, std::string_view purpose);

    double normal(double mean = 0, double deviation = 1);
    double uniform(double from, double to);  ///< [from, to)
    int whole(int from, int to);             ///< both ends among them
    bool chance(double probability);

  private:
    boost::random::mt19937_64 engine_;
};

}  // namespace tracewright
