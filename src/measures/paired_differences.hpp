#pragma once

#include "time/zone_history.hpp"
#include "trace/trace_view.hpp"

#include <chrono>
#include <cstddef>
#include <span>
#include <vector>

namespace tracewright {

/// Finds partners for readings in ascending order.
class EarlierReading {
  public:
    explicit EarlierReading(std::span<const Reading> readings) : readings_(readings) {}

    /// Of the readings before the i-th the one nearest to `target`, the later of two as near, if
    /// that lies within half the i-th's interval of it and both are plausible; else nullptr. Quick
    /// where i and target grow from call to call.
    const Reading* to(std::size_t i, Instant target) {
        if (readings_[i].implausible()) {
            return nullptr;
        }
        while (j_ > 0 && readings_[j_].at > target) {
            --j_;
        }
        while (j_ + 1 < i && std::chrono::abs(readings_[j_ + 1].at - target) <=
                                 std::chrono::abs(readings_[j_].at - target)) {
            ++j_;
        }
        const bool near =
            2 * std::chrono::abs(readings_[j_].at - target) <= readings_[i].interval();
        return j_ < i && near && !readings_[j_].implausible() ? &readings_[j_] : nullptr;
    }

  private:
    std::span<const Reading> readings_;
    std::size_t j_ = 0;
};

/// A reading against an earlier one.
struct PairedDifference {
    Instant at;            ///< of the later reading
    double mg_per_dl = 0;  ///< later minus earlier
};

/// Pairs `apart` of elapsed time apart, within half an interval; the nearest earlier reading. For
/// CONGA: McDonnell et al. 2005, 10.1089/dia.2005.7.253.
std::vector<PairedDifference> differences_after(const TraceView& view, std::chrono::seconds apart);

/// Pairs at the same time of the client's clock on the civil day before, within half an interval;
/// never across an absent day. For MODD: Molnar et al. 1972, Diabetologia
/// 8:342, 10.1007/BF01218495.
std::vector<PairedDifference> differences_to_day_before(const TraceView& view,
                                                        const ZoneHistory& zones);

}  // namespace tracewright
