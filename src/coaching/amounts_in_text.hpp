#pragma once

#include <string_view>

namespace tracewright {

/// Whether a free text tells an energy, a weight or an amount of food: "only 800 calories",
/// "weight 82.4 kg", "lost a kilo", "30 g carbs". What moves or sleeps in numbers ("walked 20 min")
/// tells none. English words and the usual units, ours, no source.
bool tells_amounts(std::string_view text);

}  // namespace tracewright
