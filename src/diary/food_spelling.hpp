#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// Words of a food's name in small letters: letters and digits stay together, all else parts them.
std::vector<std::string> food_name_words(std::string_view name);

/// The same word, or one the plural of the other: "potatoes" and "potato", "berries" and "berry".
bool same_food_word(std::string_view a, std::string_view b);

/// Letters put in, left out, changed, or exchanged with their neighbour, to make one of the other;
/// `most` + 1 where it is more than that. Source: Damerau 1964, 10.1145/363958.363994, neighbours
/// exchanged once at most.
std::size_t letters_apart(std::string_view a, std::string_view b, std::size_t most);

/// Whether `typed` may be `word`, or what it is the plural of, misspelt: the same first letter, and
/// one letter apart where the shorter has five to seven, up to two where it has more. Ours, no
/// source.
bool may_be_misspelt(std::string_view typed, std::string_view word);

}  // namespace tracewright
