#include "findings/wording.hpp"
#include "measures/time_in_bands.hpp"
#include "render/level_axis.hpp"
#include "render/review_figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

using std::chrono::seconds;

constexpr double width = 495;
constexpr double left = 38;
constexpr double right = width - 2;
constexpr double top = 12;
constexpr double bottom = 104;
constexpr double lanes_top = 127;
constexpr double lane_height = 11.5;

struct Lane {
    const char* name;
    std::vector<DiaryKind> kinds;
};

const std::vector<Lane>& lanes() {
    static const std::vector<Lane> all = {
        {"Ate", {DiaryKind::meal, DiaryKind::alcohol}},
        {"Moved", {DiaryKind::movement}},
        {"Slept", {DiaryKind::sleep}},
        {"Felt",
         {DiaryKind::mood, DiaryKind::symptom, DiaryKind::illness, DiaryKind::note,
          DiaryKind::sensor}},
        {"Took", {DiaryKind::medicine, DiaryKind::ketones, DiaryKind::lab}}};
    return all;
}

bool in_lane(const DiaryEntry& entry, const Lane& lane) {
    return std::find(lane.kinds.begin(), lane.kinds.end(), entry.kind) != lane.kinds.end();
}

// Sitting still is no movement to draw.
bool worth_a_lane(const DiaryEntry& entry) {
    if (entry.kind != DiaryKind::movement) {
        return true;
    }
    const bool still = entry.text.find("SEDENTARY") != std::string::npos ||
                       entry.text.find("sedentary") != std::string::npos;
    return !still && !(entry.number && *entry.number == 0);
}

// Up to `most` bytes of a text on one line, not ending within a character.
std::string one_line(std::string text, std::size_t most) {
    for (char& c : text) {
        c = c == '\n' || c == '\r' ? ' ' : c;
    }
    if (text.size() > most) {
        text.resize(most);
        while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0U) == 0x80U) {
            text.pop_back();
        }
        if (!text.empty() && static_cast<unsigned char>(text.back()) >= 0xC0U) {
            text.pop_back();
        }
        text += "\xE2\x80\xA6";
    }
    return text;
}

std::string entry_words(const DiaryEntry& entry) {
    std::string text = entry.text;
    if (text.empty() && entry.slot) {
        text = *entry.slot;
    }
    if (entry.carbohydrate_g) {
        text += fmt::format("{}{:.0f} g carbohydrate", text.empty() ? "" : ", ",
                            entry.carbohydrate_g->value);
    }
    if (entry.number && entry.kind != DiaryKind::meal) {
        const std::string number = fmt::format("{:g} {}", *entry.number, entry.number_unit);
        text += (text.empty() ? "" : ", ") + number;
    }
    if (entry.not_described && text.empty()) {
        text = "not described";
    }
    return text.empty() ? name_of(entry.kind) : text;
}

// Of a text written in two languages side by side, the first.
std::string first_wording(const std::string& text) {
    return text.substr(0, text.find(" | "));
}

class Sheet {
  public:
    Sheet(Canvas& canvas, const FirstReview& review, const ReviewDay& day)
        : canvas_(canvas),
          review_(review),
          day_(day),
          axis_(review.input.unit, highest(), top, bottom) {}

    void draw() {
        marks();
        hours();
        beyond_edges();
        axis_.draw(canvas_, left, right);
        trace();
        finger_pricks();
        diary_lanes();
    }

  private:
    double x(Instant at) const {
        const auto span = static_cast<double>(day_.day.length().count());
        return left + static_cast<double>((at - day_.day.from).count()) / span * (right - left);
    }
    double level(const Reading& reading) const { return reading.value().in(review_.input.unit); }

    double highest() const {
        double value = 0;
        for (const Reading& reading : readings_within(day_.view)) {
            value = std::max(value, level(reading));
        }
        return value;
    }

    // Every third hour the clock shows; an hour shown twice is written twice.
    void hours() {
        WallClock clock(review_.input.zones);
        for (Instant at = day_.day.from; at <= day_.day.to; at += seconds{900}) {
            const WallTime wall = clock.at(at);
            const auto since = wall - std::chrono::floor<std::chrono::days>(wall);
            if (since % std::chrono::hours{3} != seconds{0} && at != day_.day.to) {
                continue;
            }
            canvas_.line({x(at), top}, {x(at), bottom}, {0.35, Ink::faint, false});
            const Anchor anchor = at == day_.day.from ? Anchor::start
                                  : at == day_.day.to ? Anchor::end
                                                      : Anchor::middle;
            const std::string label = at == day_.day.to ? "24:00" : clock_time(wall);
            canvas_.text({x(at), bottom + 11}, label, {7.5, false, anchor, Ink::quiet});
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
            area_beyond(run, axis_.edge(180), true, Fill::high);
            area_beyond(run, axis_.edge(250), true, Fill::very_high);
            area_beyond(run, axis_.edge(70), false, Fill::low);
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

    // Between trace and lanes: what is suspect, hatched along the base.
    void marks() {
        for (const Mark& mark : review_.marks) {
            const Interval shown = intersection(mark.stretch, day_.day.interval());
            if (shown.length().count() <= 0) {
                continue;
            }
            const double from = x(shown.from);
            const double to = std::max(x(shown.to), from + 2);
            canvas_.rectangle(from, bottom + 15, to - from, 6, Fill::suspect);
            canvas_.frame(from, bottom + 15, to - from, 6, {0.4, Ink::line, false});
            if (to - from > canvas_.text_width(name_of(mark.reason),
                                               {6, false, Anchor::start, Ink::quiet}) +
                                4 ||
                mark.reason == MarkReason::warm_up) {
                canvas_.text({to + 2, bottom + 20.5}, name_of(mark.reason),
                             {6, false, Anchor::start, Ink::quiet});
            }
        }
    }

    void finger_pricks() {
        for (const DiaryEntry& entry : review_.input.diary) {
            if (entry.kind == DiaryKind::finger_prick && entry.glucose &&
                day_.day.interval().contains(entry.at)) {
                canvas_.circle({x(entry.at), axis_.y(entry.glucose->in(review_.input.unit))}, 2.3,
                               Fill::paper, {1, Ink::very_high, false});
            }
        }
    }

    void diary_lanes() {
        for (std::size_t l = 0; l < lanes().size(); ++l) {
            const double y = lanes_top + static_cast<double>(l) * lane_height;
            canvas_.rectangle(left, y, right - left, lane_height - 1.5, Fill::lane);
            canvas_.text({left - 4, y + 7.8}, lanes()[l].name,
                         {7.5, false, Anchor::end, Ink::quiet});
            const std::vector<const DiaryEntry*> entries = entries_of(lanes()[l]);
            for (std::size_t i = 0; i < entries.size(); ++i) {
                const double next = i + 1 < entries.size() ? x(entries[i + 1]->at) : right;
                lane_entry(*entries[i], y, next);
            }
        }
    }

    std::vector<const DiaryEntry*> entries_of(const Lane& lane) const {
        std::vector<const DiaryEntry*> entries;
        for (const DiaryEntry& entry : review_.input.diary) {
            const Instant until = std::max(entry.until.value_or(entry.at), entry.at + seconds{1});
            const bool today =
                intersection({entry.at, until}, day_.day.interval()).length().count() > 0;
            if (today && in_lane(entry, lane) && worth_a_lane(entry)) {
                entries.push_back(&entry);
            }
        }
        return entries;
    }

    // A bar for what lasts, a stroke for what happened; as many words as fit before the next.
    void lane_entry(const DiaryEntry& entry, double y, double next) {
        const Interval shown = intersection(
            {entry.at, std::max(entry.until.value_or(entry.at), entry.at + seconds{1})},
            day_.day.interval());
        const double from = x(shown.from);
        const double to = x(shown.to);
        if (to - from > 2) {
            canvas_.rectangle(from, y + 1.2, to - from, lane_height - 3.9, Fill::inner_ribbon);
        } else {
            canvas_.line({from, y + 0.5}, {from, y + lane_height - 2}, {1.6, Ink::accent, false});
        }
        const TextStyle style{6.6, false, Anchor::start, Ink::text};
        const std::string words = first_wording(entry_words(entry));
        for (const std::size_t most :
             {std::size_t{44}, std::size_t{30}, std::size_t{20}, std::size_t{12}, std::size_t{7}}) {
            const std::string label = one_line(words, most);
            if (from + 3 + canvas_.text_width(label, style) <= next - 2) {
                canvas_.text({from + 3, y + 7.6}, label, style);
                return;
            }
        }
    }

    Canvas& canvas_;
    const FirstReview& review_;
    const ReviewDay& day_;
    LevelAxis axis_;
};

}  // namespace

Figure day_sheet(const FirstReview& review, const ReviewDay& day) {
    Figure figure;
    figure.width = width;
    figure.height = lanes_top + lane_height * static_cast<double>(lanes().size()) + 2;
    figure.title = "Day sheet of " + full_date(day.day.date);
    figure.alternative = day.sentence;
    figure.columns = {"time", "what", "written"};
    for (const DiaryEntry& entry : review.input.diary) {
        if (day.day.interval().contains(entry.at) && worth_a_lane(entry)) {
            const std::string words =
                entry.glucose ? glucose_words(entry.glucose->value(), entry.glucose->unit)
                              : entry_words(entry);
            figure.rows.push_back({clock_time(review.input.zones.wall_time(entry.at)),
                                   name_of(entry.kind), one_line(words, 400)});
        }
    }
    figure.draw = [&review, &day](Canvas& canvas) { Sheet(canvas, review, day).draw(); };
    return figure;
}

}  // namespace tracewright
