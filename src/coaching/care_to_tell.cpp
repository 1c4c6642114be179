#include "coaching/care_to_tell.hpp"

#include "coaching/restricted_eating.hpp"
#include "coaching/type_signs.hpp"

#include <algorithm>

namespace tracewright {

namespace {

void add_type(const CareInput& input, std::vector<CareToTell>& all) {
    const auto signs = type_signs(input);
    if (!are_for_the_prescriber(input, signs)) {
        return;
    }
    Instant since = input.as_of;
    for (const TypeSignSeen& sign : signs) {
        since = std::min(since, sign.at.value_or(since));
    }
    all.push_back({since, type_signs_for_coach(signs),
                   "Until it is answered: no low-carbohydrate, fasting or weight-loss plan. Write "
                   "down the answer."});
}

}  // namespace

std::vector<CareToTell> care_to_tell(const CareInput& input) {
    std::vector<CareToTell> all;
    add_type(input, all);
    if (auto told = restricted_eating_to_tell(input)) {
        all.push_back({told->from, std::move(told->seen), std::move(told->next)});
    }
    return all;
}

}  // namespace tracewright
