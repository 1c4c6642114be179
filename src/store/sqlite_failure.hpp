#pragma once

#include "store/sqlite_database.hpp"
#include "store/store_error.hpp"

#include <type_traits>

namespace tracewright {

/// What a refused statement means for who asked: no room, no right to write, busy, damaged.
StoreError store_error_of(const DatabaseFailure& failure);

/// Runs `deed` (which returns Stored<...>); what it throws becomes an error value at the room's
/// edge.
template <typename Deed>
auto caught(Deed deed) -> decltype(deed()) {
    try {
        return deed();
    } catch (const DatabaseFailure& failure) {
        return tl::make_unexpected(store_error_of(failure));
    } catch (const std::runtime_error& damage) {
        return store_error(StoreErrorKind::broken, damage.what());
    }
}

}  // namespace tracewright
