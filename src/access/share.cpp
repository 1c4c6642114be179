#include "access/share.hpp"

namespace tracewright {

const char* name_of(SharedKind kind) {
    switch (kind) {
        case SharedKind::hours_in_range:
            return "hours in range";
        case SharedKind::lows:
            return "lows";
        case SharedKind::day_sheets:
            return "day sheets";
        case SharedKind::diary:
            return "diary";
        case SharedKind::food_amounts:
            return "food amounts";
        case SharedKind::meal_photos:
            return "meal photos";
        case SharedKind::mood:
            return "mood";
        case SharedKind::notes:
            return "notes";
        case SharedKind::weight:
            return "weight";
        case SharedKind::medicines:
            return "medicines";
        case SharedKind::letter:
            return "letter";
    }
    return "";
}

SharedKinds SharedKinds::usual() {
    return SharedKinds().add(SharedKind::hours_in_range).add(SharedKind::lows);
}

SharedKinds& SharedKinds::add(SharedKind kind) {
    kinds_.set(static_cast<std::size_t>(kind));
    return *this;
}

bool SharedKinds::has(SharedKind kind) const {
    return kinds_.test(static_cast<std::size_t>(kind));
}

std::optional<std::string> what_a_share_lacks(const Share& share) {
    if (share.client.empty()) {
        return "found a share without a client, expected the client's handle";
    }
    if (share.recipient.empty()) {
        return "found a share without a recipient, expected who is to see it";
    }
    if (share.purpose.empty()) {
        return "found a share without a purpose, expected what it is for";
    }
    if (share.kinds.none()) {
        return "found a share of nothing, expected one kind of data at least";
    }
    if (share.window < std::chrono::days{1}) {
        return "found a share of less than a day of data, expected a day or more";
    }
    if (share.until <= share.given_at) {
        return "found a share that ends before it begins, expected a later end";
    }
    return std::nullopt;
}

}  // namespace tracewright
