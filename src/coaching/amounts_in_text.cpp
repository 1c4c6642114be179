#include "coaching/amounts_in_text.hpp"

#include "coaching/numbers_in_text.hpp"
#include "coaching/phrases.hpp"

#include <string>

namespace tracewright {

namespace {

// With or without a number: "hundreds of calories", "lost a kilo".
constexpr std::string_view amounts =
    "kcal*|calorie*|kilocalorie*|kj|kilojoule*|kg|kgs|kilo|kilos|kilogram*|lb|lbs|bmi|a pound|"
    "half a stone|a stone";
constexpr std::string_view beside_a_number =
    "weight|weigh*|scale|scales|gram*|g|gr|carb*|stone|stones|st|pound*|oz|ounce*|cal|cals|ml|"
    "waist|fat|protein|energy|portion*|diet|ate|eaten|eating|intake";

}  // namespace

bool tells_amounts(std::string_view text) {
    const std::string words = for_phrases(text);
    return says_any(words, amounts) || (numbers_in(text) > 0 && says_any(words, beside_a_number));
}

}  // namespace tracewright
