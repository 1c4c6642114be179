// What was eaten and not written is known in a life that was played out.
#include "calibration/cells.hpp"
#include "calibration/lived_input.hpp"

#include "findings/meal_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <iostream>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

bool written_near(const Diary& diary, Instant at) {
    return std::any_of(diary.begin(), diary.end(), [&](const DiaryEntry& entry) {
        return entry.kind == DiaryKind::meal && entry.at > at - 45min && entry.at < at + 45min;
    });
}

}  // namespace

void print_unwritten_cells(int lives) {
    std::cout
        << "\nMeals eaten and not written (20 g or more, more than 45 minutes from any entry), "
           "meal model\n\n"
        << "| story | lives | days | unwritten a day | found | asked for nothing, a day "
           "|\n|---|---|---|---|---|---|\n";
    for (const ClientStory& story : client_stories()) {
        int unwritten = 0;
        int found = 0;
        int nothing = 0;
        double days = 0;
        // A few of each of the twelve stories are enough: each has weeks.
        for (int draw = 1; draw <= std::max(1, lives / 10); ++draw) {
            const ClientLife life = client_life(story, static_cast<std::uint64_t>(9000 + draw));
            const ReviewInput input = input_of(life);
            const MealReport report = meal_report(input);
            for (const LivedWear& wear : life.wears) {
                days += static_cast<double>(wear.worn.length().count()) / 86400;
            }
            std::vector<Instant> hidden;
            for (const StoryDay& day : life.days) {
                for (const EatenMeal& eaten : day.meals) {
                    const Instant at = life.zones.resolve(eaten.at).first;
                    const bool worn = std::ranges::any_of(life.wears, [&](const LivedWear& wear) {
                        return wear.worn.contains(at) && wear.worn.contains(at + 2h);
                    });
                    if (worn && eaten.carbohydrate_g >= 20 && !written_near(input.diary, at)) {
                        hidden.push_back(at);
                    }
                }
            }
            const auto belongs = [&](const UnwrittenRise& rise, Instant at) {
                return rise.from >= at - 30min && rise.from <= at + 75min;
            };
            unwritten += static_cast<int>(hidden.size());
            for (const Instant at : hidden) {
                found += std::ranges::any_of(
                    report.ask_about, [&](const UnwrittenRise& rise) { return belongs(rise, at); });
            }
            for (const UnwrittenRise& rise : report.ask_about) {
                nothing +=
                    std::ranges::none_of(hidden, [&](Instant at) { return belongs(rise, at); });
            }
        }
        std::cout << fmt::format("| {} | {} | {:.0f} | {:.2f} | {:.0f} % of {} | {:.3f} |\n",
                                 story.key, std::max(1, lives / 10), days, unwritten / days,
                                 unwritten > 0 ? 100.0 * found / unwritten : 0, unwritten,
                                 nothing / days);
        std::cout.flush();
    }
}

}  // namespace tracewright
