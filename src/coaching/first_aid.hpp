#pragma once

#include "coaching/paper.hpp"
#include "diary/medicine_timeline.hpp"

#include <optional>

namespace tracewright {

/// First aid for a low and the line on driving, for the handout and the diary sheet of who takes,
/// or may take, a medicine that can cause lows (safety rules 1 and 15); empty for the others.
std::optional<PaperBox> first_aid_box(const MedicineRisks& risks);

}  // namespace tracewright
