#include "store/meeting.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

// The same level, one perhaps told in the other unit and rounded as the trade rounds.
bool same_level(const Reading& a, const Reading& b) {
    if (a.unit() == b.unit()) {
        return a.hundredths() == b.hundredths();
    }
    const Reading& mg = a.unit() == GlucoseUnit::mg_per_dl ? a : b;
    const Reading& mmol = a.unit() == GlucoseUnit::mg_per_dl ? b : a;
    const double told_in_mmol = mg.value().in(GlucoseUnit::mmol_per_l);
    return std::abs(told_in_mmol - mmol.value().value()) <= 0.05 + 1e-9 ||
           std::abs(mmol.value().in(GlucoseUnit::mg_per_dl)-mg.value().value()) <= 0.5 + 1e-9;
}

}  // namespace

Meeting meeting_of(std::span<const Reading> file, const Wear& known) {
    Meeting meeting;
    const Interval span = known.sensed_span();
    auto at = known.readings.begin();
    for (std::size_t i = 0; i < file.size(); ++i) {
        at = std::lower_bound(at, known.readings.end(), file[i].at,
                              [](const Reading& r, Instant t) { return r.at < t; });
        if (at != known.readings.end() && at->at == file[i].at) {
            const bool same = same_level(*at, file[i]) && at->limit() == file[i].limit();
            (same ? meeting.repeated : meeting.contradicted).push_back(i);
        } else if (span.contains(file[i].at)) {
            ++meeting.between;
        }
    }
    return meeting;
}

}  // namespace tracewright
