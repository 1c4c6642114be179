#include "coaching/explaining_rules.hpp"
#include "findings/cause_values.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

bool walked_after(const ExplainedRecord& record, std::size_t i) {
    const ReviewInput& input = record.input();
    const auto moved =
        cause_value(Cause::walk_after, Outcome::dinner_rise, {}, &record.occasions()[i],
                    input.diary, record.occasions(), input.zones);
    return moved.value_or(0) > 0.5;
}

}  // namespace

ExplainingPage explain_walking(const Explaining& client) {
    const ExplainedRecord& record = client.record;
    std::vector<std::size_t> walked;
    std::vector<std::size_t> still;
    std::vector<double> rises;
    for (std::size_t i = 0; i < record.occasions().size(); ++i) {
        if (!record.meal_can_be_shown(i) || record.occasions()[i].slot == MealSlot::snack) {
            continue;
        }
        if (walked_after(record, i)) {
            walked.push_back(i);
            rises.push_back(record.responses()[i].rise);
        } else {
            still.push_back(i);
        }
    }
    if (walked.empty()) {
        return no_page(
            "no movement within 90 minutes after a meal is in the diary where the meal "
            "can be read for three hours");
    }
    const std::size_t with = walked[nearest_the_median(rises)];
    const EatingOccasion& eaten = record.occasions()[with];
    std::erase_if(still, [&](std::size_t i) { return record.occasions()[i].slot != eaten.slot; });
    if (still.empty()) {
        return no_page(
            fmt::format("no {} without movement after it can be read for three hours, "
                        "so that there is nothing to set beside it",
                        name_of(eaten.slot)));
    }
    const std::size_t without = *std::ranges::min_element(still, {}, [&](std::size_t i) {
        return std::chrono::abs(record.occasions()[i].at - eaten.at);
    });
    const auto day = [&](std::size_t i) {
        return day_words(record.date(record.occasions()[i].at), record.input().zones.writing());
    };
    const double less = record.responses()[without].rise - record.responses()[with].rise;
    const char* slot = name_of(eaten.slot);

    ExplainingPage page;
    Illustration& drawn = page.illustration = client.illustration();
    drawn.from = -0.5;
    drawn.to = 3;
    drawn.ticks = ticks_after_food();
    const auto curve = [&](std::size_t i, const char* how, IllustratedCurve::Look look) {
        const Instant at = record.occasions()[i].at;
        drawn.curves.push_back(
            record.curve({at - 30min, at + 3h}, at, fmt::format("{}, {}", how, day(i)), look));
    };
    curve(with, "moved", IllustratedCurve::Look::first);
    curve(without, "did not", IllustratedCurve::Look::second);
    drawn.spans = record.spans({eaten.at - 30min, eaten.at + 3h}, eaten.at);
    const std::string course =
        client.numbers
            ? fmt::format(
                  "On {} you moved after {}: it rose by {}. On {} you did not: it rose by "
                  "{}.",
                  day(with), slot, record.words(record.responses()[with].rise), day(without),
                  record.words(record.responses()[without].rise))
            : fmt::format("On {} you moved after {}. On {} you did not. The rise was {}.",
                          day(with), slot, day(without),
                          less > 9    ? "less when you moved"
                          : less < -9 ? "more when you moved"
                                      : "about the same");
    drawn.alternative = course;

    Paper& paper = page.paper;
    say(paper, "Muscles at work take sugar out of the blood.", true);
    say(paper, fmt::format("Here are two days with {}.", slot));
    show_figure(paper);
    say(paper, course);
    if (less < -9) {
        say(paper, "So the day with the walk was not the lower one. That happens.");
    }
    say(paper,
        "Two days are no proof. What you ate, how you slept and stress differed too. To "
        "know, try it on days chosen by lot. Ask your coach.");
    say(paper,
        "Stop at once if your chest hurts, or if you feel faint, shaky or short of breath. "
        "Then get help.");
    page.chosen = fmt::format("{} on {} with movement, {} without", slot, day(with), day(without));
    return page;
}

}  // namespace tracewright
