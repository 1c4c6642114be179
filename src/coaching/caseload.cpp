#include "coaching/caseload.hpp"

#include "coaching/client_clock.hpp"
#include "coaching/consent_words.hpp"
#include "coaching/due_checks.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <tuple>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

constexpr std::chrono::seconds silence = 24h;
constexpr std::chrono::days look_back{7};

// The one whose readings go furthest: another may have been put on later and come off sooner.
const Wear* last_wear(const std::vector<Wear>& wears) {
    const auto reach = [](const Wear& wear) {
        return std::tuple(wear.readings.back().at, wear.start);
    };
    const Wear* last = nullptr;
    for (const Wear& wear : wears) {
        if (!wear.empty() && (last == nullptr || reach(wear) > reach(*last))) {
            last = &wear;
        }
    }
    return last;
}

class Looker {
  public:
    Looker(const CaseloadClient& client, Instant as_of)
        : client_(client),
          as_of_(as_of),
          clock_(client_clock(client.facts)),
          today_(clock_.date_at(as_of)) {}

    std::vector<Need> needs() {
        unsafe();
        to_tell();
        promised();
        checks_due();
        wear_ending();
        stuck();
        if (needs_.empty()) {
            nothing_due();
        }
        std::stable_sort(needs_.begin(), needs_.end(), [](const Need& a, const Need& b) {
            return std::tuple(a.kind, a.within) < std::tuple(b.kind, b.within);
        });
        return std::move(needs_);
    }

    SeenAndWritten week() const {
        SeenAndWritten week;
        for (std::chrono::days back = look_back; back.count() > 0; --back) {
            const Interval day = clock_.day_of(today_ - back + std::chrono::days{1}).interval();
            week.seen.push_back(std::ranges::any_of(client_.wears, [&](const Wear& wear) {
                const auto first =
                    std::ranges::lower_bound(wear.readings, day.from, {}, &Reading::at);
                return first != wear.readings.end() && first->at < day.to;
            }));
            week.written.push_back(std::ranges::any_of(
                client_.diary, [&](const DiaryEntry& entry) { return day.contains(entry.at); }));
        }
        return week;
    }

  private:
    const CaseloadClient& client_;
    Instant as_of_;
    ZoneHistory clock_;
    CivilDate today_;
    std::vector<Need> needs_;

    std::string when(Instant at) const {
        return day_and_time(clock_.wall_time(at), clock_.writing());
    }

    void unsafe() {
        std::vector<const StandingEscalation*> open;
        for (const StandingEscalation& one : client_.escalations) {
            if (one.answer.empty()) {
                open.push_back(&one);
            }
        }
        std::stable_sort(open.begin(), open.end(),
                         [](const StandingEscalation* a, const StandingEscalation* b) {
                             return std::tuple(a->escalation.rung, b->escalation.at) <
                                    std::tuple(b->escalation.rung, a->escalation.at);
                         });
        if (open.empty()) {
            return;
        }
        const StandingEscalation& first = *open.front();
        std::string why = escalation_sentence(first.escalation, clock_, first.first_seen, as_of_);
        if (open.size() > 1) {
            why += fmt::format(" {} more not acknowledged.", open.size() - 1);
        }
        needs_.push_back({NeedKind::unsafe, static_cast<int>(first.escalation.rung),
                          first.escalation.at, std::move(why), first.escalation.whom});
    }

    void to_tell() {
        for (const CareToTell& one : client_.to_tell) {
            needs_.push_back({NeedKind::to_tell, 0, one.since, one.why, one.next});
        }
    }

    void promised() {
        for (const OpenPromise& promise : client_.promises) {
            if (promise.due <= today_) {
                needs_.push_back(
                    {NeedKind::promised, 0, clock_.day_of(promise.due).from,
                     fmt::format("Promised: {}, by {}.", promise.text,
                                 promise.due == today_ ? "today"
                                                       : day_words(promise.due, clock_.writing())),
                     "Keep it, and mark it kept."});
            }
        }
    }

    void checks_due() {
        for (DueCheck& check : due_checks(client_, clock_, as_of_)) {
            needs_.push_back(
                {NeedKind::due, 0, check.by, std::move(check.why), std::move(check.next)});
        }
        consent();
    }

    void consent() {
        const Consent& given = client_.facts.consent;
        if (given.withdrawn_on) {
            needs_.push_back({NeedKind::due, 0, clock_.day_of(*given.withdrawn_on).from,
                              consent_over_for_coach(given, today_, clock_.writing()),
                              "Bring nothing more in, and agree on what is kept or erased."});
        } else if (given.until && *given.until - std::chrono::days{14} <= today_) {
            needs_.push_back(
                {NeedKind::due, 0, clock_.day_of(*given.until).from,
                 fmt::format("Consent {} on {}.", *given.until < today_ ? "ended" : "ends",
                             day_words(*given.until, clock_.writing())),
                 "Ask whether it is renewed."});
        }
    }

    void wear_ending() {
        const Wear* last = last_wear(client_.wears);
        if (last == nullptr) {
            return;
        }
        const Instant end = planned_end_of(*last);
        if (wear_is_on(*last, as_of_)) {
            const auto days = clock_.date_at(end) - today_;
            if (days <= std::chrono::days{2}) {
                needs_.push_back(
                    {NeedKind::ending, 0, end,
                     fmt::format("The wear ends {}, {}.",
                                 days.count() == 0   ? "today"
                                 : days.count() == 1 ? "tomorrow"
                                                     : "in two days",
                                 when(end)),
                     "Ask for the last readings and the diary, and agree on the next look."});
            }
            return;
        }
        const Instant read = last->readings.back().at;
        const Instant came = std::max(read, client_.brought_in_at.value_or(read));
        if (!client_.last_review || *client_.last_review < came) {
            needs_.push_back({NeedKind::ending, 0, read,
                              fmt::format("A wear ended; its last reading was {}, {}, and no "
                                          "review was made since.",
                                          when(read), age_words(read, as_of_, clock_)),
                              "Make the review."});
        }
    }

    void stuck() {
        const Wear* last = last_wear(client_.wears);
        if (last != nullptr && wear_is_on(*last, as_of_) &&
            as_of_ - last->readings.back().at >= silence) {
            needs_.push_back({NeedKind::stuck, 0, last->readings.back().at,
                              fmt::format("No readings since {}: nothing can be said since then.",
                                          when(last->readings.back().at)),
                              "Ask whether the sensor is still on."});
        }
        if (last == nullptr && !client_.last_reading) {
            needs_.push_back({NeedKind::stuck, 0, as_of_, "No reading has come yet.",
                              "Agree on the first wear."});
        }
    }

    void nothing_due() {
        Need none;
        none.by = client_.last_reading.value_or(as_of_);
        none.why = client_.last_reading
                       ? fmt::format("Nothing due. The last reading was {}, {}.",
                                     when(*client_.last_reading),
                                     age_words(*client_.last_reading, as_of_, clock_))
                       : "Nothing due.";
        needs_.push_back(std::move(none));
    }
};

// Of what is unsafe the latest first, else what waits longest.
bool before(const CaseloadLine& a, const CaseloadLine& b) {
    const Need& x = a.first();
    const Need& y = b.first();
    if (x.kind != y.kind || x.within != y.within) {
        return std::tuple(x.kind, x.within) < std::tuple(y.kind, y.within);
    }
    if (x.by != y.by) {
        return x.kind == NeedKind::unsafe ? x.by > y.by : x.by < y.by;
    }
    return a.handle < b.handle;
}

}  // namespace

Interval caseload_window(const ZoneHistory& clock, Instant as_of) {
    return {clock.day_of(clock.date_at(as_of) - caseload_span).from,
            as_of + std::chrono::seconds{1}};
}

Instant planned_end_of(const Wear& wear) {
    constexpr std::chrono::days usual_wear{14};
    return wear.planned_end.value_or(wear.start + usual_wear);
}

bool wear_is_on(const Wear& wear, Instant as_of) {
    const bool told_off = wear.end == WearEnd::fell_off || wear.end == WearEnd::sensor_failed ||
                          wear.end == WearEnd::removed || wear.end == WearEnd::planned;
    return !told_off && as_of < planned_end_of(wear);
}

const char* name_of(NeedKind kind) {
    switch (kind) {
        case NeedKind::unsafe:
            return "unsafe";
        case NeedKind::to_tell:
            return "to tell";
        case NeedKind::promised:
            return "promised";
        case NeedKind::due:
            return "due";
        case NeedKind::ending:
            return "ending";
        case NeedKind::stuck:
            return "stuck";
        case NeedKind::nothing_due:
            return "nothing due";
    }
    return "";
}

std::vector<CaseloadLine> caseload(std::span<const CaseloadClient> clients, Instant as_of) {
    std::vector<CaseloadLine> lines;
    for (const CaseloadClient& client : clients) {
        Looker looker(client, as_of);
        lines.push_back({client.handle, client.name, looker.needs(), looker.week()});
    }
    std::sort(lines.begin(), lines.end(), before);
    return lines;
}

}  // namespace tracewright
