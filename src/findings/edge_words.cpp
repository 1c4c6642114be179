#include "findings/edge_words.hpp"

#include <map>

namespace tracewright {

std::string edge_words(int mg_per_dl, GlucoseUnit unit) {
    static const std::map<int, const char*> in_mmol_per_l = {
        {54, "3.0"},   {63, "3.5"},   {70, "3.9"},   {140, "7.8"},
        {180, "10.0"}, {240, "13.3"}, {250, "13.9"}, {300, "16.7"}};
    const char* mmol = in_mmol_per_l.at(mg_per_dl);
    return (unit == GlucoseUnit::mg_per_dl ? std::to_string(mg_per_dl) : std::string(mmol)) + " " +
           name_of(unit);
}

}  // namespace tracewright
