#include "render/diary_lanes.hpp"

#include "findings/wording.hpp"
#include "render/text_measure.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace tracewright {

namespace {

constexpr double row_height = 9.4;
constexpr double lane_gap = 1.6;
constexpr double name_gap = 4;
constexpr double label_gap = 3;
constexpr double longest_label = 200;
constexpr double shortest_label = 24;
constexpr std::size_t most_rows = 4;
constexpr double tick_height = 4;
constexpr std::ptrdiff_t most_bare_entries = 8;  // with words, in one lane of one day
constexpr TextStyle label_style{6.8, false, Anchor::start, Ink::text};

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

// Without words of its own: steps by the quarter hour, not a walk.
bool bare(const DiaryEntry* entry) {
    return entry->text.empty() && !entry->slot && !entry->carbohydrate_g && !entry->until;
}

Interval lasting(const DiaryEntry& entry) {
    return {entry.at, std::max(entry.until.value_or(entry.at), entry.at + std::chrono::seconds{1})};
}

}  // namespace

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

std::string entry_words(const DiaryEntry& entry, bool foods_left_off) {
    if (foods_left_off && (entry.kind == DiaryKind::meal || entry.kind == DiaryKind::alcohol)) {
        return entry.slot.value_or(name_of(entry.kind));
    }
    std::string text = entry.text;
    const auto add = [&](const std::string& more) { text += (text.empty() ? "" : ", ") + more; };
    if (text.empty() && entry.slot) {
        text = *entry.slot;
    }
    if (entry.carbohydrate_g && !foods_left_off) {
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

// Fills a lane's rows from left to right.
class DiaryLanes::Rows {
  public:
    Rows(TextMeasure& measure, double left, double right)
        : measure_(measure), left_(left), right_(right) {
        ends_.fill(left);
    }

    /// Gives `entry` its words and a row where they meet no others; else leaves it without.
    void place(Placed& entry, const std::string& text) {
        std::string words = measure_.shortened(text, longest_label, label_style);
        double width = measure_.width(words, label_style);
        const bool within = width + 2 * label_gap <= entry.to - entry.from;
        const double after = (within ? entry.from : entry.to) + label_gap;
        const bool to_the_right = after + width <= right_;
        const double begins = to_the_right ? entry.from : entry.from - label_gap - width;
        auto* row = begins < left_ ? ends_.end() : first_free(begins);
        if (row == ends_.end() && right_ - after >= shortest_label) {
            row = first_free(entry.from);
            words = measure_.shortened(words, right_ - after, label_style);
            width = measure_.width(words, label_style);
            entry.anchor = Anchor::start;
        } else {
            entry.anchor = to_the_right ? Anchor::start : Anchor::end;
        }
        if (row == ends_.end()) {
            return;
        }
        const bool starts = entry.anchor == Anchor::start;
        entry.label = words;
        entry.label_x = starts ? after : entry.from - label_gap;
        entry.row = static_cast<std::size_t>(row - ends_.begin());
        *row = std::max(entry.to, starts ? after + width : entry.from) + 2 * label_gap;
    }

  private:
    std::array<double, most_rows>::iterator first_free(double from) {
        return std::find_if(ends_.begin(), ends_.end(), [from](double end) { return end <= from; });
    }

    TextMeasure& measure_;
    double left_;
    double right_;
    std::array<double, most_rows> ends_{};
};

DiaryLanes::DiaryLanes(const FirstReview& review, const CivilDay& day,
                       const std::function<double(Instant)>& x_of, double left, double right)
    : left_(left), right_(right) {
    TextMeasure measure;
    for (const char* name : {"Ate", "Moved", "Slept", "Felt", "Took"}) {
        std::vector<const DiaryEntry*> entries;
        for (const DiaryEntry& entry : review.input.diary) {
            const bool today = intersection(lasting(entry), day.interval()).length().count() > 0;
            if (today && lane_of(entry.kind) == std::string_view(name) && worth_a_lane(entry)) {
                entries.push_back(&entry);
            }
        }
        const auto bare_entries = std::count_if(entries.begin(), entries.end(), bare);
        Lane lane{name, 1, 0, {}};
        Rows rows(measure, left, right);
        for (const DiaryEntry* entry : entries) {
            const Interval shown = intersection(lasting(*entry), day.interval());
            Placed placed;
            placed.from = x_of(shown.from);
            placed.to = x_of(shown.to);
            placed.began_before = entry->at < day.from;
            if (!bare(entry) || bare_entries <= most_bare_entries) {
                rows.place(
                    placed,
                    one_line(first_wording(entry_words(*entry, review.input.foods_left_off))));
            }
            lane.rows = std::max(lane.rows, placed.row + 1);
            lane.entries.push_back(std::move(placed));
        }
        const bool ticks = std::any_of(lane.entries.begin(), lane.entries.end(),
                                       [](const Placed& entry) { return entry.label.empty(); });
        lane.height = row_height * static_cast<double>(lane.rows) + (ticks ? tick_height : 0);
        height_ += lane.height + lane_gap;
        lanes_.push_back(std::move(lane));
    }
}

void DiaryLanes::draw(Canvas& canvas, double top) const {
    double y = top;
    for (const Lane& lane : lanes_) {
        canvas.rectangle(left_, y, right_ - left_, lane.height, Fill::lane);
        canvas.text({left_ - name_gap, y + 7}, lane.name, {7.5, false, Anchor::end, Ink::quiet});
        for (const Placed& entry : lane.entries) {
            const bool tick = entry.label.empty();
            const double bottom =
                tick ? y + lane.height : y + row_height * (1.0 + static_cast<double>(entry.row));
            const double high = tick ? tick_height : row_height;
            if (entry.to - entry.from > 2) {
                canvas.rectangle(entry.from, bottom - high + 1, entry.to - entry.from, high - 2,
                                 Fill::inner_ribbon);
            }
            if (!entry.began_before) {
                canvas.line({entry.from, bottom - high + 0.6}, {entry.from, bottom - 0.6},
                            {1.5, Ink::accent, false});
            }
            if (!tick) {
                TextStyle style = label_style;
                style.anchor = entry.anchor;
                canvas.text({entry.label_x, bottom - row_height + 7}, entry.label, style);
            }
        }
        y += lane.height + lane_gap;
    }
}

}  // namespace tracewright
