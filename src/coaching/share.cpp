#include "coaching/share.hpp"

#include "diary/says_something.hpp"

#include <algorithm>

namespace tracewright {

namespace {

// One given before may name them. No page shows any, so none is given any more.
bool can_be_given(SharedKind kind) {
    return kind != SharedKind::meal_photos;
}

}  // namespace

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

std::string address_of(SharedKind kind) {
    std::string address = name_of(kind);
    std::ranges::replace(address, ' ', '-');
    return address;
}

std::optional<SharedKind> shared_kind_called(std::string_view name) {
    const auto* const found = std::ranges::find_if(every_shared_kind, [&](SharedKind kind) {
        return name == name_of(kind) || name == address_of(kind);
    });
    return found == every_shared_kind.end() ? std::nullopt : std::optional(*found);
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

std::optional<SharedKinds> kinds_in_text(std::string_view text) {
    if (text.find_first_not_of(' ') == std::string_view::npos) {
        return SharedKinds::usual();
    }
    SharedKinds kinds;
    while (true) {
        const auto comma = text.find(',');
        std::string_view word = text.substr(0, comma);
        while (word.starts_with(' ')) {
            word.remove_prefix(1);
        }
        while (word.ends_with(' ')) {
            word.remove_suffix(1);
        }
        const auto kind = shared_kind_called(word);
        if (!kind || !can_be_given(*kind)) {
            return std::nullopt;
        }
        kinds.add(*kind);
        if (comma == std::string_view::npos) {
            return kinds;
        }
        text.remove_prefix(comma + 1);
    }
}

std::string text_of(const SharedKinds& kinds) {
    std::string text;
    for (const SharedKind kind : every_shared_kind) {
        if (kinds.has(kind)) {
            text += (text.empty() ? "" : ", ") + std::string(name_of(kind));
        }
    }
    return text;
}

std::optional<std::string> what_a_share_lacks(const Share& share) {
    if (share.client.empty()) {
        return "found a share without a client, expected the client's handle";
    }
    if (!says_something(share.recipient)) {
        return "found a share without a recipient, expected who is to see it";
    }
    if (!says_something(share.purpose)) {
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
