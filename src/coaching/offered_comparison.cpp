#include "coaching/offered_comparison.hpp"

#include "coaching/gates.hpp"
#include "coaching/trial_offers.hpp"

namespace tracewright {

BeforeAfter offered_comparison(const ReviewInput& input, const std::vector<std::size_t>& before,
                               const std::vector<std::size_t>& after, const CareInput& care,
                               Licence licence, const BeforeAfterSettings& settings) {
    BeforeAfter found = before_after(input, before, after, care.medicines, settings);
    withhold_offer(found.finding, gates_before_offer(Proposed::other, {}, care), licence,
                   "Another sensor on each side or finger-prick pairs would tell more. ");
    return found;
}

}  // namespace tracewright
