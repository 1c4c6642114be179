#pragma once

#include "time/instant.hpp"
#include "time/zone_history.hpp"

#include <optional>
#include <string>

namespace tracewright {

/// "The last reading was Mon 2 March 14:10, 3 days ago. ..." and that nothing is known since;
/// without one, that nothing can be said (safety rule 6).
std::string last_reading_sentence(std::optional<Instant> last, Instant as_of,
                                  const ZoneHistory& clock);

}  // namespace tracewright
