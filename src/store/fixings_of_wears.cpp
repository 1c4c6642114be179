#include "store/fixings_of_wears.hpp"

#include <algorithm>

namespace tracewright {

Stored<std::vector<WearFixing>> fixings_of(PracticeStore& store, std::int64_t client,
                                           std::span<const Wear> wears) {
    const auto stored = store.wears(client, std::nullopt);
    if (!stored) {
        return tl::make_unexpected(stored.error());
    }
    std::vector<WearFixing> fixings;
    for (const Wear& wear : wears) {
        const auto same = std::ranges::find_if(
            *stored, [&](const StoredWear& one) { return one.wear.label == wear.label; });
        fixings.push_back(same == stored->end() ? WearFixing{} : same->fixing);
    }
    return fixings;
}

}  // namespace tracewright
