#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace tracewright {

/// BLAKE2b of a token: what is kept of it, from which it can't be learnt back. A token has 256 bits
/// by lot, so that its hash needs neither salt nor work.
using ShareTokenHash = std::array<std::uint8_t, 32>;

/// What opens a share: 256 bits by lot, from the system's source, as 43 letters that stand in an
/// address as they are (base64url without padding, RFC 4648 section 5). Told once, to the client,
/// and kept nowhere.
std::string drawn_share_token();

/// Empty for anything that can't be a token.
std::optional<ShareTokenHash> hash_of_share_token(std::string_view token);

/// In the same time wherever they differ.
bool same_share_token(const ShareTokenHash& one, const ShareTokenHash& other);

}  // namespace tracewright
