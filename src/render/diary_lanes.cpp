#include "render/diary_lanes.hpp"

#include "findings/wording.hpp"
#include "render/text_measure.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace tracewright {

namespace {

constexpr double row_height = 9.4;
constexpr double lane_gap = 1.6;
constexpr double name_gap = 4;
constexpr double label_gap = 3;
constexpr double longest_label = 200;
constexpr double shortest_label = 24;
constexpr std::size_t most_rows = 4;
constexpr TextStyle label_style{6.8, false, Anchor::start, Ink::text};

const char* lane_of(DiaryKind kind) {
    switch (kind) {
        case DiaryKind::meal:
        case DiaryKind::alcohol:
            return "Ate";
        case DiaryKind::movement:
            return "Moved";
        case DiaryKind::sleep:
            return "Slept";
        case DiaryKind::medicine:
        case DiaryKind::ketones:
        case DiaryKind::lab:
            return "Took";
        case DiaryKind::mood:
        case DiaryKind::symptom:
        case DiaryKind::illness:
        case DiaryKind::note:
        case DiaryKind::sensor:
            return "Felt";
        case DiaryKind::finger_prick:
            break;
    }
    return "";
}

std::string number_words(const DiaryEntry& entry) {
    if (entry.kind == DiaryKind::sleep && entry.number_unit == "h") {
        return hours_and_minutes(std::chrono::seconds{std::llround(*entry.number * 3600)});
    }
    return entry.number_unit.empty() ? fmt::format("{:g}", *entry.number)
                                     : fmt::format("{:g} {}", *entry.number, entry.number_unit);
}

std::string one_line(std::string text) {
    for (char& c : text) {
        c = static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
    }
    return text;
}

// Of a text written in two languages side by side, the first.
std::string first_wording(const std::string& text) {
    return text.substr(0, text.find(" | "));
}

Interval lasting(const DiaryEntry& entry) {
    return {entry.at, std::max(entry.until.value_or(entry.at), entry.at + std::chrono::seconds{1})};
}

}  // namespace

std::string entry_words(const DiaryEntry& entry) {
    std::string text = entry.text;
    const auto add = [&](const std::string& more) { text += (text.empty() ? "" : ", ") + more; };
    if (text.empty() && entry.slot) {
        text = *entry.slot;
    }
    if (entry.carbohydrate_g) {
        add(fmt::format("{:.0f} g carbohydrate", entry.carbohydrate_g->value));
    }
    if (entry.number && entry.kind != DiaryKind::meal) {
        add(number_words(entry));
    }
    if (entry.not_described && text.empty()) {
        text = "not described";
    }
    return text.empty() ? name_of(entry.kind) : text;
}

bool worth_a_lane(const DiaryEntry& entry) {
    if (entry.kind != DiaryKind::movement) {
        return entry.kind != DiaryKind::finger_prick;
    }
    const bool still = entry.text.find("SEDENTARY") != std::string::npos ||
                       entry.text.find("sedentary") != std::string::npos;
    return !still && !(entry.number && *entry.number == 0);
}

DiaryLanes::DiaryLanes(const FirstReview& review, const CivilDay& day,
                       const std::function<double(Instant)>& x_of, double left, double right)
    : left_(left), right_(right) {
    TextMeasure measure;
    for (const char* name : {"Ate", "Moved", "Slept", "Felt", "Took"}) {
        Lane lane{name, 1, {}};
        std::array<double, most_rows> row_end;
        row_end.fill(left);
        for (const DiaryEntry& entry : review.input.diary) {
            const Interval shown = intersection(lasting(entry), day.interval());
            if (shown.length().count() <= 0 || lane_of(entry.kind) != std::string_view(name) ||
                !worth_a_lane(entry)) {
                continue;
            }
            Placed placed;
            placed.from = x_of(shown.from);
            placed.to = x_of(shown.to);
            placed.began_before = entry.at < day.from;
            const std::string words = measure.shortened(one_line(first_wording(entry_words(entry))),
                                                        longest_label, label_style);
            const double width = measure.width(words, label_style);
            const bool within = width + 2 * label_gap <= placed.to - placed.from;
            const double after = (within ? placed.from : placed.to) + label_gap;
            const bool fits_after = after + width <= right;
            const double begins = fits_after ? placed.from : placed.from - label_gap - width;
            const auto* const free = std::find_if(row_end.begin(), row_end.end(), [&](double end) {
                return end <= begins && begins >= left;
            });
            if (free != row_end.end()) {
                placed.row = static_cast<std::size_t>(free - row_end.begin());
                placed.label = words;
                placed.anchor = fits_after ? Anchor::start : Anchor::end;
                placed.label_x = fits_after ? after : placed.from - label_gap;
            } else {
                // Room for some of the words in the emptiest row, or for the mark alone.
                const auto* const emptiest = std::min_element(row_end.begin(), row_end.end());
                placed.row = static_cast<std::size_t>(emptiest - row_end.begin());
                placed.label_x = std::max(after, *emptiest);
                const double room = right - placed.label_x;
                placed.label =
                    room < shortest_label ? "" : measure.shortened(words, room, label_style);
            }
            const double label_end = placed.anchor == Anchor::start && !placed.label.empty()
                                         ? placed.label_x + measure.width(placed.label, label_style)
                                         : placed.from;
            row_end[placed.row] =
                std::max(row_end[placed.row], std::max(placed.to, label_end) + 2 * label_gap);
            lane.rows = std::max(lane.rows, placed.row + 1);
            lane.entries.push_back(std::move(placed));
        }
        height_ += row_height * static_cast<double>(lane.rows) + lane_gap;
        lanes_.push_back(std::move(lane));
    }
}

void DiaryLanes::draw(Canvas& canvas, double top) const {
    double y = top;
    for (const Lane& lane : lanes_) {
        const double height = row_height * static_cast<double>(lane.rows);
        canvas.rectangle(left_, y, right_ - left_, height, Fill::lane);
        canvas.text({left_ - name_gap, y + 7}, lane.name, {7.5, false, Anchor::end, Ink::quiet});
        for (const Placed& entry : lane.entries) {
            const double row_top = y + row_height * static_cast<double>(entry.row);
            if (entry.to - entry.from > 2) {
                canvas.rectangle(entry.from, row_top + 1, entry.to - entry.from, row_height - 2,
                                 Fill::inner_ribbon);
            }
            if (!entry.began_before) {
                canvas.line({entry.from, row_top + 0.6}, {entry.from, row_top + row_height - 0.6},
                            {1.5, Ink::accent, false});
            }
            if (!entry.label.empty()) {
                TextStyle style = label_style;
                style.anchor = entry.anchor;
                canvas.text({entry.label_x, row_top + 7}, entry.label, style);
            }
        }
        y += height + lane_gap;
    }
}

}  // namespace tracewright
