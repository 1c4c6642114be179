#include "coaching/gaps_without_food.hpp"

#include "coaching/phrases.hpp"

#include <algorithm>
#include <optional>
#include <string>

namespace tracewright {

namespace {

using std::chrono::days;

// Safety rule 8, our own rule.
constexpr std::chrono::hours longest_without_food{12};
// Ours: nobody who writes each day leaves a fast of a week without a word.
constexpr int most_days_without_a_word = 7;

// What people write of it; English, ours, no source. "Fasting glucose" is a level.
constexpr std::string_view fasting =
    "water fast*|juice fast*|fasted|fasting|my fast|fast today|fast day*|fast since|fast until|"
    "hour fast|h fast|day fast|long fast|on a fast|ate nothing|eaten nothing|eating nothing|"
    "nothing eaten|nothing to eat|no food|no meals|without food|not eaten|not eating|"
    "haven't eaten|havent eaten|didn't eat|didnt eat|did not eat|can't eat|cant eat|cannot eat|"
    "couldn't eat|could not eat|only water|just water|nothing but water|skipped all meals|ramadan";
constexpr std::string_view fasting_level =
    "fasting glucose|fasting sugar*|fasting blood*|fasting bg|fasting bs|fasting level*|"
    "fasting reading*|fasting value*|fasting test*|fasting lab*";

bool tells_of_fasting(const DiaryEntry& entry) {
    const std::string text = for_phrases(entry.text);
    return says_any(text, fasting) && !says_any(text, fasting_level);
}

// "Water fast" filed as food is none.
bool is_a_meal(const DiaryEntry& entry) {
    return entry.kind == DiaryKind::meal && !says_any(for_phrases(entry.text), "water fast*");
}

bool shows_that_it_was_kept(const DiaryEntry& entry) {
    return entry.kind != DiaryKind::finger_prick && entry.kind != DiaryKind::lab &&
           entry.kind != DiaryKind::sensor;
}

class GapReader {
  public:
    GapReader(const ZoneHistory& clock, Instant as_of) : clock_(clock), as_of_(as_of) {}

    std::vector<GapWithoutFood> read(std::span<const DiaryEntry> diary) {
        for (const DiaryEntry& entry : diary) {
            if (entry.at > as_of_) {
                break;
            }
            if (is_a_meal(entry)) {
                end_at(entry.at);
                last_meal_ = entry.at;
                others_.clear();
            } else if (last_meal_ && shows_that_it_was_kept(entry)) {
                others_.push_back(&entry);
            }
        }
        end_at(std::nullopt);
        return std::move(gaps_);
    }

  private:
    const ZoneHistory& clock_;
    Instant as_of_;
    std::optional<Instant> last_meal_;
    std::vector<const DiaryEntry*> others_;  // since then
    std::vector<GapWithoutFood> gaps_;

    bool written_on(CivilDate day) const {
        return std::ranges::any_of(
            others_, [&](const DiaryEntry* one) { return clock_.date_at(one->at) == day; });
    }
    bool fasting_told_before(Instant to) const {
        return std::ranges::any_of(others_, [&](const DiaryEntry* one) {
            return one->at <= to && tells_of_fasting(*one);
        });
    }

    // Without a meal it is what is known by `as_of`.
    void end_at(std::optional<Instant> meal) {
        if (!last_meal_) {
            return;
        }
        const CivilDate last = clock_.date_at(meal.value_or(as_of_));
        CivilDate day = clock_.date_at(*last_meal_) + days{1};
        int whole_days = 0;
        for (; day < last && written_on(day); day += days{1}) {
            ++whole_days;
        }
        const bool to_the_meal = meal && day >= last;
        const bool told_today =
            day >= last && !others_.empty() && clock_.date_at(others_.back()->at) == last;
        const Instant to = to_the_meal  ? *meal
                           : told_today ? others_.back()->at
                                        : clock_.day_of(std::min(day, last)).from;
        const bool words = fasting_told_before(to);
        const bool counts =
            words || (whole_days == 0 ? to_the_meal : whole_days < most_days_without_a_word);
        if (counts && to - *last_meal_ > longest_without_food) {
            gaps_.push_back({*last_meal_, to, whole_days > 0});
        }
    }
};

}  // namespace

std::vector<GapWithoutFood> gaps_without_food(std::span<const DiaryEntry> diary,
                                              const ZoneHistory& clock, Instant as_of) {
    return GapReader(clock, as_of).read(diary);
}

}  // namespace tracewright
