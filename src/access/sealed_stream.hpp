#pragma once

#include "access/sealing.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// Bytes of any length encrypted in pieces under one key, with `head` in front in the clear and
/// bound to them: no piece can be changed, left out, moved or added, and the end is known to be the
/// end.
std::vector<std::uint8_t> sealed_stream(std::span<const std::uint8_t> bytes, const SecretKey& key,
                                        std::span<const std::uint8_t> head);

/// Error: a sentence.
tl::expected<std::vector<std::uint8_t>, std::string> opened_stream(
    std::span<const std::uint8_t> stream, const SecretKey& key, std::span<const std::uint8_t> head);

}  // namespace tracewright
