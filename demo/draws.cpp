#include "draws.hpp"

#include <boost/random/normal_distribution.hpp>
#include <boost/random/uniform_int_distribution.hpp>
#include <boost/random/uniform_real_distribution.hpp>

namespace tracewright {

namespace {

// The 64-bit FNV-1a hash (offset and prime from memory); the seed enters by the offset.
std::uint64_t mixed(std::uint64_t seed, std::string_view purpose) {
    std::uint64_t hash = 14695981039346656037ULL ^ (seed * 0x9E3779B97F4A7C15ULL);
    for (const char c : purpose) {
        hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211ULL;
    }
    return hash;
}

}  // namespace

Draws::Draws(std::uint64_t seed, std::string_view purpose) : engine_(mixed(seed, purpose)) {}

double Draws::normal(double mean, double deviation) {
    // A fresh distribution each time: none keeps a half-used pair from the draw before.
    return boost::random::normal_distribution<double>(mean, deviation)(engine_);
}

double Draws::uniform(double from, double to) {
    return boost::random::uniform_real_distribution<double>(from, to)(engine_);
}

int Draws::whole(int from, int to) {
    return boost::random::uniform_int_distribution<int>(from, to)(engine_);
}

bool Draws::chance(double probability) {
    return uniform(0, 1) < probability;
}

}  // namespace tracewright
