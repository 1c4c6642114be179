#pragma once

#include "coaching/sensor_record.hpp"
#include "render/review_json.hpp"

namespace tracewright {

/// A change that could break a reader raises it (docs/formats).
inline constexpr int sensor_json_version = 1;

/// docs/formats/sensor.schema.json.
Json json_of_sensor(const SensorRecord& record, const ReviewInput& input);

}  // namespace tracewright
