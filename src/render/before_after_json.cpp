#include "render/before_after_json.hpp"

namespace tracewright {

namespace {

Json or_null(const std::optional<double>& hours) {
    return hours ? Json(*hours) : Json(nullptr);
}

}  // namespace

Json json_of_comparison(const BeforeAfter& found, const ReviewInput& input) {
    return {{"version", before_after_json_version},
            {"seed", input.seed},
            {"unit", "h"},
            {"days_before", found.days_before},
            {"days_after", found.days_after},
            {"hours_before", or_null(found.hours_before)},
            {"hours_after", or_null(found.hours_after)},
            {"hours_before_of_all", or_null(found.hours_before_of_all)},
            {"hours_after_of_all", or_null(found.hours_after_of_all)},
            {"worn_at_once", found.worn_at_once},
            {"same_readings", found.same_readings},
            {"weekends_matched", found.weekdays_matched},
            {"difference", found.difference},
            {"interval95", {found.interval95[0], found.interval95[1]}},
            {"interval95_of_days", {found.interval95_of_days[0], found.interval95_of_days[1]}},
            {"sensor_sd", found.sensor_sd},
            {"probability_more", found.probability_more},
            {"probability_beyond", found.beyond},
            {"probability_within", found.within},
            {"days_needed", found.days_needed ? Json(*found.days_needed) : Json(nullptr)},
            {"finding", json_of(found.finding)}};
}

}  // namespace tracewright
