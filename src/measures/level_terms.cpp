#include "measures/level_terms.hpp"

#include "measures/simple_indices.hpp"

#include <cstddef>
#include <vector>

namespace tracewright {

namespace {

constexpr std::int32_t mg_step = 100;
constexpr std::int32_t mmol_step = 10;
constexpr std::int32_t mg_end = 60000;
constexpr std::int32_t mmol_end = 3330;

LevelTerms computed(Glucose level) {
    return {risk_of(risk_scale_mg_per_dl(level)), m_value_term(level.in(GlucoseUnit::mg_per_dl)),
            grade_score(level.in(GlucoseUnit::mmol_per_l))};
}

std::vector<LevelTerms> table_of(GlucoseUnit unit, std::int32_t step, std::int32_t end) {
    std::vector<LevelTerms> table(1);  // level 0 is no level
    for (std::int32_t hundredths = step; hundredths <= end; hundredths += step) {
        table.push_back(computed({hundredths, unit}));
    }
    return table;
}

}  // namespace

LevelTerms level_terms(Glucose level) {
    static const std::vector<LevelTerms> mg = table_of(GlucoseUnit::mg_per_dl, mg_step, mg_end);
    static const std::vector<LevelTerms> mmol =
        table_of(GlucoseUnit::mmol_per_l, mmol_step, mmol_end);
    const bool in_mg = level.unit == GlucoseUnit::mg_per_dl;
    const std::int32_t step = in_mg ? mg_step : mmol_step;
    const std::int32_t end = in_mg ? mg_end : mmol_end;
    if (level.hundredths > 0 && level.hundredths <= end && level.hundredths % step == 0) {
        return (in_mg ? mg : mmol)[static_cast<std::size_t>(level.hundredths / step)];
    }
    return computed(level);
}

}  // namespace tracewright
