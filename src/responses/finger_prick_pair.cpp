#include "responses/finger_prick_pair.hpp"
#include "diary/finger_prick.hpp"

#include <chrono>
#include <cmath>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

std::string minutes_words(double minutes) {
    const long whole = std::lround(minutes);
    const std::string rest = std::to_string(whole % 60);
    return std::to_string(whole / 60) + " h " + rest + " min";
}

void take(FingerPrickPair& pair, const DiaryEntry& prick, const EatingOccasion& occasion) {
    if (prick.at <= occasion.at) {
        pair.before = prick.glucose;  // the latest one before
        return;
    }
    const double minutes = static_cast<double>((prick.at - occasion.at).count()) / 60;
    const bool nearer =
        !pair.after_minutes || std::abs(minutes - 120) < std::abs(*pair.after_minutes - 120);
    if (minutes >= 30 && nearer) {
        pair.after = prick.glucose;
        pair.after_minutes = minutes;
    }
}

void judge(FingerPrickPair& pair) {
    if (!pair.before) {
        pair.left_out_because = "no finger-prick before";
    } else if (!pair.after) {
        pair.left_out_because = "no finger-prick after";
    } else if (std::abs(*pair.after_minutes - 120) > 15) {
        pair.left_out_because = "the one after was at " + minutes_words(*pair.after_minutes) +
                                ", not at 2 h give or take 15 min";
    }
}

}  // namespace

double FingerPrickPair::rise() const {
    return after->in(GlucoseUnit::mg_per_dl)-before->in(GlucoseUnit::mg_per_dl);
}

std::vector<FingerPrickPair> finger_prick_pairs(const Diary& diary,
                                                std::span<const EatingOccasion> occasions) {
    std::vector<FingerPrickPair> pairs;
    for (std::size_t m = 0; m < occasions.size(); ++m) {
        FingerPrickPair pair;
        pair.occasion = m;
        pair.at = occasions[m].at;
        const Instant from = occasions[m].at - 30min;
        Instant to = occasions[m].at + 4h;
        if (m + 1 < occasions.size() && occasions[m + 1].at < to) {
            to = occasions[m + 1].at;
        }
        for (const DiaryEntry& entry : diary) {
            if (has_measured_level(entry) && from <= entry.at && entry.at < to) {
                take(pair, entry, occasions[m]);
            }
        }
        if (pair.before || pair.after) {
            judge(pair);
            pairs.push_back(std::move(pair));
        }
    }
    return pairs;
}

}  // namespace tracewright
