#include "measures/measure_set.hpp"

#include "inference/weighted_quantile.hpp"
#include "measures/day_intervals.hpp"
#include "measures/day_sums.hpp"
#include "measures/glucose_indicator.hpp"
#include "measures/level_counts.hpp"
#include "measures/level_terms.hpp"
#include "measures/risk_summary.hpp"
#include "measures/simple_indices.hpp"
#include "measures/time_in_bands.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace tracewright {

namespace {

using std::chrono::seconds;
using Range = std::array<double, 2>;
constexpr GlucoseUnit mg = GlucoseUnit::mg_per_dl;

// What a censored reading may have been (glycaemia 2.7): LOW down to 20 mg/dL, HIGH up to 600.
constexpr Glucose least[] = {{2000, GlucoseUnit::mg_per_dl}, {110, GlucoseUnit::mmol_per_l}};
constexpr Glucose most[] = {{60000, GlucoseUnit::mg_per_dl}, {3330, GlucoseUnit::mmol_per_l}};
constexpr double largest_spread_of_bounds = 0.01;
// Where most readings lie beyond a limit, how they differ from each other isn't known: all at the
// limit, or all at the end of what glucose can be, they look alike. Ours, no source.
constexpr double most_censored = 0.5;

struct Context {
    std::vector<DayOfTrace> days;
    std::optional<LevelCounts> levels;
    GlucoseSums total;
    GlucoseUnit unit = mg;
    bool whole_days = true;
};

Context context_of(std::vector<DayOfTrace> days, GlucoseUnit unit, bool whole_days) {
    Context context{std::move(days), std::nullopt, {}, unit, whole_days};
    context.levels = LevelCounts::of(context.days);
    for (const DayOfTrace& day : context.days) {
        context.total.add(day.sums);
    }
    return context;
}

double in_shown(double mg_per_dl, GlucoseUnit unit) {
    return converted(mg_per_dl, mg, unit);
}

std::optional<double> ratio(double part, double whole) {
    return whole > 0 ? std::optional{part / whole} : std::nullopt;
}

std::optional<double> standard_deviation(double n, double sum, double squares) {
    if (n < 2) {
        return std::nullopt;
    }
    return std::sqrt(std::max(0.0, (squares - sum * sum / n) / (n - 1)));
}

double risk_index_of(const GlucoseSums& sums) {
    const auto share = [&](Band band) { return sums.percent_in(static_cast<std::size_t>(band)); };
    return glycaemia_risk_index(share(Band::very_low), share(Band::low), share(Band::high),
                                share(Band::very_high))
        .index;
}

std::optional<double> median_of(const Context& context,
                                const std::function<double(Glucose)>& level) {
    if (context.levels) {
        return context.levels->median(level);
    }
    std::vector<Weighted> values;
    std::optional<Instant> last;
    for (const DayOfTrace& day : context.days) {
        for_each_standing(day.view, [&](const Reading& reading, seconds stood) {
            const auto time = static_cast<double>(stood.count());
            if (last == reading.at) {  // stands across midnight: one reading, not two
                values.back().weight += time;
                return;
            }
            values.push_back({level(reading.value()), time});
            last = reading.at;
        });
    }
    return values.empty() ? std::nullopt : std::optional{weighted_median(values)};
}

std::optional<double> mean_over_days(const Context& context, const DayIntervals::DayValue& value) {
    double sum = 0;
    int days = 0;
    for (const DayOfTrace& day : context.days) {
        if (const auto v = day.valid ? value(day) : std::nullopt) {
            sum += *v;
            ++days;
        }
    }
    return days > 0 ? std::optional{sum / days} : std::nullopt;
}

// How one measure is had from a window and how its interval is.
struct Recipe {
    const char* name;
    const char* unit;  // empty: the glucose unit shown
    std::function<std::optional<double>(const Context&)> value;
    std::function<std::optional<Range>(const Context&, const DayIntervals&, double)> interval;
    bool needs_whole_days = false;
    const char* absent_because = "no readings";
    std::optional<double> largest =
        std::nullopt;           // what it can't exceed: no interval ends beyond it
    bool of_variation = false;  // how readings differ from each other
};

Recipe of_variation(Recipe recipe) {
    recipe.of_variation = true;
    return recipe;
}

Recipe at_most(double largest, Recipe recipe) {
    recipe.largest = largest;
    return recipe;
}

// A measure that is a function of sums, its interval by that function of a resample's sums.
Recipe of_sums(const char* name, const char* unit,
               std::function<std::optional<double>(const GlucoseSums&, GlucoseUnit)> f,
               bool whole_days = false, const char* absent = "no readings") {
    return {name,
            unit,
            [f](const Context& c) { return f(c.total, c.unit); },
            [f](const Context& c, const DayIntervals& days, double value) {
                return days.of_total(value, [&](const GlucoseSums& s) { return f(s, c.unit); });
            },
            whole_days,
            absent};
}

// A ratio of sums whose interval is that of a mean of the days' ratios.
Recipe of_day_ratio(const char* name, const char* unit,
                    std::function<std::optional<double>(const GlucoseSums&, GlucoseUnit)> f,
                    std::optional<double> lowest, bool whole_days = false,
                    const char* absent = "no readings") {
    return {name,
            unit,
            [f](const Context& c) { return f(c.total, c.unit); },
            [f, lowest](const Context& c, const DayIntervals& days, double value) {
                return days.of_mean(
                    value, [&](const DayOfTrace& day) { return f(day.sums, c.unit); }, lowest);
            },
            whole_days,
            absent};
}

Recipe of_days(const char* name, const char* unit,
               std::function<std::optional<double>(const DayOfTrace&, GlucoseUnit)> f,
               const char* absent) {
    return {name,
            unit,
            [f](const Context& c) {
                return mean_over_days(c, [&](const DayOfTrace& day) { return f(day, c.unit); });
            },
            [f](const Context& c, const DayIntervals& days, double value) {
                return days.of_mean(
                    value, [&](const DayOfTrace& day) { return f(day, c.unit); }, 0.0);
            },
            true,
            absent};
}

Recipe share_recipe(const char* name, std::function<double(const GlucoseSums&)> percent) {
    return {name, "%", [percent](const Context& c) { return std::optional{percent(c.total)}; },
            [percent](const Context&, const DayIntervals& days, double value) {
                return days.of_share(
                    value, [&](const DayOfTrace& day) { return std::optional{percent(day.sums)}; });
            }};
}

Recipe band_recipe(Band band) {
    return share_recipe(name_of(band), [band](const GlucoseSums& s) {
        return s.percent_in(static_cast<std::size_t>(band));
    });
}

Recipe median_recipe(const char* name, const char* unit,
                     std::function<double(Glucose, GlucoseUnit)> level) {
    return {name, unit,
            [level](const Context& c) {
                return median_of(c, [&](Glucose g) { return level(g, c.unit); });
            },
            [level](const Context& c, const DayIntervals& days, double value) {
                return days.of_median(value,
                                      [&](const Reading& r) { return level(r.value(), c.unit); });
            }};
}

Recipe hourly_recipe(const char* name, std::size_t which) {
    return of_sums(
        name, "",
        [which](const GlucoseSums& s, GlucoseUnit unit) -> std::optional<double> {
            const auto sd =
                standard_deviation(s.hourly_pairs[which], s.hourly[which], s.hourly_squared[which]);
            return sd ? std::optional{in_shown(*sd, unit)} : std::nullopt;
        },
        true, "no two readings lie that many hours apart");
}

std::vector<Recipe> level_recipes() {
    const auto mean = [](const GlucoseSums& s, GlucoseUnit unit) {
        return std::optional{s.mean(unit)};
    };
    return {
        of_day_ratio("mean", "", mean, std::nullopt),
        median_recipe("median", "", [](Glucose g, GlucoseUnit u) { return g.in(u); }),
        of_variation(of_sums(
            "sd", "", [](const GlucoseSums& s, GlucoseUnit unit) { return s.sd(unit); }, false,
            "fewer than two readings")),
        of_variation(of_sums(
            "cv", "%",
            [](const GlucoseSums& s, GlucoseUnit) -> std::optional<double> {
                const auto sd = s.sd(mg);
                return sd ? std::optional{100 * *sd / s.mean(mg)} : std::nullopt;
            },
            false, "fewer than two readings")),
        of_day_ratio(
            "gmi", "%",
            [](const GlucoseSums& s, GlucoseUnit) {
                return std::optional{glucose_management_indicator(s.mean(mg)).percent};
            },
            std::nullopt),
        of_day_ratio(
            "ea1c", "%",
            [](const GlucoseSums& s, GlucoseUnit) {
                return std::optional{a1c_from_average(s.mean(mg)).percent};
            },
            std::nullopt),
        band_recipe(Band::very_low),
        band_recipe(Band::low),
        band_recipe(Band::in_range),
        band_recipe(Band::high),
        band_recipe(Band::very_high),
        share_recipe("tight_range",
                     [](const GlucoseSums& s) { return 100 * s.tight_seconds / s.seconds; }),
        share_recipe("pregnancy_range",
                     [](const GlucoseSums& s) { return 100 * s.pregnancy_seconds / s.seconds; }),
        at_most(100,
                of_day_ratio(
                    "lbgi", "1",
                    [](const GlucoseSums& s, GlucoseUnit) { return ratio(s.low_risk, s.seconds); },
                    0.0)),
        at_most(100,
                of_day_ratio(
                    "hbgi", "1",
                    [](const GlucoseSums& s, GlucoseUnit) { return ratio(s.high_risk, s.seconds); },
                    0.0)),
        at_most(100, of_sums("gri", "1",
                             [](const GlucoseSums& s, GlucoseUnit) {
                                 return std::optional{risk_index_of(s)};
                             })),
        of_sums(
            "j_index", "1",
            [](const GlucoseSums& s, GlucoseUnit) -> std::optional<double> {
                const auto sd = s.sd(mg);
                return sd ? std::optional{j_index_mg_per_dl(s.mean(mg), *sd)} : std::nullopt;
            },
            false, "fewer than two readings"),
        of_day_ratio(
            "m_value", "1",
            [](const GlucoseSums& s, GlucoseUnit) { return ratio(s.m_value, s.seconds); }, 0.0),
        at_most(50, median_recipe("grade", "1",
                                  [](Glucose g, GlucoseUnit) { return level_terms(g).grade; })),
    };
}

std::vector<Recipe> course_recipes() {
    return {
        of_variation(of_days(
            "mage", "",
            [](const DayOfTrace& day, GlucoseUnit unit) -> std::optional<double> {
                return day.swing ? std::optional{in_shown(*day.swing, unit)} : std::nullopt;
            },
            "no day with 70 % of its readings has a swing larger than its SD")),
        of_variation(of_day_ratio(
            "modd", "",
            [](const GlucoseSums& s, GlucoseUnit unit) -> std::optional<double> {
                const auto mean = ratio(s.day_before, s.day_before_pairs);
                return mean ? std::optional{in_shown(*mean, unit)} : std::nullopt;
            },
            0.0, true, "no reading has one at the same time of the day before")),
        of_variation(hourly_recipe("conga1", 0)),
        of_variation(hourly_recipe("conga2", 1)),
        of_variation(hourly_recipe("conga4", 2)),
        of_days(
            "adrr", "1",
            [](const DayOfTrace& day, GlucoseUnit) {
                return std::optional{day.low_risk_max + day.high_risk_max};
            },
            "no day with 70 % of its readings"),
        of_variation(of_day_ratio(
            "mag", "",
            [](const GlucoseSums& s, GlucoseUnit unit) -> std::optional<double> {
                const auto rate = ratio(s.change * 3600, s.step_seconds);
                return rate ? std::optional{in_shown(*rate, unit)} : std::nullopt;
            },
            0.0, true, "no two readings follow each other without a gap")),
        of_variation(of_day_ratio(
            "gvp", "%",
            [](const GlucoseSums& s, GlucoseUnit) -> std::optional<double> {
                const auto length = ratio(s.path * 60, s.step_seconds);
                return length ? std::optional{100 * (*length - 1)} : std::nullopt;
            },
            0.0, true, "no two readings follow each other without a gap")),
    };
}

const std::vector<Recipe>& recipes() {
    static const std::vector<Recipe> all = [] {
        std::vector<Recipe> joined = level_recipes();
        for (Recipe& recipe : course_recipes()) {
            joined.push_back(std::move(recipe));
        }
        return joined;
    }();
    return all;
}

std::string unit_of(const Recipe& recipe, GlucoseUnit unit) {
    if (recipe.unit[0] != '\0') {
        return recipe.unit;
    }
    return std::string(name_of(unit)) + (std::string_view(recipe.name) == "mag" ? "/h" : "");
}

std::optional<double> value_of(const Recipe& recipe, const Context& context) {
    if (context.total.seconds <= 0 || (recipe.needs_whole_days && !context.whole_days)) {
        return std::nullopt;
    }
    return recipe.value(context);
}

// The window with every LOW and HIGH moved to an end of what it may have been.
std::vector<Reading> moved(std::span<const Reading> readings, bool lows, bool highs) {
    std::vector<Reading> result(readings.begin(), readings.end());
    for (Reading& r : result) {
        const bool move =
            (r.limit() == Limit::below && lows) || (r.limit() == Limit::above && highs);
        if (move) {
            const auto unit = static_cast<std::size_t>(r.unit());
            r = Reading{r.at, r.limit() == Limit::below ? least[unit] : most[unit], r.interval(),
                        r.limit(), r.implausible()};
        }
    }
    return result;
}

void leave_open(Measure& measure, const char* why) {
    measure.value.reset();
    measure.interval95.reset();
    measure.no_interval_because.clear();
    measure.absent_because = why;
}

using MakeContext = std::function<Context(const TraceView&)>;

void add_bounds(Measures& measures, const TraceView& view, const MakeContext& make, double share) {
    std::vector<std::array<double, 2>> bounds(measures.size());
    for (std::size_t i = 0; i < measures.size(); ++i) {
        bounds[i].fill(measures[i].value.value_or(NAN));
    }
    for (const auto& [lows, highs] : {std::pair{true, false}, {false, true}, {true, true}}) {
        const std::vector<Reading> readings = moved(view.readings, lows, highs);
        const Context context = make({readings, view.from, view.to});
        for (std::size_t i = 0; i < measures.size(); ++i) {
            if (const auto v = value_of(recipes()[i], context)) {
                bounds[i] = {std::fmin(bounds[i][0], *v), std::fmax(bounds[i][1], *v)};
            }
        }
    }
    for (std::size_t i = 0; i < measures.size(); ++i) {
        Measure& measure = measures[i];
        measure.censored_share = share;
        if (!measure.value) {
            continue;
        }
        if (share > most_censored && recipes()[i].of_variation) {
            leave_open(measure, "most of the time seen was LOW or HIGH, beyond the sensor's limit");
            continue;
        }
        measure.bounds = bounds[i];
        const double spread = bounds[i][1] - bounds[i][0];
        if (spread > largest_spread_of_bounds * std::abs(*measure.value)) {
            leave_open(
                measure,
                "readings beyond the sensor's limit leave it open by more than 1 %: see bounds");
        }
    }
}

bool has_censored(std::span<const Reading> readings) {
    return std::any_of(readings.begin(), readings.end(),
                       [](const Reading& r) { return r.censored(); });
}

Measures measured(const TraceView& view, const MakeContext& make, const MeasureOptions& options) {
    const Context context = make(view);
    const DayIntervals intervals(context.days, options.seed);
    Measures measures;
    for (const Recipe& recipe : recipes()) {
        Measure measure;
        measure.name = recipe.name;
        measure.unit = unit_of(recipe, options.unit);
        measure.value = value_of(recipe, context);
        measure.days = intervals.days();
        if (!measure.value) {
            measure.absent_because = context.total.seconds <= 0 ? "no readings"
                                     : recipe.needs_whole_days && !context.whole_days
                                         ? "given over whole days only"
                                         : recipe.absent_because;
        } else if (!options.intervals) {
            measure.no_interval_because = "not asked for";
        } else if (!intervals.none_because().empty()) {
            measure.no_interval_because = intervals.none_because();
        } else {
            measure.interval95 = recipe.interval(context, intervals, *measure.value);
            if (measure.interval95 && recipe.largest) {
                (*measure.interval95)[1] = std::min((*measure.interval95)[1], *recipe.largest);
            }
            if (!measure.interval95) {
                measure.no_interval_because =
                    "too few days with a value, or days that do not differ";
            }
        }
        measures.push_back(std::move(measure));
    }
    if (has_censored(view.readings) && context.total.seconds > 0) {
        add_bounds(measures, view, make, context.total.censored_seconds / context.total.seconds);
    }
    return measures;
}

}  // namespace

Measures measures_of(const TraceView& view, const ZoneHistory& zones,
                     const MeasureOptions& options) {
    return measured(
        view,
        [&](const TraceView& v) { return context_of(days_of_trace(v, zones), options.unit, true); },
        options);
}

Measures measures_in_clock_window(const TraceView& view, const ZoneHistory& zones, seconds begin,
                                  seconds end, const MeasureOptions& options) {
    return measured(
        view,
        [&](const TraceView& v) {
            return context_of(clock_windows_of_trace(v, zones, begin, end), options.unit, false);
        },
        options);
}

Measures measures_on(const TraceView& view, const ZoneHistory& zones, DayKind kind,
                     const MeasureOptions& options) {
    return measured(
        view,
        [&](const TraceView& v) {
            std::vector<DayOfTrace> days = days_of_trace(v, zones);
            std::erase_if(days, [&](const DayOfTrace& day) {
                const std::chrono::weekday weekday{day.date};
                const bool weekend =
                    weekday == std::chrono::Saturday || weekday == std::chrono::Sunday;
                return weekend != (kind == DayKind::weekend);
            });
            return context_of(std::move(days), options.unit, true);
        },
        options);
}

}  // namespace tracewright
