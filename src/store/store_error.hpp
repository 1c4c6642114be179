#pragma once

#include <tl/expected.hpp>

#include <cstdint>
#include <string>

namespace tracewright {

enum class StoreErrorKind : std::uint8_t {
    not_found,
    exists,             ///< the place or the name is taken
    wrong_key,          ///< passphrase or recovery key does not open it
    not_a_practice,     ///< a file of another kind
    too_new,            ///< written by a later version of the program
    busy,               ///< another program holds it longer than we wait
    no_room,            ///< the disk is full
    read_only,          ///< no right to write here
    unfit_file_system,  ///< a network file system, whose locks can't be relied on
    broken,             ///< damaged: what was written is not what is read
    refused,            ///< a rule forbids it: the sentence says which
    changed_meanwhile   ///< someone else changed it since it was read
};

/// The stable code: "not_found", ...
const char* code_of(StoreErrorKind kind);

/// Why the practice did not do it. Nothing was changed. The sentence bears no name, note or value
/// of a client (safety: nothing personal leaks).
struct StoreError {
    StoreErrorKind kind = StoreErrorKind::broken;
    std::string sentence;
};

template <typename Value>
using Stored = tl::expected<Value, StoreError>;

inline tl::unexpected<StoreError> store_error(StoreErrorKind kind, std::string sentence) {
    return tl::make_unexpected(StoreError{kind, std::move(sentence)});
}

inline tl::unexpected<StoreError> no_such_client() {
    return store_error(StoreErrorKind::not_found, "found no such client in this practice");
}

}  // namespace tracewright
