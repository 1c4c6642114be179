#include "coaching/trial.hpp"

#include <algorithm>

namespace tracewright {

namespace {

bool weekend(CivilDate date) {
    const std::chrono::weekday day{std::chrono::sys_days{date.time_since_epoch()}};
    return day == std::chrono::Saturday || day == std::chrono::Sunday;
}

}  // namespace

Trial trial_of(const TrialTemplate& made_from) {
    Trial trial;
    trial.code = made_from.code;
    trial.question = made_from.question;
    trial.a = made_from.a;
    trial.b = made_from.b;
    trial.outcome = made_from.outcome;
    return trial;
}

std::vector<TrialBlock> blocks_from(CivilDate first, int blocks, int free_days) {
    // With a free day between, the next like day may lie behind a weekend.
    const int nearest = 1 + free_days;
    const int farthest = free_days > 0 ? nearest + 1 : nearest;
    std::vector<TrialBlock> made;
    CivilDate day = first;
    while (static_cast<int>(made.size()) < blocks) {
        std::optional<CivilDate> other;
        for (int apart = nearest; apart <= farthest && !other; ++apart) {
            const CivilDate candidate = day + std::chrono::days{apart};
            if (weekend(candidate) == weekend(day)) {
                other = candidate;
            }
        }
        if (other) {
            made.push_back({{day, *other}, false});
            day = *other + std::chrono::days{nearest};
        } else {
            day += std::chrono::days{1};
        }
    }
    return made;
}

void draw_arms(std::vector<TrialBlock>& blocks, Draw draw, std::uint64_t seed) {
    const std::vector<bool> order = drawn_order(static_cast<int>(blocks.size()), draw, seed);
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        blocks[i].a_first = order[i];
    }
}

std::vector<bool> order_of(std::span<const TrialBlock> blocks) {
    std::vector<bool> order;
    for (const TrialBlock& block : blocks) {
        order.push_back(block.a_first);
    }
    return order;
}

}  // namespace tracewright
