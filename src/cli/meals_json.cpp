#include "cli/meals_command.hpp"

namespace tracewright {

namespace {

double shown(double mg, GlucoseUnit unit) {
    return converted(mg, GlucoseUnit::mg_per_dl, unit);
}

Json or_null(const std::optional<double>& value) {
    return value ? Json(*value) : Json(nullptr);
}

Json level_or_null(const std::optional<double>& mg, GlucoseUnit unit) {
    return mg ? Json(shown(*mg, unit)) : Json(nullptr);
}

Json json_of(const MealResponse& response, GlucoseUnit unit) {
    if (!response.not_readable.empty()) {
        return {{"not_readable", response.not_readable}};
    }
    return {{"baseline", shown(response.baseline, unit)},
            {"peak", shown(response.peak, unit)},
            {"rise", shown(response.rise, unit)},
            {"minutes_to_peak", response.minutes_to_peak},
            {"at_1h", level_or_null(response.at_1h, unit)},
            {"at_2h", level_or_null(response.at_2h, unit)},
            {"area_2h_minutes", level_or_null(response.area_2h, unit)},
            {"area_3h_minutes", level_or_null(response.area_3h, unit)},
            {"back_to_start_minutes", or_null(response.back_to_start_minutes)},
            {"window_minutes", response.window_minutes},
            {"cut_short", response.cut_short},
            {"not_at_rest", response.not_at_rest},
            {"beyond_limit", response.beyond_limit}};
}

Json json_of(const MealAmplitude& meal, GlucoseUnit unit) {
    if (!meal.readable) {
        return nullptr;
    }
    return {{"amplitude", shown(meal.amplitude, unit)},
            {"standard_error", shown(meal.standard_error, unit)},
            {"shift_minutes", meal.shift_minutes},
            {"shift_deviation_minutes", meal.shift_deviation},
            {"shares_uncertain", meal.shares_uncertain},
            {"correlation_before", meal.correlation_before},
            {"correlation_after", meal.correlation_after}};
}

Json json_of(const FoodComparison& foods, GlucoseUnit unit) {
    Json json = {
        {"none_because", foods.none_because.empty() ? Json(nullptr) : Json(foods.none_because)},
        {"adjusted_for", foods.adjusted_for},
        {"within", shown(foods.within, unit)},
        {"within_assumed", foods.within_assumed},
        {"between", shown(foods.between, unit)},
        {"seen_once", foods.seen_once}};
    json["foods"] = Json::array();
    for (const FoodStanding& food : foods.foods) {
        json["foods"].push_back(
            {{"food", food.food},
             {"times", food.times},
             {"own_mean", shown(food.own_mean, unit)},
             {"mean", shown(food.mean, unit)},
             {"interval80", {shown(food.interval80[0], unit), shown(food.interval80[1], unit)}},
             {"ranks80", food.ranks80},
             {"in_top_three", food.in_top_three},
             {"group", food.group}});
    }
    json["different"] = Json::array();
    for (const FoodPair& pair : foods.different) {
        json["different"].push_back({{"larger", pair.larger},
                                     {"smaller", pair.smaller},
                                     {"probability", pair.probability}});
    }
    json["sentences"] = food_sentences(foods, unit);
    return json;
}

Json json_of(const FingerPrickPair& pair, const ReviewInput& input) {
    const auto level = [&](const std::optional<Glucose>& value) {
        return value ? Json(value->in(input.unit)) : Json(nullptr);
    };
    return {{"at", iso_time(pair.at, input.zones)},
            {"before", level(pair.before)},
            {"after", level(pair.after)},
            {"after_minutes", or_null(pair.after_minutes)},
            {"used", pair.used()},
            {"left_out_because", pair.used() ? Json(nullptr) : Json(pair.left_out_because)}};
}

}  // namespace

Json json_of_meals(const MealReport& report, const ReviewInput& input) {
    const GlucoseUnit unit = input.unit;
    Json json = {{"version", meals_json_version}, {"unit", name_of(unit)}, {"seed", input.seed}};
    json["meals"] = Json::array();
    for (std::size_t i = 0; i < report.occasions.size(); ++i) {
        const EatingOccasion& occasion = report.occasions[i];
        json["meals"].push_back({{"at", iso_time(occasion.at, input.zones)},
                                 {"slot", name_of(occasion.slot)},
                                 {"foods", occasion.foods},
                                 {"carbohydrate_g", or_null(occasion.carbohydrate_g)},
                                 {"carbohydrate_estimated", occasion.carbohydrate_estimated},
                                 {"response", json_of(report.responses[i], unit)},
                                 {"alone", json_of(report.overlap.meals[i], unit)}});
    }
    const OverlapModel& model = report.overlap;
    json["overlap"] = {
        {"none_because", model.none_because.empty() ? Json(nullptr) : Json(model.none_because)},
        {"peak_minutes", model.peak_minutes},
        {"correlation_5min", model.correlation_5min},
        {"noise_deviation", shown(model.noise_deviation, unit)},
        {"days", model.days}};
    json["comparison"] = json_of(report.foods, unit);
    json["ask_about"] = Json::array();
    for (const UnwrittenRise& rise : report.ask_about) {
        json["ask_about"].push_back({{"from", iso_time(rise.from, input.zones)},
                                     {"to", iso_time(rise.to, input.zones)},
                                     {"rise", shown(rise.rise, unit)}});
    }
    json["finger_prick_pairs"] = Json::array();
    for (const FingerPrickPair& pair : report.pairs) {
        json["finger_prick_pairs"].push_back(json_of(pair, input));
    }
    json["mean_pair_rise"] = level_or_null(report.mean_pair_rise, unit);
    json["mean_pair_rise95"] = nullptr;
    if (report.mean_pair_rise95) {
        json["mean_pair_rise95"] = {shown((*report.mean_pair_rise95)[0], unit),
                                    shown((*report.mean_pair_rise95)[1], unit)};
    }
    return json;
}

}  // namespace tracewright
