#include "coaching/explaining_rules.hpp"
#include "coaching/paper_parts.hpp"
#include "findings/outcome_values.hpp"
#include "findings/wording.hpp"
#include "measures/episodes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <iterator>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

struct Night {
    CivilDate morning;
    Interval slept;
    bool noted = false;  ///< in the diary; else the clock's night
    double mean = 0;
    double early = 0;  ///< lowest of the means of half hours
    double late = 0;   ///< mean of the last half hour
};

double mean_of(const ExplainedRecord& record, Interval stretch) {
    double seconds = 0;
    double sum = 0;
    for_each_standing(cut(record.trace().view(), stretch), [&](const Reading& reading,
                                                               std::chrono::seconds stood) {
        seconds += static_cast<double>(stood.count());
        sum += static_cast<double>(stood.count()) * reading.value().in(GlucoseUnit::mg_per_dl);
    });
    return seconds > 0 ? sum / seconds : 0;
}

std::vector<Night> nights_of(const ExplainedRecord& record) {
    std::vector<Night> nights;
    const ReviewInput& input = record.input();
    for (const CivilDay& day : input.zones.days(record.trace().window)) {
        const OutcomeValue whole = overnight_glucose(diary_of_day(input.diary, day, input.zones),
                                                     record.trace().view(), input.zones);
        const bool noted = diary_of_day(input.diary, day, input.zones).sleep != nullptr;
        if (!whole.value || whole.made_of.length() < 4h ||
            !record.fit_to_show({whole.made_of.from - 2h, whole.made_of.to + 1h})) {
            continue;
        }
        Night night{day.date, whole.made_of, noted, *whole.value, 1e9, 0};
        for (Instant at = whole.made_of.from; at + 30min <= whole.made_of.to; at += 30min) {
            const double level = mean_of(record, {at, at + 30min});
            if (level > 0) {
                night.early = std::min(night.early, level);
            }
        }
        night.late = mean_of(record, {whole.made_of.to - 30min, whole.made_of.to});
        if (night.late > 0 && night.early < 1e9) {
            nights.push_back(night);
        }
    }
    return nights;
}

bool reaches_into_a_night(const Episode& low, const ZoneHistory& zones) {
    WallClock clock(zones);
    for (Instant at = low.from; at < low.to; at += 5min) {
        const WallTime wall = clock.at(at);
        const auto since = wall - std::chrono::floor<std::chrono::days>(wall);
        if (since >= 22h || since < 8h) {
            return true;
        }
    }
    return false;
}

// Lows of any wear between 22:00 and 08:00 by the client's clock, raw, by the rule of the review
// and the days: 15 minutes, or a very low cut short. One reading alone is shown by neither.
bool low_on_some_night(const ExplainedRecord& record) {
    return std::ranges::any_of(record.input().wears, [&](const Wear& wear) {
        if (wear.empty()) {
            return false;
        }
        std::vector<Episode> lows = episodes_of(wear.view());
        std::erase_if(lows, [](const Episode& one) {
            return one.kind != EpisodeKind::low && one.kind != EpisodeKind::very_low;
        });
        std::ranges::move(cut_short_very_lows(wear.view()), std::back_inserter(lows));
        return std::ranges::any_of(lows, [&](const Episode& low) {
            return reaches_into_a_night(low, record.input().zones);
        });
    });
}

}  // namespace

ExplainingPage explain_night(const Explaining& client) {
    const ExplainedRecord& record = client.record;
    const std::vector<Night> nights = nights_of(record);
    if (nights.empty()) {
        return no_page(
            "no night was seen from two hours before sleep to an hour after waking "
            "without a low, a drink, illness or a suspect stretch");
    }
    std::vector<double> means;
    for (const Night& night : nights) {
        means.push_back(night.mean);
    }
    const Night& night = nights[nearest_the_median(means)];
    const auto clock = [&](Instant at) {
        return clock_time(record.input().zones.wall_time(at), record.input().zones.writing());
    };

    ExplainingPage page;
    Illustration& drawn = page.illustration = client.illustration();
    const Interval stretch{night.slept.from - 2h, night.slept.to + 1h};
    const Instant zero = stretch.from;
    const auto hours = [&](Instant at) { return static_cast<double>((at - zero).count()) / 3600; };
    drawn.to = hours(stretch.to);
    drawn.ticks = record.clock_ticks(stretch, zero, 2);
    drawn.curves = {record.curve(stretch, zero,
                                 "to " + day_words(night.morning, record.input().zones.writing()),
                                 IllustratedCurve::Look::first)};
    drawn.spans = record.spans(stretch, zero);
    drawn.spans.push_back(
        {hours(night.slept.from), hours(night.slept.to), night.noted ? "slept" : "night"});
    const bool rose = is_dawn_rise(night.late - night.early);
    const std::string course =
        client.numbers
            ? fmt::format("At its lowest it was about {}. In the last half hour it was about {}.",
                          record.words(night.early), record.words(night.late))
        : rose ? std::string("It was higher at the end of the night than at its lowest.")
               : std::string("It changed little from its lowest to the end of the night.");
    const std::string when = fmt::format("This is the night to {}, {} to {}{}.",
                                         day_words(night.morning, record.input().zones.writing()),
                                         clock(night.slept.from), clock(night.slept.to),
                                         night.noted ? ", as you wrote" : " by the clock");
    drawn.alternative = when + " " + course;

    Paper& paper = page.paper;
    say(paper, "You do not eat at night, but your body still needs sugar. The liver gives it.",
        true);
    say(paper, fmt::format("{} Of your {} nights that can be shown, it is about in the middle.",
                           when, nights.size()));
    show_figure(paper);
    say(paper, course);
    say(paper, rose ? "It rose towards morning. Many people have this: the body gets ready to wake."
                    : "Some people rise towards morning, as the body gets ready to wake. On this "
                      "night there was little of it.");
    say(paper,
        "A late meal, a drink, a short night or being ill can change a night. One night "
        "says little.");
    if (low_on_some_night(record)) {
        say(paper, "On another night your sensor read low. Talk about that night first.", true);
        const WayOfWriting way = record.input().zones.writing();
        page.to_know.push_back(
            fmt::format("A low was read between {} and {} on another night: speak of that before "
                        "this page.",
                        full_hour(22, way), full_hour(8, way)));
    }
    if (auto aid = first_aid(client.care)) {
        paper.blocks.emplace_back(std::move(*aid));
    }
    page.chosen =
        fmt::format("the night to {}, one of {} nights",
                    day_words(night.morning, record.input().zones.writing()), nights.size());
    return page;
}

}  // namespace tracewright
