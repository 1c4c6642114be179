#pragma once

#include "access/sealing.hpp"

#include <string>
#include <string_view>

namespace tracewright {

/// A key as a person writes it on paper: 14 groups of four letters and digits, with a checksum.
/// The letters are Crockford's base 32, so that I, L and O are read as 1, 1 and 0, and capitals,
/// spaces and hyphens don't matter. Source of the alphabet: D. Crockford, 'Base 32' (2002), from
/// memory.
std::string written_recovery_key(const SecretKey& key);

/// Error: a sentence that names the group at fault where one is, never the key itself.
tl::expected<SecretKey, std::string> recovery_key_read(std::string_view text);

}  // namespace tracewright
