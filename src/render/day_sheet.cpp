#include "findings/finger_prick_words.hpp"
#include "findings/wording.hpp"
#include "measures/time_in_bands.hpp"
#include "render/day_marks.hpp"
#include "render/diary_lanes.hpp"
#include "render/level_axis.hpp"
#include "render/review_figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <span>

namespace tracewright {

namespace {

using std::chrono::seconds;

constexpr double width = 495;
constexpr double left = 38;
constexpr double right = width - 2;
constexpr double top = 12;
constexpr double bottom = 106;
constexpr double clock_bottom = bottom + 14;
constexpr double strip_height = 8;
constexpr double label_distance = 16;

using Strip = std::vector<DayMark>;

// A moment at which the client's clock jumped.
struct ClockChange {
    Instant at;
    seconds by{0};
};

std::vector<ClockChange> clock_changes(const ZoneHistory& zones, const Interval& day) {
    std::vector<ClockChange> changes;
    WallClock clock(zones);
    for (Instant at = day.from + seconds{900}; at < day.to; at += seconds{900}) {
        const seconds by = clock.offset_at(at) - clock.offset_at(at - seconds{900});
        if (by.count() != 0) {
            changes.push_back({at, by});
        }
    }
    return changes;
}

std::string range_of(std::span<const Reading> readings, GlucoseUnit unit) {
    if (readings.empty()) {
        return "not seen";
    }
    const auto [low, high] = std::minmax_element(
        readings.begin(), readings.end(), [](const Reading& a, const Reading& b) {
            return a.value().in(GlucoseUnit::mg_per_dl) < b.value().in(GlucoseUnit::mg_per_dl);
        });
    const auto told = [unit](const Reading& reading) {
        const char* beyond = reading.limit() == Limit::below   ? "below "
                             : reading.limit() == Limit::above ? "above "
                                                               : "";
        return beyond + glucose_number(reading.value().in(unit), unit);
    };
    const std::string from = told(*low);
    const std::string to = told(*high);
    return (from == to ? from : from + " to " + to) + " " + name_of(unit);
}

double place(const CivilDay& day, Instant at) {
    const auto span = static_cast<double>(day.length().count());
    return left + static_cast<double>((at - day.from).count()) / span * (right - left);
}

class Sheet {
  public:
    Sheet(Canvas& canvas, const FirstReview& review, const ReviewDay& day)
        : canvas_(canvas),
          review_(review),
          day_(day),
          axis_(review.input.unit, shown_range(review.input.goals), highest(), top, bottom) {}

    void draw(const std::vector<Strip>& strips, const std::optional<DiaryLanes>& lanes) {
        hours();
        beyond_edges();
        axis_.draw(canvas_, left, right);
        trace();
        finger_pricks();
        double y = clock_bottom;
        for (const Strip& strip : strips) {
            draw_strip(strip, y);
            y += strip_height;
        }
        if (lanes) {
            lanes->draw(canvas_, y + 2);
        }
    }

  private:
    double x(Instant at) const { return place(day_.day, at); }
    double level(const Reading& reading) const { return reading.value().in(review_.input.unit); }

    double highest() const {
        double value = 0;
        for (const Reading& reading : readings_within(day_.view)) {
            value = std::max(value, level(reading));
        }
        for (const DiaryEntry& entry : review_.input.diary) {
            if (pricked_today(entry)) {
                value = std::max(value, entry.glucose->in(review_.input.unit));
            }
        }
        return value;
    }

    // Every third hour the clock shows, and where it jumped: a repeated hour is written twice.
    void hours() {
        std::vector<double> taken;
        const auto label = [&](Instant at, const std::string& text, Anchor anchor) {
            canvas_.line({x(at), top}, {x(at), bottom}, {0.35, Ink::faint, false});
            const bool free = std::none_of(taken.begin(), taken.end(), [&](double other) {
                return std::abs(other - x(at)) < label_distance;
            });
            if (free) {
                taken.push_back(x(at));
                canvas_.text({x(at), bottom + 11}, text, {7.5, false, anchor, Ink::quiet});
            }
        };
        WallClock clock(review_.input.zones);
        const WayOfWriting way = review_.input.zones.writing();
        const auto since_midnight = [](WallTime wall) {
            return wall - std::chrono::floor<std::chrono::days>(wall);
        };
        const auto on_scale = [&](WallTime wall) {
            const auto since = since_midnight(wall);
            const auto hour = std::chrono::floor<std::chrono::hours>(since);
            return hour == since ? hour_on_scale(static_cast<int>(hour.count()), way)
                                 : clock_time(wall, way);
        };
        // Where the clock jumped there is room for the hour alone.
        const auto hour_only = [&](WallTime wall) {
            return way.twelve_hours ? on_scale(wall) : clock_time(wall, way).substr(0, 2);
        };
        for (const ClockChange& change : clock_changes(review_.input.zones, day_.day.interval())) {
            canvas_.line({x(change.at), top}, {x(change.at), bottom}, {0.8, Ink::line, true});
            canvas_.text({x(change.at) + 3, top - 3},
                         fmt::format("clock {} by {}", change.by.count() < 0 ? "back" : "forward",
                                     hours_and_minutes(std::chrono::abs(change.by))),
                         {7, false, Anchor::start, Ink::quiet});
            if (change.by.count() < 0 && change.by > -std::chrono::hours{3}) {
                label(change.at + change.by, hour_only(clock.at(change.at + change.by)),
                      Anchor::middle);
            }
            label(change.at, hour_only(clock.at(change.at)), Anchor::middle);
        }
        label(day_.day.from, on_scale(clock.at(day_.day.from)), Anchor::start);
        label(day_.day.to, hour_on_scale(24, way), Anchor::end);
        for (Instant at = day_.day.from; at < day_.day.to; at += seconds{900}) {
            const WallTime wall = clock.at(at);
            if (since_midnight(wall) % std::chrono::hours{3} == seconds{0}) {
                label(at, on_scale(wall), Anchor::middle);
            }
        }
        canvas_.line({left, bottom}, {right, bottom}, {0.6, Ink::line, false});
    }

    // Calls visit(points) for each run of readings without a gap.
    template <typename Visit>
    void each_run(Visit visit) const {
        std::vector<const Reading*> run;
        const auto readings = readings_within(day_.view);
        for (std::size_t i = 0; i < readings.size(); ++i) {
            if (!run.empty() &&
                2 * (readings[i].at - run.back()->at) > 3 * run.back()->interval()) {
                visit(run);
                run.clear();
            }
            if (!readings[i].implausible()) {
                run.push_back(&readings[i]);
            }
        }
        if (!run.empty()) {
            visit(run);
        }
    }

    // The area between the curve and an edge it lies beyond.
    void area_beyond(const std::vector<const Reading*>& run, double edge, bool above, Fill fill) {
        std::vector<Point> area;
        const auto close = [&] {
            if (area.size() > 1) {
                area.push_back({area.back().x, axis_.y(edge)});
                area.insert(area.begin(), {area.front().x, axis_.y(edge)});
                canvas_.polygon(area, fill);
            }
            area.clear();
        };
        for (std::size_t i = 0; i < run.size(); ++i) {
            const double value = level(*run[i]);
            const bool beyond = above ? value > edge : value < edge;
            if (i > 0) {
                const double before = level(*run[i - 1]);
                const bool was_beyond = above ? before > edge : before < edge;
                if (beyond != was_beyond) {
                    const double share = (edge - before) / (value - before);
                    const double crossing = std::lerp(x(run[i - 1]->at), x(run[i]->at), share);
                    area.push_back({crossing, axis_.y(edge)});
                    if (!beyond) {
                        close();
                    }
                }
            }
            if (beyond) {
                area.push_back({x(run[i]->at), axis_.y(value)});
            }
        }
        close();
    }

    void beyond_edges() {
        each_run([&](const std::vector<const Reading*>& run) {
            area_beyond(run, axis_.edge(axis_.range().high), true, Fill::high);
            if (!axis_.range().in_pregnancy()) {
                area_beyond(run, axis_.edge(250), true, Fill::very_high);
            }
            area_beyond(run, axis_.edge(axis_.range().low), false, Fill::low);
            area_beyond(run, axis_.edge(54), false, Fill::very_low);
        });
    }

    void trace() {
        each_run([&](const std::vector<const Reading*>& run) {
            std::vector<Point> line;
            for (const Reading* reading : run) {
                line.push_back({x(reading->at), axis_.y(level(*reading))});
            }
            if (line.size() == 1) {
                canvas_.circle(line.front(), 0.9, Fill::paper, {1.2, Ink::accent, false});
            } else {
                canvas_.polyline(line, {1.3, Ink::accent, false});
            }
            for (const Reading* reading : run) {
                beyond_limit(*reading);
            }
        });
    }

    // LOW and HIGH: an open wedge at the limit, pointing on.
    void beyond_limit(const Reading& reading) {
        if (!reading.censored()) {
            return;
        }
        const double dy = reading.limit() == Limit::below ? 4 : -4;
        const Point at{x(reading.at), axis_.y(level(reading))};
        const Point wedge[] = {{at.x - 2, at.y}, {at.x, at.y + dy}, {at.x + 2, at.y}};
        canvas_.polyline(wedge, {0.9, Ink::text, false});
    }

    void draw_strip(const Strip& strip, double y) {
        const TextStyle style{6.6, false, Anchor::start, Ink::text};
        std::vector<std::array<double, 2>> taken;
        for (const DayMark& box : strip) {
            const double from = x(box.stretch.from);
            const double to = std::max(x(box.stretch.to), from + 2);
            canvas_.rectangle(from, y, to - from, strip_height - 2, box.fill);
            canvas_.frame(from, y, to - from, strip_height - 2, {0.4, Ink::line, false});
            taken.push_back({from, to});
        }
        // Words to the right, else to the left, else none: the table has them.
        for (std::size_t i = 0; i < strip.size(); ++i) {
            const double needed = canvas_.text_width(strip[i].label, style);
            for (const double at : {taken[i][1] + 3, taken[i][0] - 3 - needed}) {
                const bool free = at >= left && at + needed <= right &&
                                  std::none_of(taken.begin(), taken.end(), [&](const auto& other) {
                                      return at < other[1] + 2 && other[0] < at + needed + 2;
                                  });
                if (free && !strip[i].label.empty()) {
                    canvas_.text({at, y + 5.6}, strip[i].label, style);
                    taken.push_back({at, at + needed});
                    break;
                }
            }
        }
    }

    bool pricked_today(const DiaryEntry& entry) const {
        return entry.kind == DiaryKind::finger_prick && entry.glucose &&
               day_.day.interval().contains(entry.at);
    }

    void finger_pricks() {
        for (const DiaryEntry& entry : review_.input.diary) {
            if (pricked_today(entry)) {
                canvas_.circle({x(entry.at), axis_.y(entry.glucose->in(review_.input.unit))}, 2.3,
                               Fill::paper, {1, Ink::very_high, false});
            }
        }
    }

    Canvas& canvas_;
    const FirstReview& review_;
    const ReviewDay& day_;
    LevelAxis axis_;
};

// The trace by the hour, the marks and the diary, in order of time.
std::vector<std::vector<std::string>> table_of(const FirstReview& review, const ReviewDay& day,
                                               const std::vector<Strip>& strips) {
    std::vector<std::pair<Instant, std::array<std::string, 2>>> lines;
    for (Instant at = day.day.from; at < day.day.to; at += std::chrono::hours{1}) {
        const auto readings =
            readings_within(cut(day.view, {at, std::min(at + seconds{3600}, day.day.to)}));
        lines.push_back({at, {"glucose", range_of(readings, review.input.unit)}});
    }
    for (const Strip& strip : strips) {
        for (const DayMark& box : strip) {
            const std::string words = box.label.empty() ? "very low" : box.label;
            lines.push_back({box.stretch.from,
                             {"marked", words + ", until " +
                                            clock_time(review.input.zones.wall_time(box.stretch.to),
                                                       review.input.zones.writing())}});
        }
    }
    for (const DiaryEntry& entry : review.input.diary) {
        if (day.day.interval().contains(entry.at) &&
            (worth_a_lane(entry) || entry.kind == DiaryKind::finger_prick)) {
            lines.push_back({entry.at,
                             {name_of(entry.kind),
                              entry.glucose ? finger_prick_level(entry, entry.glucose->unit)
                                            : entry_words(entry, review.input.foods_left_off)}});
        }
    }
    std::stable_sort(lines.begin(), lines.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<std::vector<std::string>> rows;
    for (const auto& [at, words] : lines) {
        rows.push_back({clock_time(review.input.zones.wall_time(at), review.input.zones.writing()),
                        words[0], words[1]});
    }
    return rows;
}

}  // namespace

Figure day_sheet(const FirstReview& review, const ReviewDay& day, UnderTheTrace under) {
    const std::vector<Strip> strips = day_marks(review, day.day.interval());
    std::optional<DiaryLanes> lanes;
    if (under == UnderTheTrace::diary) {
        lanes.emplace(
            review, day.day, [&day](Instant at) { return place(day.day, at); }, left, right);
    }
    Figure figure;
    figure.width = width;
    figure.height = clock_bottom + strip_height * static_cast<double>(strips.size()) + 2 +
                    (lanes ? lanes->height() : 0) + 1;
    figure.title = "Day sheet of " + full_date(day.day.date, review.input.zones.writing());
    figure.alternative = day.sentence;
    figure.columns = {"time", "what", "seen or written"};
    figure.rows = table_of(review, day, strips);
    figure.draw = [&review, &day, strips, lanes](Canvas& canvas) {
        Sheet(canvas, review, day).draw(strips, lanes);
    };
    return figure;
}

}  // namespace tracewright
