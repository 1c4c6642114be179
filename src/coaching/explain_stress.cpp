#include "coaching/explaining_rules.hpp"
#include "findings/cause_values.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

struct TenseHours {
    Instant at;
    Interval stretch;
    int meals = 0;
};

bool tells_of_stress(const ExplainedRecord& record, const DiaryEntry& entry) {
    const ReviewInput& input = record.input();
    DiaryOfDay alone;
    alone.within = {&entry};
    return cause_value(Cause::stress, Outcome::day_mean, alone, nullptr, input.diary,
                       record.occasions(), input.zones)
               .value_or(0) > 0.5;
}

std::vector<TenseHours> tense_hours(const ExplainedRecord& record) {
    std::vector<TenseHours> found;
    for (const DiaryEntry& entry : record.input().diary) {
        const Interval stretch{entry.at - 2h, entry.at + 4h};
        if (entry.kind != DiaryKind::mood || entry.time_uncertain ||
            !tells_of_stress(record, entry) || !record.fit_to_show(stretch)) {
            continue;
        }
        const auto meals = std::ranges::count_if(
            record.occasions(),
            [&](const EatingOccasion& eaten) { return stretch.contains(eaten.at); });
        found.push_back({entry.at, stretch, static_cast<int>(meals)});
    }
    return found;
}

}  // namespace

ExplainingPage explain_stress(const Explaining& client) {
    const ExplainedRecord& record = client.record;
    const std::vector<TenseHours> found = tense_hours(record);
    if (found.empty()) {
        return no_page(
            "no tense hour with its time is in the diary where the sensor saw from two "
            "hours before to four hours after");
    }
    const TenseHours* chosen = &found.front();
    for (const TenseHours& one : found) {
        chosen = one.meals <= chosen->meals ? &one : chosen;
    }
    const auto readings = readings_within(cut(record.trace().view(), chosen->stretch));
    const auto level = [](const Reading& reading) {
        return reading.value().in(GlucoseUnit::mg_per_dl);
    };
    double before = 0;
    double highest = 0;
    for (const Reading& reading : readings) {
        before = reading.at <= chosen->at ? level(reading) : before;
        highest = reading.at > chosen->at ? std::max(highest, level(reading)) : highest;
    }
    const WallTime at = record.input().zones.wall_time(chosen->at);
    const std::string day = day_words(record.date(chosen->at), record.input().zones.writing());

    ExplainingPage page;
    Illustration& drawn = page.illustration = client.illustration();
    const Instant zero = chosen->stretch.from;
    const auto hours = [&](Instant moment) {
        return static_cast<double>((moment - zero).count()) / 3600;
    };
    drawn.to = hours(chosen->stretch.to);
    drawn.ticks = record.clock_ticks(chosen->stretch, zero, 1);
    drawn.curves = {record.curve(chosen->stretch, zero, day, IllustratedCurve::Look::first)};
    drawn.spans = record.spans(chosen->stretch, zero);
    drawn.spans.push_back({hours(chosen->at), hours(chosen->at), "tense"});
    const bool rose = highest - before > 9;
    const std::string course =
        client.numbers
            ? fmt::format(
                  "When you wrote it, it was {}. In the four hours after, the highest was "
                  "{}.",
                  record.words(before), record.words(highest))
        : rose ? std::string("In the four hours after, it went up at some time.")
               : std::string("In the four hours after, it did not go up much.");
    drawn.alternative = fmt::format("Glucose round a tense hour on {} at {}. {}", day,
                                    clock_time(at, record.input().zones.writing()), course);

    Paper& paper = page.paper;
    say(paper, "Under stress the body gets ready to act. It may give more sugar to the blood.",
        true);
    say(paper, fmt::format("On {} at {} you wrote that you were tense.", day,
                           clock_time(at, record.input().zones.writing())));
    show_figure(paper);
    say(paper, course);
    say(paper, chosen->meals > 0
                   ? "You ate in these hours too. So food may be the reason, or both."
                   : "You wrote down no food in these hours. It may still be chance, or food that "
                     "was not written down.");
    say(paper,
        "Not all people rise with stress. Write down when you feel tense, and when you feel "
        "at ease. Then we can compare many days.");
    page.chosen = fmt::format(
        "{} at {}, {} in these hours", day, clock_time(at, record.input().zones.writing()),
        chosen->meals == 1 ? "1 meal" : fmt::format("{} meals", chosen->meals));
    return page;
}

}  // namespace tracewright
