#pragma once

#include "measures/risk_index.hpp"
#include "trace/reading.hpp"

#include <cstddef>
#include <vector>

namespace tracewright {

/// What the indices make of one level: computed once per level, not once per reading.
struct LevelTerms {
    Risk risk;
    double m_value = 0;
    double grade = 0;
};

/// Whole mg/dL and tenths of mmol/L come from a table built at first use; anything else is
/// computed.
LevelTerms level_terms(Glucose level);

/// The terms of one unit's whole levels (mg/dL to 600, tenths of mmol/L to 33.3), for loops over
/// many readings.
class LevelTable {
  public:
    static const LevelTable& of(GlucoseUnit unit);

    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    static constexpr std::size_t most_places = 601;  ///< size() of either unit is no more

    /// Where a level stands, from 1 on; `none` for one between two whole ones or beyond the end.
    std::size_t place(std::int32_t hundredths) const {
        // Each step is a constant to the compiler: a division by it is a multiplication.
        const auto h = static_cast<std::uint32_t>(hundredths);
        const std::uint32_t at = step_ == 100 ? h / 100 : h / 10;
        const bool whole = at * static_cast<std::uint32_t>(step_) == h;
        return whole && at > 0 && at < terms_.size() ? at : none;
    }
    std::size_t size() const { return terms_.size(); }
    const LevelTerms& at(std::size_t place) const { return terms_[place]; }
    Glucose level(std::size_t place) const {
        return {static_cast<std::int32_t>(place) * step_, unit_};
    }

  private:
    LevelTable(GlucoseUnit unit, std::int32_t step, std::int32_t end);

    GlucoseUnit unit_;
    std::int32_t step_;
    std::vector<LevelTerms> terms_;
};

}  // namespace tracewright
