#pragma once

#include <tl/expected.hpp>

#include <cstdint>
#include <string>

namespace tracewright {

/// Wears for benchmarks: many, quickly, and alike enough to real ones in size and spelling. A
/// wandering level with three bumps a day, not the meal model.
struct CorpusPlan {
    int files = 1000;
    int days = 14;
    int interval_minutes = 5;
    std::uint64_t seed = 1;
};

/// The bytes of one wear: "time,glucose mg/dL", ISO local times, whole mg/dL from 40 to 400. The
/// same plan and number give the same bytes.
std::string corpus_wear(const CorpusPlan& plan, int number);

/// Writes `plan.files` wears as 0000.csv, 0001.csv, ... into `folder`, made if need be. The number
/// of files; else a sentence that says what failed.
tl::expected<int, std::string> write_corpus(const CorpusPlan& plan, const std::string& folder);

}  // namespace tracewright
