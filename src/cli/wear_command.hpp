#pragma once

#include "cli/practice_options.hpp"
#include "trace/wear_fixing.hpp"

#include <cstdint>
#include <optional>
#include <string>

namespace tracewright {

/// What was typed for `wear`. What was not typed stays as it is stored.
struct WearOptions {
    std::string client;                 ///< handle or whole name
    std::optional<std::size_t> number;  ///< as in "wear 3"; empty: list them
    std::optional<std::string> overpatch;
    std::optional<std::string> site;
    std::optional<std::string> end;
};

/// Tells how a stored sensor sat and why it ended, else lists the client's wears.
Exit wear_of(const PracticeOptions& options, const WearOptions& words, const Streams& streams);

/// ", with an overpatch, site: left arm"; empty where nothing was told.
std::string fixing_words(const WearFixing& fixing);

}  // namespace tracewright
