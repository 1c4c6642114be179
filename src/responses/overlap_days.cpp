#include "responses/overlap_days.hpp"

#include "responses/meal_kernel.hpp"

#include <chrono>
#include <cmath>
#include <map>
#include <numbers>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

constexpr double kernel_lasts_minutes = 480;

double minutes_between(Instant from, Instant to) {
    return static_cast<double>((to - from).count()) / 60;
}

// The date of a moment, the day beginning at 04:00.
CivilDate day_of(Instant at, const ZoneHistory& zones) {
    return std::chrono::floor<std::chrono::days>(zones.wall_time(at) - 4h);
}

}  // namespace

std::vector<OverlapDay> overlap_days(std::span<const EatingOccasion> occasions,
                                     const CountedTrace& trace, const ZoneHistory& zones) {
    struct Day {
        OverlapDay day;
        Instant from;
        double seen_minutes = 0;
    };
    std::map<std::pair<CivilDate, std::size_t>, Day> days;
    WallClock clock(zones);
    for (std::size_t i = 0; i < trace.readings.size(); ++i) {
        const Reading& reading = trace.readings[i];
        if (reading.implausible()) {
            continue;
        }
        const WallTime wall = clock.at(reading.at);
        const CivilDate date = std::chrono::floor<std::chrono::days>(wall - 4h);
        auto [found, fresh] = days.try_emplace({date, trace.wear_of[i]});
        Day& day = found->second;
        if (fresh) {
            day.from = zones.resolve(WallTime{date} + 4h).first;
            day.day.wear = trace.wear_of[i];
        }
        day.day.minutes.push_back(minutes_between(day.from, reading.at));
        day.day.clock.push_back(
            static_cast<double>((wall - std::chrono::floor<std::chrono::days>(wall)).count()) /
            3600);
        day.day.level.push_back(reading.value().in(GlucoseUnit::mg_per_dl));
        day.seen_minutes += static_cast<double>(reading.interval().count()) / 60;
    }
    for (std::size_t m = 0; m < occasions.size(); ++m) {
        const CivilDate date = day_of(occasions[m].at, zones);
        for (auto& [key, day] : days) {
            if (key.first == date && !occasions[m].time_uncertain) {
                day.day.occasions.push_back(m);
                day.day.eaten.push_back(minutes_between(day.from, occasions[m].at));
            }
        }
    }
    std::vector<OverlapDay> result;
    for (auto& [key, day] : days) {
        if (day.seen_minutes >= 480) {
            result.push_back(std::move(day.day));
        }
    }
    return result;
}

DayNormals day_normals(const OverlapDay& day, std::size_t wears, double peak_minutes,
                       double correlation_5min, std::span<const double> shift) {
    const Eigen::Index base = baseline_columns(wears);
    const auto meals = static_cast<Eigen::Index>(day.occasions.size());
    const auto rows = static_cast<Eigen::Index>(day.level.size());
    Eigen::MatrixXd x = Eigen::MatrixXd::Zero(rows, base + meals);
    Eigen::VectorXd y(rows);
    for (Eigen::Index i = 0; i < rows; ++i) {
        const auto at = static_cast<std::size_t>(i);
        const double angle = 2 * std::numbers::pi * day.clock[at] / 24;
        x(i, static_cast<Eigen::Index>(day.wear)) = 1;
        x(i, base - 4) = std::cos(angle);
        x(i, base - 3) = std::sin(angle);
        x(i, base - 2) = std::cos(2 * angle);
        x(i, base - 1) = std::sin(2 * angle);
        for (Eigen::Index m = 0; m < meals; ++m) {
            const auto meal = static_cast<std::size_t>(m);
            const double since =
                day.minutes[at] - day.eaten[meal] - (shift.empty() ? 0 : shift[meal]);
            if (since > 0 && since < kernel_lasts_minutes) {
                x(i, base + m) = meal_kernel(since, peak_minutes);
            }
        }
        y(i) = day.level[at];
    }
    DayNormals sums;
    // From the end, so that a row's neighbour is still unwhitened.
    for (Eigen::Index i = rows - 1; i > 0; --i) {
        const auto at = static_cast<std::size_t>(i);
        const double power =
            std::pow(correlation_5min, (day.minutes[at] - day.minutes[at - 1]) / 5);
        const double scale = std::sqrt(1 - power * power);
        x.row(i) = (x.row(i) - power * x.row(i - 1)) / scale;
        y(i) = (y(i) - power * y(i - 1)) / scale;
        sums.log_scale += std::log(scale);
    }
    const auto b = x.leftCols(base);
    const auto a = x.rightCols(meals);
    sums.bb = b.transpose() * b;
    sums.ab = a.transpose() * b;
    sums.aa = a.transpose() * a;
    sums.by = b.transpose() * y;
    sums.ay = a.transpose() * y;
    sums.yy = y.squaredNorm();
    sums.rows = static_cast<double>(rows);
    return sums;
}

}  // namespace tracewright
