#include "coaching/explaining_rules.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <chrono>
#include <cmath>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

constexpr std::size_t fewest_meals = 3;

// The top after breakfast, mean and SD of 24 young adults without diabetes, mg/dL, and how long
// after the first bite they came: Freckmann et al. 2007, 10.1177/193229680700100513. Hours above
// 140 mg/dL: Spartano et al. 2024, 10.1210/clinem/dgae626. How often it is above 140 runs from 0.4
// to 12 % of the time from cohort to cohort, so the cohort is always named.
constexpr double top_mean = 132.3;
constexpr double top_sd = 16.7;

std::vector<std::string> in_others(const ExplainedRecord& record) {
    const GlucoseUnit unit = record.input().unit;
    return {
        fmt::format("24 young adults: after breakfast the top was about {}. Most were between "
                    "{} and {}. It came after about 50 minutes.",
                    record.words(top_mean), glucose_number(record.shown(top_mean - top_sd), unit),
                    glucose_number(record.shown(top_mean + top_sd), unit)),
        fmt::format("560 people, most near 60 years old: about three hours of the day above "
                    "{}.",
                    unit == GlucoseUnit::mg_per_dl ? "140 mg/dL" : "7.8 mmol/L")};
}

void compare_with_others(Paper& paper, const Explaining& client) {
    if (client.pregnant) {
        say(paper, "Your maternity or diabetes clinic leads. Ask them what this means for you.");
        return;
    }
    paper.blocks.emplace_back(PaperHeading{"People without diabetes rise too"});
    if (client.numbers) {
        paper.blocks.emplace_back(PaperList{in_others(client.record)});
        say(paper, "Studies differ, as people and sensors do.");
    } else {
        say(paper, "It was seen in 24 young adults, and in 560 people near 60 years old.");
    }
    name_sources(paper, {{"24 young adults", "Freckmann 2007, 10.1177/193229680700100513"},
                         {"560 people", "Spartano 2024, 10.1210/clinem/dgae626"}});
}

}  // namespace

ExplainingPage explain_food(const Explaining& client) {
    const ExplainedRecord& record = client.record;
    std::vector<std::size_t> meals;
    std::vector<double> rises;
    for (std::size_t i = 0; i < record.occasions().size(); ++i) {
        if (record.meal_can_be_shown(i)) {
            meals.push_back(i);
            rises.push_back(record.responses()[i].rise);
        }
    }
    if (meals.size() < fewest_meals) {
        return no_page(fmt::format(
            "{} meal{} can be read for three hours on ordinary days, at least 3 are needed",
            meals.size(), meals.size() == 1 ? "" : "s"));
    }
    const std::size_t chosen = meals[nearest_the_median(rises)];
    const EatingOccasion& eaten = record.occasions()[chosen];
    const MealResponse& response = record.responses()[chosen];
    const WallTime at = record.input().zones.wall_time(eaten.at);
    const std::string meal = eaten.slot == MealSlot::snack ? "a snack" : name_of(eaten.slot);
    const std::string day = day_words(record.date(eaten.at), record.input().zones.writing());

    ExplainingPage page;
    Illustration& drawn = page.illustration = client.illustration();
    const Interval stretch{eaten.at - 30min, eaten.at + 3h};
    drawn.from = -0.5;
    drawn.to = 3;
    drawn.ticks = ticks_after_food();
    drawn.curves = {record.curve(stretch, eaten.at, day, IllustratedCurve::Look::first)};
    drawn.spans = record.spans(stretch, eaten.at);
    const std::string top =
        hours_and_minutes(std::chrono::seconds{std::llround(response.minutes_to_peak * 60)});
    const std::string down = response.back_to_start_minutes
                                 ? fmt::format("It was back where it began after {}.",
                                               hours_and_minutes(std::chrono::seconds{std::llround(
                                                   *response.back_to_start_minutes * 60)}))
                                 : std::string("After three hours it was not yet back.");
    const std::string course =
        client.numbers
            ? fmt::format("It began at {}. The top was {}, after {}. {}",
                          record.words(response.baseline), record.words(response.peak), top, down)
            : fmt::format("It was at the top after {}. {}", top, down);
    drawn.alternative = fmt::format("Glucose after {} on {}. {}", meal, day, course);

    Paper& paper = page.paper;
    say(paper, "Glucose goes up after food. It does so in all people.", true);
    say(paper,
        fmt::format("This is {} on {} at {}. Of your {} meals that can be read, it is "
                    "about in the middle.",
                    meal, day, clock_time(at, record.input().zones.writing()), meals.size()));
    show_figure(paper);
    say(paper, course);
    compare_with_others(paper, client);
    say(paper,
        "What to ask: how high, how long, and what went with it? One meal alone says "
        "little.");
    page.chosen = fmt::format("{} on {} at {}, one of {} meals", meal, day,
                              clock_time(at, record.input().zones.writing()), meals.size());
    return page;
}

}  // namespace tracewright
