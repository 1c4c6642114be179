#pragma once

#include "diary/client_foods.hpp"
#include "diary/doubt.hpp"
#include "diary/food_table.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// Where foods are looked for. The client's own may be null; the tables outlive the call.
struct KnownFoods {
    const ClientFoods* client = nullptr;
    std::span<const FoodFacts> table = shipped_foods();
};

/// A food's name as words.
struct FoodName {
    std::vector<std::string> words;
    std::size_t first_part = 0;  ///< words before the first comma
};
/// The names of a table, in its order. Those of the shipped table are made once.
class FoodNames {
  public:
    explicit FoodNames(std::span<const FoodFacts> table);
    FoodNames(const FoodNames&) = delete;
    FoodNames& operator=(const FoodNames&) = delete;
    const FoodName& operator[](std::size_t i) const { return names_[i]; }

  private:
    std::vector<FoodName> own_;
    std::span<const FoodName> names_;
};

/// By what a food was found.
enum class FoundBy : std::uint8_t { correction, recipe, usual_food, everyday_word, table };
const char* name_of(FoundBy by);
/// A correction, recipe or usual food: the household portion is this client's own.
bool is_clients_own(FoundBy by);

/// A food that the words may mean.
struct FoodCandidate {
    FoodFacts food;
    FoundBy by = FoundBy::table;
    /// 1: these very words. Below `sure_food` it is to be told what was taken, below `least_food`
    /// nothing is taken. Ours, no source; tests/diary/eaten_text_test.cpp says how often the first
    /// is right.
    double confidence = 0;
    std::vector<Doubt> doubts;
};
inline constexpr double sure_food = 0.8;
inline constexpr double least_food = 0.5;

/// The foods that a name of words may mean, best first, five at most; none for no words. The
/// client's own come first where they fit: corrections by their very words, recipes and usual foods
/// by name or a part of it. Then everyday words ("bread": the usual one), then the table by its
/// words. A misspelt word is taken with a doubt. The last word of the name, ways of cooking aside,
/// must be met: "chicken soup" is not chicken.
std::vector<FoodCandidate> food_candidates(std::span<const std::string> name,
                                           const KnownFoods& known);

}  // namespace tracewright
