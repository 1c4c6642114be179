#include "cli/consent_said.hpp"

#include "coaching/client_clock.hpp"
#include "coaching/consent_words.hpp"

#include <ostream>

namespace tracewright {

void say_consent_over(const ClientFacts& facts, Instant now, const Streams& streams) {
    const ZoneHistory clock = client_clock(facts);
    const std::string over =
        consent_over_for_coach(facts.consent, clock.date_at(now), clock.writing());
    if (!over.empty()) {
        streams.err << over << "\n";
    }
}

}  // namespace tracewright
