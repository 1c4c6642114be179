#include "coaching/explaining_rules.hpp"
#include "coaching/gates.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <map>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

// Below this the two times look alike and the page shows nothing: 1 mmol/L; ours.
constexpr double differ_by = 18;

using Meals = std::vector<std::size_t>;

// The times of the meal eaten most often; of equals the one eaten last. Empty if none came twice.
Meals most_often(const ExplainedRecord& record) {
    std::map<std::string, Meals> by_food;
    for (std::size_t i = 0; i < record.occasions().size(); ++i) {
        const EatingOccasion& eaten = record.occasions()[i];
        const std::string food = food_key(eaten.text());
        if (!food.empty() && !eaten.not_described && record.meal_can_be_shown(i)) {
            by_food[std::string(name_of(eaten.slot)) + " " + food].push_back(i);
        }
    }
    Meals best;
    for (const auto& [food, times] : by_food) {
        const bool more = times.size() > best.size() ||
                          (times.size() == best.size() && times.back() > best.back());
        best = times.size() > 1 && more ? times : best;
    }
    return best;
}

}  // namespace

ExplainingPage explain_one_meal(const Explaining& client) {
    const ExplainedRecord& record = client.record;
    const Meals times = most_often(record);
    if (times.empty()) {
        return no_page("no meal was eaten twice and can be read for three hours both times");
    }
    const auto rise = [&](std::size_t i) { return record.responses()[i].rise; };
    const auto [least, most] = std::ranges::minmax_element(times, {}, rise);
    if (rise(*most) - rise(*least) < differ_by) {
        return no_page(
            fmt::format("the meal eaten most often rose alike each of the {} times, so "
                        "that it shows nothing",
                        times.size()));
    }
    const auto day = [&](std::size_t i) {
        return day_words(record.date(record.occasions()[i].at), record.input().zones.writing());
    };
    const EatingOccasion& eaten = record.occasions()[*most];
    const std::string slot = eaten.slot == MealSlot::snack ? "snack" : name_of(eaten.slot);

    ExplainingPage page;
    Illustration& drawn = page.illustration = client.illustration();
    drawn.from = -0.5;
    drawn.to = 3;
    drawn.ticks = ticks_after_food();
    for (const std::size_t i : times) {
        const Instant at = record.occasions()[i].at;
        const auto look = i == *least  ? IllustratedCurve::Look::second
                          : i == *most ? IllustratedCurve::Look::first
                                       : IllustratedCurve::Look::others;
        drawn.curves.push_back(record.curve({at - 30min, at + 3h}, at, day(i), look));
    }
    const std::string course =
        client.numbers
            ? fmt::format("On {} it rose by {}. On {} it rose by {}.", day(*least),
                          record.words(rise(*least)), day(*most), record.words(rise(*most)))
            : fmt::format("On {} it rose a little. On {} it rose more.", day(*least), day(*most));
    drawn.alternative =
        fmt::format("Glucose after the same {}, {} times. {}", slot, times.size(), course);

    Paper& paper = page.paper;
    say(paper, "The same meal can give two answers.", true);
    say(paper, client.numbers
                   ? fmt::format("You had this {} {} times: {}. These two were the least alike.",
                                 slot, times.size(), food_key(eaten.text()))
                   : fmt::format("You had the same {} {} times. These two were the least alike.",
                                 slot, times.size()));
    show_figure(paper);
    say(paper, course);
    say(paper, "How you slept, how you moved, stress, and the sensor itself all play a part.");
    say(paper,
        "In one study people ate the same meal twice, a week apart. The two rises were "
        "about as far apart as after two other meals.");
    // No trial is spoken of where none may be offered (safety rules 9, 11 and 12).
    const bool may_try = gates_before_offer(Proposed::food_change, {}, client.care).empty();
    say(paper, may_try ? "So no meal is judged by one time. We look at three times or more, or we "
                         "try it as a test."
                       : "So no meal is judged by one time. We look at three times or more.");
    name_sources(paper, {{"The same meal twice", "PMCID PMC10371100"}});
    page.chosen = fmt::format("{} on {} and {}, of {} times", food_key(eaten.text()), day(*least),
                              day(*most), times.size());
    return page;
}

}  // namespace tracewright
