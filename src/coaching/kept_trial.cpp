#include "coaching/kept_trial.hpp"

#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace tracewright {

const char* name_of(TrialState state) {
    constexpr std::array names = {"planned", "running", "ended", "stopped"};
    return names.at(static_cast<std::size_t>(state));
}

TrialState state_of(const KeptTrial& kept, CivilDate today) {
    if (kept.stopped_on) {
        return TrialState::stopped;
    }
    return today < kept.trial.first_day()  ? TrialState::planned
           : today > kept.trial.last_day() ? TrialState::ended
                                           : TrialState::running;
}

bool goes_on(const KeptTrial& kept, CivilDate today) {
    const TrialState state = state_of(kept, today);
    return state == TrialState::planned || state == TrialState::running;
}

const KeptTrial* one_that_goes_on(std::span<const KeptTrial> trials, CivilDate today) {
    const auto found =
        std::ranges::find_if(trials, [&](const KeptTrial& kept) { return goes_on(kept, today); });
    return found == trials.end() ? nullptr : &*found;
}

std::optional<bool> allotted_a(const Trial& trial, CivilDate day) {
    for (const TrialBlock& block : trial.blocks) {
        if (day == block.day_of_a()) {
            return true;
        }
        if (day == block.day_of_b()) {
            return false;
        }
    }
    return std::nullopt;
}

std::vector<CivilDate> not_told(const KeptTrial& kept, CivilDate today) {
    std::vector<CivilDate> days;
    for (const TrialBlock& block : kept.trial.blocks) {
        std::ranges::copy_if(block.days, std::back_inserter(days), [&](CivilDate day) {
            return day < today && !kept.done.contains(day);
        });
    }
    return days;
}

TrialReading read_kept(const KeptTrial& kept, const ReviewInput& input) {
    if (!kept.stopped_on) {
        return read_trial(kept.trial, input, kept.done);
    }
    TrialReading reading;
    reading.finding.code = "trial";
    reading.finding.question = kept.trial.question;
    reading.finding.answer = Answer::cannot_tell;
    reading.finding.sentence =
        fmt::format("This trial was stopped on {} ({}): it is told as stopped and gives no answer.",
                    full_date(*kept.stopped_on, input.zones.writing()), kept.stopped_because);
    reading.finding.client_sentence = "You stopped this trial, so it can't tell.";
    return reading;
}

}  // namespace tracewright
