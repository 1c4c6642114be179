#include "coaching/diary_completeness.hpp"

#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

namespace tracewright {

namespace {

using std::chrono::minutes;

bool names(const DiaryEntry& entry, const char* slot) {
    std::string small = entry.slot.value_or("");
    std::ranges::transform(small, small.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return small.find(slot) != std::string::npos;
}

struct Written {
    bool breakfast = false, lunch = false, dinner = false, sleep = false, anything = false;
};

void take(const DiaryEntry& entry, std::chrono::seconds clock, Written& written) {
    written.anything = true;
    written.sleep = written.sleep || entry.kind == DiaryKind::sleep;
    if (entry.kind != DiaryKind::meal || entry.not_described) {
        return;
    }
    const bool slot_told = entry.slot && !entry.slot->empty();
    const auto within = [&](minutes from, minutes to) {
        return !slot_told && !entry.time_uncertain && from <= clock && clock < to;
    };
    written.breakfast |= names(entry, "breakfast") || within(minutes{240}, minutes{630});
    written.lunch |= names(entry, "lunch") || within(minutes{630}, minutes{930});
    written.dinner |=
        names(entry, "dinner") || names(entry, "supper") || within(minutes{930}, minutes{1320});
}

}  // namespace

double DiaryCompleteness::meals_share() const {
    return days == 0 ? 0 : static_cast<double>(breakfasts + lunches + dinners) / (3.0 * days);
}

DiaryCompleteness diary_completeness(std::span<const DiaryEntry> diary,
                                     std::span<const CivilDay> days, const ZoneHistory& clock) {
    DiaryCompleteness result;
    for (const CivilDay& day : days) {
        Written written;
        for (const DiaryEntry& entry : diary) {
            if (day.interval().contains(entry.at)) {
                const WallTime wall = clock.wall_time(entry.at);
                take(entry, wall - std::chrono::floor<std::chrono::days>(wall), written);
            }
        }
        ++result.days;
        result.breakfasts += written.breakfast ? 1 : 0;
        result.lunches += written.lunch ? 1 : 0;
        result.dinners += written.dinner ? 1 : 0;
        result.nights += written.sleep ? 1 : 0;
        if (!written.anything) {
            result.nothing_written.push_back(day.date);
        }
    }
    return result;
}

std::string completeness_sentence(const DiaryCompleteness& c, WayOfWriting way) {
    std::string sentence = fmt::format(
        "Breakfast was written on {} of {} days, lunch on {}, dinner on {}, sleep on {}.",
        c.breakfasts, c.days, c.lunches, c.dinners, c.nights);
    if (!c.nothing_written.empty()) {
        constexpr std::size_t most = 4;
        sentence += " Nothing was written on ";
        for (std::size_t i = 0; i < std::min(most, c.nothing_written.size()); ++i) {
            sentence += (i == 0 ? "" : ", ") + day_words(c.nothing_written[i], way);
        }
        if (c.nothing_written.size() > most) {
            sentence += fmt::format(" and {} more days", c.nothing_written.size() - most);
        }
        sentence += ".";
    }
    return sentence;
}

}  // namespace tracewright
