#include "measures/usual_day.hpp"

#include "inference/round_the_clock.hpp"
#include "inference/weighted_quantile.hpp"

#include <algorithm>
#include <cstddef>
#include <set>
#include <vector>

namespace tracewright {

namespace {

using std::chrono::seconds;

constexpr std::array<double, 5> probabilities{0.05, 0.25, 0.5, 0.75, 0.95};
// Days from which each of the five lines is drawn; ours, no source.
constexpr std::array<int, 5> days_needed{10, 7, 5, 7, 10};
constexpr int days_for_solid_outer = 14;
constexpr seconds quarter_hour = std::chrono::minutes{15};

struct Gathered {
    std::array<std::vector<Weighted>, UsualDay::bins> values;
    std::array<int, UsualDay::bins> days{};
    int all_days = 0;
};

Gathered gather(const TraceView& view, const ZoneHistory& zones, GlucoseUnit unit) {
    Gathered gathered;
    std::array<CivilDate, UsualDay::bins> last_date;
    last_date.fill(CivilDate::min());
    CivilDate last_of_all = CivilDate::min();
    WallClock clock(zones);
    for_each_standing(view, [&](const Reading& reading, seconds stood) {
        const WallTime wall = clock.at(std::max(reading.at, view.from));
        const CivilDate date = std::chrono::floor<std::chrono::days>(wall);
        const auto bin = static_cast<std::size_t>((wall - date) / quarter_hour);
        gathered.values[bin].push_back(
            {reading.value().in(unit), static_cast<double>(stood.count())});
        gathered.days[bin] += date != last_date[bin] ? 1 : 0;
        last_date[bin] = date;
        gathered.all_days += date != last_of_all ? 1 : 0;
        last_of_all = date;
    });
    return gathered;
}

// Smooths the lines that are drawn at the same bins together, and keeps the five in order.
void smooth(UsualDay& usual) {
    std::set<ClockSmoothing> used;
    std::vector<double> weights;
    for (const auto& bin : usual.bin) {
        weights.push_back(std::max(1, bin.days));
    }
    for (const std::vector<std::size_t>& group :
         {std::vector<std::size_t>{2}, std::vector<std::size_t>{1, 3},
          std::vector<std::size_t>{0, 4}}) {
        std::vector<std::vector<std::optional<double>>> curves;
        for (const std::size_t line : group) {
            auto& curve = curves.emplace_back();
            for (const auto& bin : usual.bin) {
                curve.push_back(bin.raw[line]);
            }
        }
        used.insert(smooth_round_the_clock(curves, weights));
        for (std::size_t g = 0; g < group.size(); ++g) {
            for (std::size_t b = 0; b < usual.bin.size(); ++b) {
                usual.bin[b].percentiles[group[g]] = curves[g][b];
            }
        }
    }
    for (auto& bin : usual.bin) {
        std::vector<double> known;
        for (const auto& p : bin.percentiles) {
            if (p) {
                known.push_back(*p);
            }
        }
        std::sort(known.begin(), known.end());
        auto next = known.begin();
        for (auto& p : bin.percentiles) {
            if (p) {
                p = *next++;
            }
        }
    }
    usual.smoothing =
        used.contains(ClockSmoothing::lowess_in_stretches)
            ? "smoothed stretch by stretch (LOWESS over two hours), nothing across hours "
              "not seen"
            : "smoothed round the clock (cyclic penalised spline)";
}

}  // namespace

UsualDay usual_day(const TraceView& view, const ZoneHistory& zones, GlucoseUnit unit) {
    UsualDay usual;
    usual.unit = unit;
    Gathered gathered = gather(view, zones, unit);
    usual.days = gathered.all_days;
    usual.outer_dashed = usual.days < days_for_solid_outer;
    for (std::size_t b = 0; b < usual.bin.size(); ++b) {
        UsualDay::Bin& bin = usual.bin[b];
        bin.days = gathered.days[b];
        const auto found = weighted_quantiles(gathered.values[b], probabilities);
        for (std::size_t line = 0; line < found.size(); ++line) {
            if (bin.days >= days_needed[line]) {
                bin.raw[line] = found[line];
            }
        }
    }
    smooth(usual);
    return usual;
}

}  // namespace tracewright
