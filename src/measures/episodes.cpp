#include "measures/episodes.hpp"

#include "measures/level_runs.hpp"
#include "measures/time_in_bands.hpp"

#include <algorithm>
#include <optional>

namespace tracewright {

namespace {

using std::chrono::seconds;

constexpr seconds quarter_hour = std::chrono::minutes{15};
constexpr seconds extended_low_over = std::chrono::minutes{120};
constexpr seconds extended_high_time = std::chrono::minutes{90};
constexpr seconds extended_high_within = std::chrono::minutes{120};

bool is_very_low(const Reading& r) {
    return band_of(r) == Band::very_low;
}
bool is_high(const Reading& r) {
    return band_of(r) >= Band::high;
}
bool is_very_high(const Reading& r) {
    return band_of(r) == Band::very_high;
}
// A reading with the time it stands, and whether silence follows or precedes it.
struct Stood {
    const Reading* reading;
    seconds time;
    bool silence_before;  // the episode rule: 3 intervals or 20 minutes, the larger
    bool gap_before;      // the weighing rule: 1.5 intervals
};

std::vector<Stood> standing(const TraceView& view) {
    std::vector<Stood> result;
    for_each_standing(view, [&](const Reading& reading, seconds stood) {
        bool silence = true;
        bool gap = true;
        if (!result.empty()) {
            const Reading& before = *result.back().reading;
            const seconds apart = reading.at - before.at;
            silence = silent_between(before, reading);
            gap = 2 * apart > 3 * before.interval();
        }
        result.push_back({&reading, stood, silence, gap});
    });
    return result;
}

// Levels from `first` to `last` begin or renew an episode; up to (down to) `goes_on` is no
// recovery.
struct Definition {
    EpisodeKind kind;
    LevelClass first;
    LevelClass last;
    LevelClass goes_on;
    seconds for_at_least;
    bool strictly;  // longer than that, not as long

    bool lower() const { return first == LevelClass::very_low; }
    bool begins(LevelClass level) const { return first <= level && level <= last; }
    bool is_no_recovery(LevelClass level) const {
        return lower() ? level <= goes_on : level >= goes_on;
    }
};

// Collects one episode at a time while walking the runs.
class Detector {
  public:
    explicit Detector(const Definition& definition) : definition_(definition) {}

    void find(const std::vector<LevelRun>& runs, std::vector<Episode>& found) {
        found_ = &found;
        for (std::size_t i = 0; i < runs.size(); ++i) {
            const LevelRun& run = runs[i];
            if (run.silence_before && i > 0) {
                end_at_silence();
            }
            if (definition_.begins(run.level)) {
                take(run);
            } else if (definition_.is_no_recovery(run.level)) {
                stay(run);
            } else {
                recover(run);
            }
        }
        end_at_silence();
    }

  private:
    void take(const LevelRun& run) {
        if (!running_ && run_.count() == 0) {
            candidate_ = Episode{};
            candidate_.kind = definition_.kind;
            candidate_.from = run.from;
            candidate_.extreme = run.extreme;
            candidate_.start_not_seen = run.silence_before;
            readings_ = 0;
        }
        candidate_.lasted += recovery_ + run.time;
        recovery_ = seconds{0};
        run_ += run.time;
        readings_ += run.readings;
        candidate_.to = run.to;
        if (more_extreme(run.extreme, candidate_.extreme, definition_.lower())) {
            candidate_.extreme = run.extreme;
        }
        running_ = running_ || (definition_.strictly ? run_ > definition_.for_at_least
                                                     : run_ >= definition_.for_at_least);
    }

    // Neither low enough to renew nor recovered: part of a running episode, the end of a candidate.
    void stay(const LevelRun& run) {
        if (running_) {
            candidate_.lasted += recovery_ + run.time;
            recovery_ = seconds{0};
            candidate_.to = run.to;
        }
        run_ = seconds{0};
    }

    void recover(const LevelRun& run) {
        run_ = seconds{0};
        if (!running_) {
            return;
        }
        recovery_ += run.time;
        if (recovery_ >= quarter_hour) {
            close(false);
        }
    }

    void end_at_silence() {
        if (running_) {
            close(true);
        }
        run_ = seconds{0};
    }

    void close(bool end_not_seen) {
        candidate_.end_not_seen = end_not_seen;
        candidate_.single_reading = readings_ == 1;
        found_->push_back(candidate_);
        running_ = false;
        recovery_ = seconds{0};
    }

    const Definition& definition_;
    std::vector<Episode>* found_ = nullptr;
    Episode candidate_;
    seconds run_{0};       // consecutive time of `begins`
    seconds recovery_{0};  // recovered time not yet decided
    bool running_ = false;
    std::uint32_t readings_ = 0;
};

seconds very_high_time(const std::vector<LevelRun>& runs) {
    seconds time{0};
    for (const LevelRun& run : runs) {
        time += run.level == LevelClass::very_high ? run.time : seconds{0};
    }
    return time;
}

// > 250 mg/dL for 90 minutes cumulative within 120; ends at <= 180 for 15 minutes (from memory).
std::vector<Episode> extended_highs(const std::vector<Stood>& readings) {
    std::vector<Episode> found;
    std::size_t window = 0;
    seconds above{0};
    std::optional<Episode> open;
    seconds recovery{0};
    seconds unsure{0};
    const auto close = [&](bool end_not_seen) {
        open->end_not_seen = end_not_seen;
        found.push_back(*open);
        open.reset();
        recovery = unsure = seconds{0};
    };
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const Stood& s = readings[i];
        if (s.silence_before && i > 0) {
            if (open) {
                close(true);
            }
            window = i;
            above = seconds{0};
        }
        above += is_very_high(*s.reading) ? s.time : seconds{0};
        while (readings[window].reading->at + extended_high_within < s.reading->at + s.time) {
            above -= is_very_high(*readings[window].reading) ? readings[window].time : seconds{0};
            ++window;
        }
        if (open) {
            if (is_high(*s.reading)) {
                open->lasted += unsure + s.time;
                open->to = s.reading->at + s.time;
                recovery = unsure = seconds{0};
                if (more_extreme(*s.reading, open->extreme, false)) {
                    open->extreme = *s.reading;
                }
            } else {
                unsure += s.time;
                recovery += s.time;
                if (recovery >= quarter_hour) {
                    close(false);
                    window = i + 1;
                    above = seconds{0};
                }
            }
            continue;
        }
        if (above >= extended_high_time) {
            open = Episode{};
            open->kind = EpisodeKind::extended_high;
            std::size_t first = window;
            while (!is_very_high(*readings[first].reading)) {
                ++first;
            }
            open->from = readings[first].reading->at;
            open->start_not_seen = first == 0 || readings[first].silence_before;
            open->extreme = *readings[first].reading;
            for (std::size_t j = first; j <= i; ++j) {
                open->lasted += readings[j].time;
                if (more_extreme(*readings[j].reading, open->extreme, false)) {
                    open->extreme = *readings[j].reading;
                }
            }
            open->to = s.reading->at + s.time;
        }
    }
    if (open) {
        close(true);
    }
    return found;
}

}  // namespace

const char* name_of(EpisodeKind kind) {
    switch (kind) {
        case EpisodeKind::low:
            return "low";
        case EpisodeKind::very_low:
            return "very_low";
        case EpisodeKind::extended_low:
            return "extended_low";
        case EpisodeKind::high:
            return "high";
        case EpisodeKind::very_high:
            return "very_high";
        case EpisodeKind::extended_high:
            return "extended_high";
    }
    return "";
}

std::vector<Episode> episodes_of(const TraceView& view, EpisodeRules rules) {
    const std::vector<LevelRun> runs = level_runs(view);
    using enum LevelClass;
    const LevelClass very_low_goes_on =
        rules == EpisodeRules::consensus_2017 ? at_seventy : very_low;
    const Definition definitions[] = {
        {EpisodeKind::low, very_low, low, low, quarter_hour, false},
        {EpisodeKind::very_low, very_low, very_low, very_low_goes_on, quarter_hour, false},
        {EpisodeKind::extended_low, very_low, low, low, extended_low_over, true},
        {EpisodeKind::high, high, very_high, high, quarter_hour, false},
        {EpisodeKind::very_high, very_high, very_high, very_high, quarter_hour, false},
    };
    std::vector<Episode> all;
    if (very_high_time(runs) >= extended_high_time) {
        all = extended_highs(standing(view));
    }
    for (const Definition& definition : definitions) {
        Detector(definition).find(runs, all);
    }
    std::stable_sort(all.begin(), all.end(), [](const Episode& a, const Episode& b) {
        return std::pair{a.from, a.kind} < std::pair{b.from, b.kind};
    });
    return all;
}

std::vector<Episode> cut_short_very_lows(const TraceView& view) {
    const std::vector<Stood> readings = standing(view);
    std::vector<Episode> episodes = episodes_of(view);
    std::erase_if(episodes, [](const Episode& e) { return e.kind != EpisodeKind::very_low; });
    std::vector<Episode> found;
    for (std::size_t i = 0; i < readings.size();) {
        if (!is_very_low(*readings[i].reading)) {
            ++i;
            continue;
        }
        Episode run;
        run.kind = EpisodeKind::very_low;
        run.from = readings[i].reading->at;
        run.extreme = *readings[i].reading;
        run.start_not_seen = readings[i].gap_before;
        std::size_t j = i;
        // A gap ends the run: two very low readings with unseen time between them are both cut
        // short.
        const auto goes_on = [&](std::size_t k) {
            return is_very_low(*readings[k].reading) && (k == i || !readings[k].gap_before);
        };
        for (; j < readings.size() && goes_on(j); ++j) {
            run.lasted += readings[j].time;
            run.to = readings[j].reading->at + readings[j].time;
            if (more_extreme(*readings[j].reading, run.extreme, true)) {
                run.extreme = *readings[j].reading;
            }
        }
        run.end_not_seen = j == readings.size() || readings[j].gap_before;
        run.single_reading = j == i + 1;
        const bool told = std::any_of(episodes.begin(), episodes.end(), [&](const Episode& e) {
            return intersection({e.from, e.to}, {run.from, run.to}).length().count() > 0;
        });
        if ((run.end_not_seen || run.start_not_seen) && !told) {
            found.push_back(run);
        }
        i = j;
    }
    return found;
}

}  // namespace tracewright
