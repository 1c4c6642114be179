#include "coaching/due_checks.hpp"

#include "coaching/client_medicines.hpp"
#include "coaching/next_lab.hpp"
#include "diary/finger_prick.hpp"
#include "findings/wording.hpp"
#include "responses/finger_prick_pair.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

class Checker {
  public:
    Checker(const CaseloadClient& client, const ZoneHistory& clock, Instant as_of)
        : client_(client),
          clock_(clock),
          as_of_(as_of),
          today_(clock.date_at(as_of)),
          medicines_(client_medicines(client.facts, clock)),
          closed_(client.closed_since ? *client.closed_since
                                      : closed_since({client.facts, client.wears, client.diary,
                                                      medicines_, clock, as_of},
                                                     client.trials)) {}

    std::vector<DueCheck> checks() {
        two_hours();
        trials();
        agreed();
        third_day();
        laboratory();
        return std::move(checks_);
    }

  private:
    const CaseloadClient& client_;
    const ZoneHistory& clock_;
    Instant as_of_;
    CivilDate today_;
    MedicineTimeline medicines_;
    ClosedSince closed_;
    std::vector<DueCheck> checks_;

    // What was closed since is not sent to the client as a thing to do (safety rules 7 to 12).
    void not_gone_on_with(CheckKind kind, Instant by, const std::string& what,
                          const std::string& because) {
        checks_.push_back({kind, by, what + " is not to be gone on with now:" + because,
                           "Tell the client, and settle that first or end it.", ""});
    }

    void two_hours() {
        // A pair of the last 12 hours has a finger-prick of the last day: without one, none is due.
        const bool pricked = std::ranges::any_of(client_.diary, [&](const DiaryEntry& entry) {
            return has_measured_level(entry) && as_of_ - entry.at < 24h;
        });
        if (!pricked) {
            return;
        }
        const auto occasions = eating_occasions(client_.diary, clock_);
        for (const FingerPrickPair& pair : finger_prick_pairs(client_.diary, occasions)) {
            const auto since = as_of_ - pair.at;
            if (pair.before && !pair.after && since >= 105min && since < 12h) {
                const std::string slot = name_of(occasions[pair.occasion].slot);
                checks_.push_back(
                    {CheckKind::two_hours, pair.at + 2h,
                     fmt::format("The two-hour check of {} ({}) is due.", slot,
                                 day_and_time(clock_.wall_time(pair.at), clock_.writing())),
                     "Ask for the finger-prick two hours after the first bite.",
                     client_.facts.cautions.eating.positive == Answered::yes
                         ? ""
                         : fmt::format("Did you do a finger-prick two hours after {}? Please send "
                                       "me the number and the time.",
                                       slot)});
            }
        }
    }

    void trials() {
        for (const KeptTrial& kept : client_.trials) {
            const auto a = allotted_a(kept.trial, today_);
            const TrialState state = state_of(kept, today_);
            if (state == TrialState::running && a) {
                trial_day(kept, *a);
            }
            const Instant end = clock_.day_of(kept.trial.last_day()).interval().to;
            const bool read = client_.last_trial_read && *client_.last_trial_read >= end;
            if (state == TrialState::ended && !read) {
                trial_ended(kept, end);
            }
        }
    }

    void trial_day(const KeptTrial& kept, bool a) {
        if (const std::string& closed = closed_.trials.at(kept.number); !closed.empty()) {
            not_gone_on_with(CheckKind::trial_day, clock_.day_of(today_).from,
                             fmt::format("Trial {}", kept.number), closed);
            return;
        }
        const std::string& arm = a ? kept.trial.a : kept.trial.b;
        const auto open = not_told(kept, today_);
        std::string next = "Send the words of the day.";
        if (!open.empty()) {
            next += fmt::format(
                " Ask what was done on {}{}.", day_words(open.back(), clock_.writing()),
                open.size() > 1 ? fmt::format(" ({} days are not told yet)", open.size()) : "");
        }
        checks_.push_back(
            {CheckKind::trial_day, clock_.day_of(today_).from,
             fmt::format("Today is a day of trial {}: {} ({}).", kept.number, a ? "A" : "B", arm),
             std::move(next),
             fmt::format("Today in your trial: {}. If it can't be done, that's fine: "
                         "just tell me what you did.",
                         arm)});
    }

    void trial_ended(const KeptTrial& kept, Instant end) {
        const auto open = not_told(kept, today_);
        checks_.push_back(
            {CheckKind::trial_ended, end,
             fmt::format("Trial {} (\"{}\") ended on {} and was not read.", kept.number,
                         kept.trial.question, day_words(kept.trial.last_day(), clock_.writing())),
             fmt::format("Read trial {}.{}", kept.number,
                         open.empty()
                             ? ""
                             : fmt::format(" What was done is not told of {} days.", open.size())),
             open.empty() ? "Your trial is done, thank you. Let's look at it together."
                          : "Your trial is done, thank you. Please tell me what you did on the "
                            "days you have not told me yet."});
    }

    void agreed() {
        const auto& agreed = client_.facts.agreed_change;
        if (!agreed) {
            return;
        }
        if (!closed_.agreed.empty()) {
            not_gone_on_with(CheckKind::agreed_change, clock_.day_of(today_).from,
                             fmt::format("What was agreed (\"{}\")", agreed->words),
                             closed_.agreed);
        } else if (agreed->check_on && *agreed->check_on <= today_) {
            checks_.push_back(
                {CheckKind::agreed_change, clock_.day_of(*agreed->check_on).from,
                 fmt::format("The check of what was agreed (\"{}\") was set for {}.", agreed->words,
                             day_words(*agreed->check_on, clock_.writing())),
                 "Look at how it went, and ask what made it hard.",
                 fmt::format("We said we would look at \"{}\" about now. How did it "
                             "go? What made it easy, what made it hard?",
                             agreed->words)});
        }
    }

    // Early enough to mend what goes wrong with a sensor or a diary.
    void third_day() {
        for (const Wear& wear : client_.wears) {
            const auto worn = as_of_ - wear.start;
            const Instant third = wear.start + 48h;
            const bool off = wear.end == WearEnd::fell_off || wear.end == WearEnd::sensor_failed ||
                             wear.end == WearEnd::removed || wear.end == WearEnd::planned;
            if (wear.empty() || off || worn < 48h || worn >= 96h ||
                (client_.last_review && *client_.last_review >= third)) {
                continue;
            }
            checks_.push_back(
                {CheckKind::third_day, third,
                 fmt::format("The third day of a wear has come (since {}).",
                             day_and_time(clock_.wall_time(wear.start), clock_.writing())),
                 "Look whether readings and diary come, while it can still be mended.",
                 "How is the sensor after two days? Is anything in the way of writing things "
                 "down?"});
        }
    }

    void laboratory() {
        const NextLab next = next_lab(client_.facts, medicines_, clock_, as_of_);
        if (next.ever && next.on <= today_) {
            checks_.push_back({CheckKind::laboratory, clock_.day_of(next.on).from,
                               "A laboratory A1c can tell again: nothing changed for 90 days.",
                               "Ask when the clinic tests next, and for a copy.",
                               "Is a blood test at your clinic planned? When it is done, please "
                               "send me the slip."});
        }
    }
};

}  // namespace

const char* name_of(CheckKind kind) {
    constexpr std::array names = {"two_hours",     "trial_day", "trial_ended",
                                  "agreed_change", "third_day", "laboratory"};
    return names.at(static_cast<std::size_t>(kind));
}

std::vector<DueCheck> due_checks(const CaseloadClient& client, const ZoneHistory& clock,
                                 Instant as_of) {
    return Checker(client, clock, as_of).checks();
}

}  // namespace tracewright
