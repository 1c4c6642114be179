#include "coaching/consent_words.hpp"

#include "findings/wording.hpp"

namespace tracewright {

std::string consent_over_for_coach(const Consent& consent, CivilDate today, WayOfWriting way) {
    if (consent.withdrawn_on) {
        return "Consent was withdrawn on " + day_words(*consent.withdrawn_on, way) +
               ": keep and give out only what safety needs, and ask what is to be erased.";
    }
    if (consent.until && *consent.until < today) {
        return "Consent ended on " + day_words(*consent.until, way) + ": ask again.";
    }
    return {};
}

}  // namespace tracewright
