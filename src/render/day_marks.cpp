#include "render/day_marks.hpp"

#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

std::vector<DayMark> lows_on(const FirstReview& review, const Interval& day) {
    std::vector<DayMark> strip;
    const auto boxes = [&](const std::vector<Episode>& episodes, EpisodeKind kind, Fill fill) {
        for (const Episode& episode : episodes) {
            const Interval shown = intersection({episode.from, episode.to}, day);
            if (episode.kind != kind || shown.length().count() <= 0) {
                continue;
            }
            const std::string words = fmt::format("{} {}", fill == Fill::low ? "low" : "very low",
                                                  hours_and_minutes(episode.lasted));
            const auto around = std::find_if(strip.begin(), strip.end(), [&](const DayMark& box) {
                return intersection(box.stretch, shown).length().count() > 0;
            });
            if (around == strip.end()) {
                strip.push_back({shown, fill, words});
            } else {
                around->label += ", " + words;
                strip.push_back({shown, fill, {}});
            }
        }
    };
    boxes(review.episodes, EpisodeKind::low, Fill::low);
    boxes(review.episodes, EpisodeKind::very_low, Fill::very_low);
    boxes(review.cut_short, EpisodeKind::very_low, Fill::very_low);
    return strip;
}

std::vector<DayMark> suspect_on(const FirstReview& review, const Interval& day) {
    std::vector<DayMark> strip;
    for (const Mark& mark : review.marks) {
        const Interval shown = intersection(mark.stretch, day);
        if (shown.length().count() > 0) {
            strip.push_back({shown, Fill::suspect, name_of(mark.reason)});
        }
    }
    return strip;
}

}  // namespace

std::vector<std::vector<DayMark>> day_marks(const FirstReview& review, const Interval& day) {
    std::vector<std::vector<DayMark>> rows{lows_on(review, day), suspect_on(review, day)};
    std::erase_if(rows, [](const std::vector<DayMark>& row) { return row.empty(); });
    return rows;
}

}  // namespace tracewright
