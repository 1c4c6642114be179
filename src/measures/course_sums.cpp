#include "measures/course_sums.hpp"

#include "measures/paired_differences.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <span>

namespace tracewright {

namespace {

using std::chrono::seconds;

constexpr std::array<seconds, 3> pairs_apart{std::chrono::hours{1}, std::chrono::hours{2},
                                             std::chrono::hours{4}};
constexpr seconds one_day = std::chrono::days{1};

// mg/dL of one hundredth.
double mg_per_hundredth(GlucoseUnit unit) {
    return unit == GlucoseUnit::mg_per_dl ? 0.01 : 0.01 * mg_per_dl_in_mmol_per_l;
}

// Later minus earlier. Both of one unit: their hundredths are whole.
double mg_difference(const Reading& later, const Reading& earlier) {
    if (later.unit() == earlier.unit()) {
        return (later.hundredths() - earlier.hundredths()) * mg_per_hundredth(later.unit());
    }
    constexpr GlucoseUnit mg = GlucoseUnit::mg_per_dl;
    return later.value().in(mg)-earlier.value().in(mg);
}

// Readings [begin, end) that follow each other at exactly their interval,
// plausible and of one unit: whatever lies k places apart lies k intervals
// apart.
struct EvenRun {
    std::size_t begin;
    std::size_t end;
    seconds step;
    GlucoseUnit unit;
};

struct PairSums {
    double sum = 0;
    double of_sizes = 0;
    double of_squares = 0;
    std::int64_t count = 0;

    void add(double difference) {
        sum += difference;
        of_sizes += std::abs(difference);
        of_squares += difference * difference;
        ++count;
    }
};

// Steps between neighbours without a gap.
struct StepSums {
    double change = 0;
    double path = 0;
    std::int64_t seconds_of_steps = 0;

    void add(const Reading& reading, const Reading& before) {
        const seconds apart = reading.at - before.at;
        if (2 * apart > 3 * before.interval() || before.implausible() || reading.implausible()) {
            return;
        }
        const double step = mg_difference(reading, before);
        const double minutes = static_cast<double>(apart.count()) / 60;
        change += std::abs(step);
        path += std::sqrt(minutes * minutes + step * step);
        seconds_of_steps += apart.count();
    }

    // Neighbours of a run, each one interval after the one before.
    void add_even(std::span<const std::int32_t> levels, const EvenRun& run) {
        const double mg = mg_per_hundredth(run.unit);
        const double minutes = static_cast<double>(run.step.count()) / 60;
        std::int64_t sizes = 0;
        for (std::size_t i = 1; i < levels.size(); ++i) {
            const std::int32_t step = levels[i] - levels[i - 1];
            const double in_mg = mg * step;
            sizes += std::abs(step);
            path += std::sqrt(minutes * minutes + in_mg * in_mg);
        }
        change += mg * static_cast<double>(sizes);
        seconds_of_steps += static_cast<std::int64_t>(levels.size() - 1) * run.step.count();
    }

    void give(GlucoseSums& sums) const {
        sums.change = change;
        sums.path = path;
        sums.step_seconds = static_cast<double>(seconds_of_steps);
    }
};

class Course {
  public:
    Course(const TraceView& view, const ZoneHistory& zones, std::vector<DayOfTrace>& days)
        : readings_(readings_within(view)), zones_(zones), days_(days) {
        for (const DayOfTrace& day : days) {
            const auto last = std::lower_bound(
                readings_.begin(), readings_.end(), day.part.to,
                [](const Reading& reading, Instant at) { return reading.at < at; });
            day_ends_.push_back(static_cast<std::size_t>(last - readings_.begin()));
        }
        day_ends_.back() = readings_.size();
        levels_.reserve(readings_.size());
        for (const Reading& reading : readings_) {
            levels_.push_back(reading.hundredths());
        }
        find_runs();
    }

    void sum_steps() {
        std::size_t d = 0;
        StepSums sums;
        const auto to_day_of = [&](std::size_t i) {
            while (i >= day_ends_[d]) {
                sums.give(days_[d++].sums);
                sums = StepSums{};
            }
        };
        for (const EvenRun& run : runs_) {
            to_day_of(run.begin);
            if (run.begin > 0) {
                sums.add(readings_[run.begin], readings_[run.begin - 1]);
            }
            for (std::size_t i = run.begin + 1; i < run.end;) {
                to_day_of(i);
                const std::size_t end = std::min(run.end, day_ends_[d]);
                sums.add_even(std::span(levels_).subspan(i - 1, end - i + 1), run);
                i = end;
            }
        }
        for (; d < days_.size(); ++d) {
            sums.give(days_[d].sums);
            sums = StepSums{};
        }
    }

    void sum_day_before() {
        WallClock clock(zones_);
        WallClock clock_before(zones_);
        const auto target = [&](Instant at) {
            return at - one_day + clock.offset_at(at) - clock_before.offset_at(at - one_day);
        };
        const auto sums = pairs(one_day, target, [&](const EvenRun& run) {
            const Interval kept = zones_.constant_offset_round(readings_[run.begin].at);
            return kept.contains(readings_[run.end - 1].at);
        });
        for (std::size_t d = 0; d < days_.size(); ++d) {
            days_[d].sums.day_before = sums[d].of_sizes;
            days_[d].sums.day_before_pairs = static_cast<double>(sums[d].count);
        }
    }

    void sum_apart(std::size_t which) {
        const seconds apart = pairs_apart[which];
        const auto sums = pairs(
            apart, [&](Instant at) { return at - apart; }, [](const EvenRun&) { return true; });
        for (std::size_t d = 0; d < days_.size(); ++d) {
            days_[d].sums.hourly[which] = sums[d].sum;
            days_[d].sums.hourly_squared[which] = sums[d].of_squares;
            days_[d].sums.hourly_pairs[which] = static_cast<double>(sums[d].count);
        }
    }

  private:
    std::span<const Reading> readings_;
    const ZoneHistory& zones_;
    std::vector<DayOfTrace>& days_;
    std::vector<std::size_t> day_ends_;
    std::vector<std::int32_t> levels_;
    std::vector<EvenRun> runs_;

    void find_runs() {
        for (std::size_t i = 0; i < readings_.size();) {
            const Reading& first = readings_[i];
            const seconds step = first.interval();
            std::size_t end = i + 1;
            while (end < readings_.size() && !first.implausible() &&
                   readings_[end].at - readings_[end - 1].at == step &&
                   readings_[end].interval() == step && readings_[end].unit() == first.unit() &&
                   !readings_[end].implausible()) {
                ++end;
            }
            runs_.push_back({i, end, step, first.unit()});
            i = end;
        }
    }

    // Of each day. `even` tells whether on a run the target is `apart` before
    // throughout.
    template <typename Target, typename Even>
    std::vector<PairSums> pairs(seconds apart, Target target, Even even) const {
        std::vector<PairSums> sums(days_.size());
        EarlierReading earlier(readings_);
        std::size_t d = 0;
        for (const EvenRun& run : runs_) {
            const bool divides =
                run.step > seconds{0} && apart % run.step == seconds{0} && even(run);
            const std::size_t places =
                divides ? static_cast<std::size_t>(apart / run.step) : run.end - run.begin;
            const std::size_t searched_to = std::min(run.begin + places, run.end);
            for (std::size_t i = run.begin; i < searched_to; ++i) {
                d = day_of(i, d);
                if (const Reading* before = earlier.to(i, target(readings_[i].at))) {
                    sums[d].add(mg_difference(readings_[i], *before));
                }
            }
            for (std::size_t i = searched_to; i < run.end;) {
                d = day_of(i, d);
                const std::size_t end = std::min(run.end, day_ends_[d]);
                add_even(sums[d], i, end, places, mg_per_hundredth(run.unit));
                i = end;
            }
        }
        return sums;
    }

    std::size_t day_of(std::size_t i, std::size_t d) const {
        while (i >= day_ends_[d]) {
            ++d;
        }
        return d;
    }

    // Readings [begin, end) against those `places` before them.
    void add_even(PairSums& sums, std::size_t begin, std::size_t end, std::size_t places,
                  double mg) const {
        std::int64_t sum = 0;
        std::int64_t of_sizes = 0;
        std::int64_t of_squares = 0;
        for (std::size_t i = begin; i < end; ++i) {
            const std::int64_t difference = levels_[i] - levels_[i - places];
            sum += difference;
            of_sizes += std::abs(difference);
            of_squares += difference * difference;
        }
        sums.sum += mg * static_cast<double>(sum);
        sums.of_sizes += mg * static_cast<double>(of_sizes);
        sums.of_squares += mg * mg * static_cast<double>(of_squares);
        sums.count += static_cast<std::int64_t>(end - begin);
    }
};

}  // namespace

void sum_course(const TraceView& view, const ZoneHistory& zones, std::vector<DayOfTrace>& days) {
    Course course(view, zones, days);
    course.sum_steps();
    course.sum_day_before();
    for (std::size_t i = 0; i < pairs_apart.size(); ++i) {
        course.sum_apart(i);
    }
}

}  // namespace tracewright
