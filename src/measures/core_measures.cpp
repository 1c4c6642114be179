#include "measures/core_measures.hpp"

#include "measures/glucose_indicator.hpp"
#include "measures/risk_index.hpp"
#include "measures/time_in_bands.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <vector>

namespace tracewright {

namespace {

constexpr std::size_t levels = 1024;  // whole mg/dL, or tenths of mmol/L
constexpr std::size_t most_rows = 64;
constexpr std::int16_t beyond_all = std::numeric_limits<std::int16_t>::max();
constexpr std::array<double, 5> probabilities{0.05, 0.25, 0.5, 0.75, 0.95};

constexpr std::int32_t step_of(GlucoseUnit unit) {
    return unit == GlucoseUnit::mg_per_dl ? 100 : 10;
}

// What a level amounts to, once for each unit.
struct LevelTable {
    std::array<Risk, levels> risk;
    std::array<std::uint8_t, levels> band;

    explicit LevelTable(GlucoseUnit unit) {
        for (std::size_t i = 0; i < levels; ++i) {
            const Glucose level{static_cast<std::int32_t>(i) * step_of(unit), unit};
            risk[i] = risk_of(risk_scale_mg_per_dl(level));
            band[i] =
                static_cast<std::uint8_t>(band_of(Reading{{}, level, std::chrono::seconds{1}}));
        }
    }
};

const LevelTable& table_of(GlucoseUnit unit) {
    static const LevelTable mg(GlucoseUnit::mg_per_dl);
    static const LevelTable mmol(GlucoseUnit::mmol_per_l);
    return unit == GlucoseUnit::mg_per_dl ? mg : mmol;
}

// The values of each quarter hour stand in one column; all columns are sorted together, row against
// row, by Batcher's odd-even merge network (Knuth 1998, The Art of Computer Programming 3, 5.3.4,
// from memory), whose comparisons don't depend on the values.
class Columns {
  public:
    static constexpr std::size_t wide = CoreMeasures::quarter_hours;

    Columns() {
        for (Row& row : cell_) {
            row.fill(beyond_all);
        }
    }
    std::size_t count(std::size_t column) const { return count_[column]; }
    void set_count(std::size_t column, std::size_t count) {
        count_[column] = static_cast<std::uint8_t>(count);
    }
    std::int16_t& at(std::size_t row, std::size_t column) { return cell_[row][column]; }
    void sort() {
        const std::size_t rows = *std::ranges::max_element(count_);
        for (std::size_t p = 1; p < rows; p *= 2) {
            for (std::size_t k = p; k >= 1; k /= 2) {
                for (std::size_t j = k % p; j + k < rows; j += 2 * k) {
                    for (std::size_t i = 0; i < std::min(k, rows - j - k); ++i) {
                        if ((i + j) / (2 * p) == (i + j + k) / (2 * p)) {
                            compare(cell_[i + j], cell_[i + j + k]);
                        }
                    }
                }
            }
        }
    }
    // Type 7 of Hyndman & Fan 1996, 10.1080/00031305.1996.10473566; in levels.
    double percentile(std::size_t column, double p) const {
        if (count_[column] == 0) {
            return std::numeric_limits<double>::quiet_NaN();
        }
        const double h = (count_[column] - 1) * p;
        const auto below = static_cast<std::size_t>(h);
        const std::size_t above = std::min<std::size_t>(below + 1, count_[column] - 1U);
        const int low = cell_[below][column];
        return low + (cell_[above][column] - low) * (h - static_cast<double>(below));
    }

  private:
    using Row = std::array<std::int16_t, wide>;
    std::array<Row, most_rows> cell_;
    std::array<std::uint8_t, wide> count_{};

    // In a copy, so that the compiler sees that nothing overlaps and takes rows at once.
    static void compare(Row& low, Row& high) {
        const Row a = low;
        std::transform(a.begin(), a.end(), high.begin(), low.begin(),
                       [](std::int16_t x, std::int16_t y) { return std::min(x, y); });
        std::transform(a.begin(), a.end(), high.begin(), high.begin(),
                       [](std::int16_t x, std::int16_t y) { return std::max(x, y); });
    }
};

bool one_offset(const TraceView& view, const ZoneHistory& zones) {
    const Interval same = zones.constant_offset_round(view.from);
    return same.from <= view.from && view.to <= same.to;
}

struct Counted {
    std::array<std::uint32_t, levels> times{};
    Columns columns;
};

// False if the trace is not an even one. The unit is known to the compiler: a division by its step
// is a multiplication.
template <GlucoseUnit unit>
bool count(const TraceView& view, const ZoneHistory& zones, Counted& counted) {
    constexpr std::int64_t quarter_hour = 900;
    constexpr std::int64_t day = 86'400;
    constexpr std::uint32_t step = step_of(unit);
    const LevelTable& table = table_of(unit);
    const std::chrono::seconds interval = view.readings.front().interval();
    Instant expected = view.readings.front().at;
    auto clock =
        (expected.time_since_epoch() + zones.zone_at(view.from).offset_at(view.from)).count() % day;
    for (auto reading = view.readings.begin(); reading != view.readings.end();) {
        const auto column = static_cast<std::size_t>(clock / quarter_hour);
        const std::int64_t end = static_cast<std::int64_t>(column + 1) * quarter_hour;
        std::size_t row = counted.columns.count(column);
        for (; clock < end && reading != view.readings.end(); ++reading) {
            const auto hundredths = static_cast<std::uint32_t>(reading->hundredths());
            const std::uint32_t place = hundredths / step;  // of one below zero beyond all levels
            if (reading->at != expected || reading->interval() != interval ||
                reading->unit() != unit || reading->implausible() || hundredths % step != 0 ||
                place >= levels || row == most_rows) {
                return false;
            }
            // One that is moved out of the band of the number it carries, where the limit lies
            // within range, is no level of the table.
            if (reading->censored() && static_cast<Band>(table.band[place]) != band_of(*reading)) {
                return false;
            }
            ++counted.times[place];
            counted.columns.at(row++, column) = static_cast<std::int16_t>(place);
            expected += interval;
            clock += interval.count();
        }
        counted.columns.set_count(column, row);
        clock -= clock >= day ? day : 0;
    }
    return expected == view.to;
}

}  // namespace

std::optional<CoreMeasures> core_measures(const TraceView& view, const ZoneHistory& zones) {
    if (view.readings.size() < 2 || view.readings.front().at != view.from ||
        view.readings.front().at.time_since_epoch().count() < 86'400 || !one_offset(view, zones)) {
        return std::nullopt;
    }
    Counted counted;
    const GlucoseUnit unit = view.readings.front().unit();
    const bool even = unit == GlucoseUnit::mg_per_dl
                          ? count<GlucoseUnit::mg_per_dl>(view, zones, counted)
                          : count<GlucoseUnit::mmol_per_l>(view, zones, counted);
    if (!even) {
        return std::nullopt;
    }
    const LevelTable& table = table_of(unit);
    std::int64_t sum = 0;
    std::int64_t squares = 0;
    std::array<std::int64_t, 5> in_band{};
    CoreMeasures core;
    for (std::size_t i = 0; i < levels; ++i) {
        const std::int64_t times = counted.times[i];
        if (times == 0) {
            continue;
        }
        const auto level = static_cast<std::int64_t>(i);
        sum += times * level;
        squares += times * level * level;
        in_band[table.band[i]] += times;
        core.lbgi += static_cast<double>(times) * table.risk[i].low;
        core.hbgi += static_cast<double>(times) * table.risk[i].high;
    }
    const auto n = static_cast<double>(view.readings.size());
    const double scale = step_of(unit) / 100.0;
    const double mean = static_cast<double>(sum) / n;
    core.count = view.readings.size();
    core.mean = mean * scale;
    core.sd =
        std::sqrt(std::max(0.0, static_cast<double>(squares) - n * mean * mean) / (n - 1)) * scale;
    core.cv = 100 * core.sd / core.mean;
    core.gmi =
        glucose_management_indicator(converted(core.mean, unit, GlucoseUnit::mg_per_dl)).percent;
    for (std::size_t b = 0; b < in_band.size(); ++b) {
        core.in_band[b] = 100 * static_cast<double>(in_band[b]) / n;
    }
    core.lbgi /= n;
    core.hbgi /= n;
    counted.columns.sort();
    for (std::size_t q = 0; q < CoreMeasures::quarter_hours; ++q) {
        for (std::size_t line = 0; line < probabilities.size(); ++line) {
            core.percentiles[q][line] = counted.columns.percentile(q, probabilities[line]) * scale;
        }
    }
    return core;
}

}  // namespace tracewright
