#include "measures/level_terms.hpp"

#include "measures/simple_indices.hpp"

namespace tracewright {

namespace {

LevelTerms computed(Glucose level) {
    return {risk_of(risk_scale_mg_per_dl(level)), m_value_term(level.in(GlucoseUnit::mg_per_dl)),
            grade_score(level.in(GlucoseUnit::mmol_per_l))};
}

}  // namespace

LevelTable::LevelTable(GlucoseUnit unit, std::int32_t step, std::int32_t end)
    : unit_(unit), step_(step), terms_(1) {  // level 0 is no level
    for (std::int32_t hundredths = step; hundredths <= end; hundredths += step) {
        terms_.push_back(computed({hundredths, unit}));
    }
}

const LevelTable& LevelTable::of(GlucoseUnit unit) {
    static const LevelTable mg(GlucoseUnit::mg_per_dl, 100, 60000);
    static const LevelTable mmol(GlucoseUnit::mmol_per_l, 10, 3330);
    return unit == GlucoseUnit::mg_per_dl ? mg : mmol;
}

LevelTerms level_terms(Glucose level) {
    const LevelTable& table = LevelTable::of(level.unit);
    const std::size_t place = table.place(level.hundredths);
    return place == LevelTable::none ? computed(level) : table.at(place);
}

}  // namespace tracewright
