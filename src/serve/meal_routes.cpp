#include "diary/worked_out_meals.hpp"
#include "findings/meal_report.hpp"
#include "findings/wording.hpp"
#include "serve/asked_record.hpp"
#include "serve/route.hpp"
#include "store/foods_of_client.hpp"

#include <fmt/format.h>

#include <cmath>

namespace tracewright {

namespace {

// Numbers of a report as the client's unit says them.
class Worded {
  public:
    explicit Worded(const ReviewInput& input) : input_(input) {}

    std::string at(Instant moment) const {
        return day_and_time(input_.zones.wall_time(moment), input_.zones.writing());
    }
    std::string level(double mg) const {
        return glucose_words(converted(mg, GlucoseUnit::mg_per_dl, input_.unit), input_.unit);
    }
    std::string rise(double mg) const { return (mg < 0 ? "-" : "+") + level(std::abs(mg)); }
    std::string range(const std::array<double, 2>& mg) const {
        return from_to_words(level(mg[0]), level(mg[1]), std::string(" ") + name_of(input_.unit));
    }
    Json pricked(const std::optional<Glucose>& value) const {
        return value ? Json(glucose_words(value->in(input_.unit), input_.unit)) : Json(nullptr);
    }

  private:
    const ReviewInput& input_;
};

Json json_of_foods(const FoodComparison& foods, const Worded& worded) {
    Json list = Json::array();
    for (const FoodStanding& food : foods.foods) {
        list.push_back({{"group", food.group},
                        {"food", food.food},
                        {"times", food.times},
                        {"rise", worded.level(food.mean)},
                        {"interval", worded.range(food.interval80)},
                        {"ranks", fmt::format("{} to {} of {}", food.ranks80[0], food.ranks80[1],
                                              foods.foods.size())}});
    }
    return list;
}

Json json_of_pairs(const MealReport& report, const Worded& worded) {
    Json list = Json::array();
    for (const FingerPrickPair& pair : report.pairs) {
        list.push_back(
            {{"label", worded.at(pair.at)},
             {"before", worded.pricked(pair.before)},
             {"after", worded.pricked(pair.after)},
             {"after_minutes",
              pair.after_minutes ? Json(std::lround(*pair.after_minutes)) : Json(nullptr)},
             {"left_out_because", pair.used() ? Json(nullptr) : Json(pair.left_out_because)}});
    }
    return list;
}

std::string mean_rise_words(const MealReport& report, const Worded& worded) {
    if (!report.mean_pair_rise) {
        return {};
    }
    std::string text = "Mean rise " + worded.rise(*report.mean_pair_rise);
    if (const auto& ends = report.mean_pair_rise95) {
        text += fmt::format(" (95 % interval {} to {})", worded.rise((*ends)[0]),
                            worded.rise((*ends)[1]));
    }
    // ISO 15197:2013: 95 % of results within 15 % (15 mg/dL below 100).
    return text + ". A meter may be off by 15 % each time.";
}

// Foods compared over all wears, rises to ask about, finger-prick pairs; in words.
Reply meals_reply(Asked& asked) {
    auto record = asked_record_with_readings(asked);
    const auto own = foods_of_client(asked.store, asked.client->id);
    if (!record || !own) {
        return record ? problem_of(own.error()) : record.error();
    }
    work_out_meals(record->input.diary, *own);
    const MealReport report = meal_report(record->input);
    const Worded worded(record->input);
    Json json{{"meals", report.occasions.size()},
              {"none_because",
               report.foods.none_because.empty() ? Json(nullptr) : Json(report.foods.none_because)},
              {"foods", json_of_foods(report.foods, worded)},
              {"seen_once", report.foods.seen_once},
              {"sentences", food_sentences(report.foods, record->input.unit)},
              {"adjusted_for", report.foods.adjusted_for}};
    json["ask_about"] = Json::array();
    for (const UnwrittenRise& rise : report.ask_about) {
        json["ask_about"].push_back(
            {{"label", worded.at(rise.from)}, {"rise", worded.level(rise.rise)}});
    }
    json["pairs"] = json_of_pairs(report, worded);
    json["mean_rise"] = mean_rise_words(report, worded);
    return json_reply(json);
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/meals", Asks::who_may_look, meals_reply,
     Holds::while_unchanged, "meals_looked_at"},
};

}  // namespace

std::span<const Route> meal_routes() {
    return table;
}

}  // namespace tracewright
