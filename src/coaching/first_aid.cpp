#include "coaching/first_aid.hpp"

namespace tracewright {

std::optional<PaperBox> first_aid_box(const MedicineRisks& risks) {
    if (!risks.can_cause_lows) {
        return std::nullopt;
    }
    return PaperBox{"First aid for a low",
                    {"Shaky, sweaty, confused, or below 4.0 mmol/L (70 mg/dL)? Take 15 to 20 g of "
                     "fast sugar, test again after 15 minutes, repeat if still low. Can't swallow "
                     "or won't wake: nothing by mouth, call the emergency number.",
                     "If you drive, ask your clinic about driving rules."},
                    true};
}

}  // namespace tracewright
