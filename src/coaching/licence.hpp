#pragma once

#include <cstdint>
#include <string>

namespace tracewright {

/// What a coach is licensed for outside the practice. Texts for an unlicensed coach speak of the
/// client's own record and say 'ask the clinic' (safety rule 14).
enum class Licence : std::uint8_t { none, dietitian, nurse, other };

/// A text with what only a licensed coach is told besides.
struct ScopedText {
    std::string record;         ///< of the client's own record and habits
    std::string if_licensed{};  ///< what may stand behind it
};

/// For an unlicensed coach: the record and 'Ask the clinic.'; for a licensed one: both texts.
std::string in_scope(const ScopedText& text, Licence licence);

}  // namespace tracewright
