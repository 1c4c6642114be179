#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// A word or a number of a text about food, in small letters.
struct EatenWord {
    std::string text;              ///< of a number too: as written
    std::optional<double> number;  ///< "2", "1,5", "1/2", "one and a half"; "2-3" as 2.5
    double half_width = 0;         ///< of "2-3": 0.5
    std::size_t from = 0;          ///< where it stands in the text, in bytes
    std::size_t to = 0;
};

/// Words and numbers in order. '?' is a word of its own; ',' stands for all that ends a clause
/// (commas, semicolons, line ends, full stops); '+' and '&' are "and", '/' between words is "or",
/// "w/" is "with", "w/o" is "without". Brackets part words and vanish.
std::vector<EatenWord> eaten_words(std::string_view text);

/// The words about one food.
struct EatenPiece {
    std::string written;           ///< as written
    std::vector<EatenWord> words;  ///< without joining words
    bool negated = false;          ///< "no rice": not eaten
    bool perhaps_negated = false;  ///< "no rice and beans": are the beans meant too?
    bool alternative = false;      ///< "rice or potatoes": the second
    bool questioned = false;       ///< "rice?", "maybe rice"
};

/// Parts a text into foods at "and", "with", "on", commas and the like; "no", "without" and
/// "instead of" deny what follows up to the next of these, "or" and "nor" carry the denial on. A
/// phrase of `whole` is one word of a piece whatever stands in it ("macaroni and cheese"). Empty
/// pieces are left out; any bytes are taken.
std::vector<EatenPiece> eaten_pieces(std::string_view text,
                                     std::span<const std::vector<std::string>> whole = {});

}  // namespace tracewright
