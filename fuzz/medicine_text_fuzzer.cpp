// Any text about medicines: what is not recognised counts as risky, whatever else is said.
#include "diary/medicine_timeline.hpp"

#include <cstdlib>
#include <string_view>

using namespace tracewright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const MedicineText text = medicine_text({reinterpret_cast<const char*>(data), size});
    const MedicineRisks risks = risks_of({text});
    const bool silent = text.recognised.empty() && !text.says_none;
    if ((text.unrecognised || silent) &&
        !(risks.can_cause_lows && risks.sglt2 && !risks.answered)) {
        std::abort();
    }
    return 0;
}
