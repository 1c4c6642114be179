#pragma once

namespace tracewright {

/// SD of one sensor's own error as a share of glucose, wherever one is needed. Two sensors worn at
/// once by people with type 2 diabetes differed by 13 mg/dL at 150 (Selvin et al. 2023,
/// 10.1093/clinchem/hvac192, two kinds): at most 13 / 150 / sqrt 2 = 6 % each, which stands for
/// sensors of different kinds. 5 % of one kind is our assumption: with 4 % two equal wears of
/// sensors that err by 5 % are called different too often (docs/calibration.md).
inline constexpr double one_sensors_error = 0.05;
inline constexpr double one_sensors_error_of_other_kind = 0.06;

}  // namespace tracewright
