#include "intake/meal_and_sleep_columns.hpp"

#include "intake/plain_text.hpp"

#include <algorithm>
#include <set>
#include <string>

namespace tracewright {

namespace {

std::size_t meals_named(const TableShape& shape) {
    std::set<std::string> names;
    for (const ColumnGuess& column : shape.columns) {
        if (column.names && column.role != Role::ignored) {
            names.insert(column.names->name);
        }
    }
    return names.size();
}

// By its title, or a "Start" beside an end that is a night's.
bool begins_sleep(const TableShape& shape, const std::string& title) {
    const bool other = shape.first(Role::sleep_start).has_value();
    const std::string small = lower_case(title);
    return title_meaning(title).role == Role::sleep_start ||
           (!other && shape.first(Role::sleep_end) &&
            (small.find("start") != std::string::npos || small.find("begin") != std::string::npos));
}

std::size_t meal_called(TableShape& shape, const TitledMeal& meal) {
    const auto found = std::ranges::find(shape.meals, meal.name, &MealOfRow::name);
    const auto at = static_cast<std::size_t>(found - shape.meals.begin());
    if (found == shape.meals.end()) {
        shape.meals.push_back({meal.name, meal.slot});
    }
    return at;
}

}  // namespace

void settle_own_times(TableShape& shape, std::span<const ColumnContent> contents) {
    const auto of_sleep = [](const std::string& title) {
        return lower_case(title).find("sleep") != std::string::npos;
    };
    if (shape.first(Role::sleep_end) && !shape.first(Role::sleep_start)) {
        for (ColumnGuess& column : shape.columns) {  // "Sleep time"
            const bool time = column.role == Role::time || column.role == Role::clock;
            column.role = time && of_sleep(column.title) ? Role::sleep_start : column.role;
        }
    }
    const auto end = shape.first(Role::end_time);
    if (shape.first(Role::sleep_start) && !shape.first(Role::sleep_end) && end) {
        shape.columns[*end].role = Role::sleep_end;
    }
    for (const Role role : {Role::sleep_start, Role::meal_time}) {
        for (const std::size_t c : shape.all(role)) {
            if (!shape.first(Role::time) && !shape.first(Role::date) &&
                contents[c].mostly(Content::time)) {
                shape.columns[c].role = Role::time;
            }
        }
    }
}

void settle_lone_clock(TableShape& shape) {
    if (shape.first(Role::time) || shape.first(Role::clock) || !shape.first(Role::date)) {
        return;
    }
    const auto beds = shape.all(Role::sleep_start);
    const auto meals = shape.all(Role::meal_time);
    const bool slept = shape.first(Role::sleep_end) || shape.first(Role::sleep_hours);
    if (beds.size() == 1 && meals.empty() && !slept) {
        shape.columns[beds.front()].role = Role::clock;
    } else if (beds.empty() && meals.size() == 1 && !slept && meals_named(shape) == 1) {
        shape.columns[meals.front()].role = Role::clock;
    }
}

void settle_meals(TableShape& shape) {
    const auto numbered = [](const ColumnGuess& column) {
        return column.names && column.names->slot.empty();
    };
    const bool timed = std::ranges::any_of(shape.columns, [&](const ColumnGuess& column) {
        return column.role == Role::meal_time && numbered(column);
    });
    for (ColumnGuess& column : shape.columns) {
        if (column.names && (timed || !numbered(column))) {
            column.meal = meal_called(shape, *column.names);
        }
    }
    const auto time = shape.first(shape.first(Role::time) ? Role::time : Role::clock);
    shape.times_begin_sleep = time && begins_sleep(shape, shape.columns[*time].title);
}

}  // namespace tracewright
