#pragma once

#include "intake/ledger.hpp"

namespace tracewright {

/// Notes of the file as a whole each word that stood again and again where glucose should: it may
/// mean low or high in a language that is not read, and then lows are missing.
void tell_unread_words(Ledger& ledger);

}  // namespace tracewright
