#pragma once

#include "coaching/client_facts.hpp"
#include "coaching/illustration.hpp"
#include "coaching/paper.hpp"
#include "findings/review_input.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// What a page explains with the client's own trace.
enum class Explains : std::uint8_t { food, lab_and_sensor, one_meal, night, walking, stress };

struct ExplainsFacts {
    Explains explains;
    const char* code;   ///< on the command line and in files
    const char* title;  ///< of the page
    const char* rule;   ///< by which its stretch is chosen
};
std::span<const ExplainsFacts> all_explaining_pages();
const ExplainsFacts& facts_of(Explains explains);
/// By code; empty if there is none of this name.
std::optional<Explains> explaining_page_called(std::string_view code);

/// A page, or why there is none: a page is never drawn from invented data.
struct ExplainingPage {
    Explains explains{};
    std::string not_made_because;  ///< for the coach; empty if it was made
    Paper paper;
    Illustration illustration;         ///< the paper's figure 0
    std::string chosen;                ///< for the coach: which stretch and by what rule
    std::vector<std::string> to_know;  ///< for the coach, before handing it over
};

struct ExplainQuestion {
    const ReviewInput& input;
    const ClientFacts& facts;
};

/// Client text, at most reading grade 6, for the client's own talk with the coach. With an eating
/// screen that is positive or open no glucose level, food or A1c stands on it (safety rule 12); in
/// pregnancy no comparison with others and no goal, and the clinic leads (rule 11); the walking
/// page is not made while a gate for walking is closed (rule 9). Method: docs/methods/sheets.md.
ExplainingPage explaining_page(Explains explains, const ExplainQuestion& question);

}  // namespace tracewright
