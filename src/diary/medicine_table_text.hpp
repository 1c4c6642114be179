#pragma once

#include <string_view>

namespace tracewright {

/// data/medicine-classes.csv and data/medicine-names.csv as they were when the program was built.
std::string_view medicine_classes_csv();
std::string_view medicine_names_csv();

}  // namespace tracewright
