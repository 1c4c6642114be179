#include "render/before_after_json.hpp"

namespace tracewright {

Json json_of_comparison(const BeforeAfter& found, const ReviewInput& input) {
    return {{"version", before_after_json_version},
            {"seed", input.seed},
            {"unit", "h"},
            {"days_before", found.days_before},
            {"days_after", found.days_after},
            {"hours_before", found.hours_before},
            {"hours_after", found.hours_after},
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
