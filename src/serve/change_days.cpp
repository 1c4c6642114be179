#include "serve/change_days.hpp"

#include "findings/wording.hpp"
#include "time/day_text.hpp"

namespace tracewright {

Json days_of_changes_in_words(const ClientFacts& facts) {
    Json words = Json::object();
    const auto tell = [&](const AgreedChange& change) {
        for (const auto& day : {change.agreed_on, change.check_on, change.ended_on}) {
            if (day) {
                words[day_text(*day)] = full_date(*day, facts.writing);
            }
        }
    };
    if (facts.agreed_change) {
        tell(*facts.agreed_change);
    }
    for (const AgreedChange& change : facts.earlier_changes) {
        tell(change);
    }
    return words;
}

}  // namespace tracewright
