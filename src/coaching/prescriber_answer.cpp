#include "coaching/prescriber_answer.hpp"

#include "diary/says_something.hpp"

namespace tracewright {

namespace {

constexpr std::chrono::days holds_for{90};

}  // namespace

bool holds(const PrescriberAnswer& answer, Instant at, const MedicineTimeline& medicines,
           const ZoneHistory& clock) {
    const CivilDate today = clock.date_at(at);
    const CivilDate last = answer.valid_until.value_or(answer.on + holds_for);
    if (!answer.agreed || !says_something(answer.by) || today < answer.on || today > last) {
        return false;
    }
    return answer.about == AskedAbout::diabetes_type ||
           medicines.events_between(clock.day_of(answer.on).from, at + std::chrono::seconds{1})
               .empty();
}

const PrescriberAnswer* answer_that_holds(std::span<const PrescriberAnswer> answers,
                                          AskedAbout about, Instant at,
                                          const MedicineTimeline& medicines,
                                          const ZoneHistory& clock) {
    const PrescriberAnswer* newest = nullptr;
    for (const PrescriberAnswer& answer : answers) {
        const bool later = newest == nullptr || answer.on >= newest->on;
        if (answer.about == about && later) {
            newest = &answer;
        }
    }
    // A later 'no' takes back an earlier 'yes': the newest answer decides, whatever it says.
    return newest != nullptr && holds(*newest, at, medicines, clock) ? newest : nullptr;
}

}  // namespace tracewright
