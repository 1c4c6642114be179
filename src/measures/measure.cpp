#include "measures/measure.hpp"

#include <algorithm>

namespace tracewright {

const Measure* find(const Measures& measures, std::string_view name) {
    const auto found = std::find_if(measures.begin(), measures.end(),
                                    [&](const Measure& m) { return m.name == name; });
    return found == measures.end() ? nullptr : &*found;
}

}  // namespace tracewright
