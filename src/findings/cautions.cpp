#include "findings/review_findings.hpp"

namespace tracewright {

std::vector<std::string> cautions() {
    return {
        "This supports a talk about habits. It is not a medical device and not medical advice.",
        "Sensor readings can be wrong: where they don't fit how one feels, a finger-prick decides.",
        "Medicines are changed only by the prescriber.",
        "Very low or very high with symptoms (confused, drowsy, vomiting, breathing fast, chest "
        "pain): "
        "get help now. Local emergency guidance comes first.",
        "Not an alarm. Don't rely on this page to be woken or warned.",
    };
}

}  // namespace tracewright
