#pragma once

#include "findings/question_words.hpp"
#include "inference/conjugate_regression.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// One row of data/habit-effects.csv: what was found in other people. Never shown as the client's.
struct PublishedEffect {
    std::string habit;  ///< first-named against its comparator
    std::string outcome;
    double effect = 0;   ///< plus: more of the outcome
    std::string units;   ///< "direction_only": the sign of `effect` is all that was told
    std::string spread;  ///< as the table writes it: "ci:0.78;0.99", "se:168;derived_unpaired"
    std::string people;
    std::string design;
    std::string n;       ///< empty: not told
    std::string source;  ///< DOI or what stands for it
    std::string confirmed;

    /// From the interval, standard error or p value; empty where the table has none.
    std::optional<double> standard_error() const;
    /// "dinner at 21:00 vs 18:00: ..., +497 mmol/L*min, T2D, n 16 (10.1016/...)".
    std::string sentence() const;
};

/// All rows that ship with the program.
const std::vector<PublishedEffect>& published_effects();
/// The same of a table's text (RFC 4180). Rows of another shape are passed over.
std::vector<PublishedEffect> published_effects_in(std::string_view csv);

/// What others showed of a cause and an outcome.
struct OthersSay {
    std::vector<PublishedEffect> rows;
    /// For the change of the cause, in the unit of the outcome (mg/dL or hours), where a row can be
    /// told in it: centred at half the effect, as wide as the larger of the effect and two standard
    /// errors, for small laboratory trials in other people (a judgement of ours, no source).
    std::optional<NormalTelling> prior;
};
OthersSay others_say(Cause cause, Outcome outcome);

}  // namespace tracewright
