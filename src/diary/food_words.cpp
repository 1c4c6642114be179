#include "diary/food_words.hpp"

#include "diary/food_spelling.hpp"
#include "diary/foods_text.hpp"
#include "diary/table_cells.hpp"

namespace tracewright {

namespace {

std::vector<FoodWord> words_read() {
    std::vector<FoodWord> words;
    bool titles = true;
    for (const auto& cells : table_cells(food_words_csv())) {
        if (!titles && cells.size() == 3) {
            words.push_back({cells[0], cells[1], cells[2] == "usual", food_name_words(cells[0])});
        }
        titles = false;
    }
    return words;
}

}  // namespace

std::span<const FoodWord> food_words() {
    static const std::vector<FoodWord> words = words_read();
    return words;
}

}  // namespace tracewright
