#include "trace/wear.hpp"

#include <algorithm>
#include <map>

namespace tracewright {

namespace {

using std::chrono::seconds;

constexpr seconds interval_if_unknown = std::chrono::minutes{5};
constexpr seconds longest_interval = std::chrono::hours{6};
constexpr seconds jitter{10};
// A sensor that keeps another step for this long has changed its step; fewer are lost readings.
constexpr std::size_t steps_of_a_run = 12;

// To the whole minute where that is near: sensors drift by seconds.
seconds tidy(seconds step) {
    const seconds whole = std::chrono::round<std::chrono::minutes>(step);
    return whole.count() > 0 && std::chrono::abs(step - whole) <= jitter ? whole : step;
}

struct StepCounts {
    std::vector<std::size_t> minutes =
        std::vector<std::size_t>(longest_interval / std::chrono::minutes{1} + 1);
    std::map<seconds, std::size_t> others;

    void add(seconds step) {
        if (step > longest_interval) {
            return;
        }
        const auto whole = static_cast<std::size_t>(step / std::chrono::minutes{1});
        if (step % std::chrono::minutes{1} == seconds{0}) {
            ++minutes[whole];
        } else {
            ++others[step];
        }
    }

    // The most common step; of equally common ones the shortest.
    seconds mode() const {
        seconds best = interval_if_unknown;
        std::size_t most = 0;
        for (std::size_t i = 0; i < minutes.size(); ++i) {
            if (minutes[i] > most) {
                most = minutes[i];
                best = std::chrono::minutes{i};
            }
        }
        for (const auto& [step, times] : others) {
            if (times > most || (times == most && step < best)) {
                most = times;
                best = step;
            }
        }
        return best;
    }
};

// The step of a wear that keeps one, to the second, throughout: most do, and need no counting.
std::optional<seconds> only_step(std::span<const Reading> readings) {
    if (readings.size() < 2) {
        return std::nullopt;
    }
    const seconds step = readings[1].at - readings[0].at;
    for (std::size_t i = 2; i < readings.size(); ++i) {
        if (readings[i].at - readings[i - 1].at != step) {
            return std::nullopt;
        }
    }
    return step <= longest_interval ? std::optional{tidy(step)} : std::nullopt;
}

seconds most_common_step(std::span<const Reading> readings) {
    StepCounts counts;
    for (std::size_t i = 1; i < readings.size(); ++i) {
        counts.add(tidy(readings[i].at - readings[i - 1].at));
    }
    return counts.mode();
}

// Sets them and gives the usual one.
seconds set_all_intervals(std::span<Reading> readings) {
    const auto only = only_step(readings);
    const seconds usual = only ? *only : most_common_step(readings);
    for (Reading& reading : readings) {
        reading.set_interval(usual);
    }
    if (only) {
        return usual;
    }
    std::size_t begin = 0;  // first reading of the run of like steps
    while (begin + 1 < readings.size()) {
        const seconds step = tidy(readings[begin + 1].at - readings[begin].at);
        std::size_t end = begin + 1;
        while (end + 1 < readings.size() && tidy(readings[end + 1].at - readings[end].at) == step) {
            ++end;
        }
        if (step != usual && step <= longest_interval && end - begin >= steps_of_a_run) {
            for (std::size_t i = begin; i < end; ++i) {
                readings[i].set_interval(step);
            }
            // The run's last reading keeps the run's step unless the usual one follows it.
            const bool usual_follows =
                end + 1 < readings.size() && tidy(readings[end + 1].at - readings[end].at) == usual;
            if (!usual_follows) {
                readings[end].set_interval(step);
            }
        }
        begin = end;
    }
    return usual;
}

}  // namespace

const char* words_for(WearEnd end) {
    switch (end) {
        case WearEnd::not_told:
            return "not told";
        case WearEnd::planned:
            return "reached its planned end";
        case WearEnd::fell_off:
            return "fell off";
        case WearEnd::sensor_failed:
            return "sensor failed";
        case WearEnd::removed:
            return "taken off";
        case WearEnd::still_on:
            return "still on";
    }
    return "not told";
}

Interval Wear::sensed_span() const {
    return {readings.front().at, readings.back().at + readings.back().interval()};
}

seconds Wear::lasted() const {
    return empty() ? seconds{0} : readings.back().at - start;
}

TraceView Wear::view() const {
    return empty() ? TraceView{{}, start, start}
                   : TraceView{readings, sensed_span().from, sensed_span().to};
}

seconds interval_found(std::span<const Reading> readings) {
    const auto only = only_step(readings);
    return only ? *only : most_common_step(readings);
}

void set_intervals(std::vector<Reading>& readings) {
    set_all_intervals(readings);
}

std::vector<Wear> wears_of(std::vector<Reading> readings, const std::string& source,
                           seconds new_wear_after) {
    std::vector<Wear> wears;
    const auto end_of_wear = [&](std::vector<Reading>::const_iterator begin) {
        const auto silence = std::adjacent_find(
            begin, readings.cend(),
            [&](const Reading& a, const Reading& b) { return b.at - a.at >= new_wear_after; });
        return silence == readings.cend() ? silence : std::next(silence);
    };
    const auto add = [&](std::vector<Reading> own) {
        Wear wear;
        wear.label = "wear " + std::to_string(wears.size() + 1);
        wear.source = source;
        wear.readings = std::move(own);
        wear.start = wear.readings.front().at;
        wear.interval = set_all_intervals(wear.readings);
        wears.push_back(std::move(wear));
    };
    if (!readings.empty() && end_of_wear(readings.cbegin()) == readings.cend()) {
        add(std::move(readings));  // one wear, as nearly always: nothing is copied
        return wears;
    }
    for (auto begin = readings.cbegin(); begin != readings.cend();) {
        const auto end = end_of_wear(begin);
        add({begin, end});
        begin = end;
    }
    return wears;
}

}  // namespace tracewright
