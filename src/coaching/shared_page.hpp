#pragma once

#include "coaching/care_input.hpp"
#include "coaching/client_review.hpp"
#include "coaching/licence.hpp"
#include "coaching/paper.hpp"
#include "coaching/share.hpp"
#include "findings/first_review.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What of a client reaches into a share's window, and what a letter needs besides.
struct SharedRecord {
    ReviewInput input;  ///< wears and diary of the window; `as_of`: the moment of looking
    std::optional<Instant> last_reading;  ///< of all, also before the window
    std::string name;                     ///< the client's; stands in the letter alone
    ClientFacts facts;
    std::vector<StandingEscalation> escalations;
    std::string coach;  ///< who writes the letter
    Licence licence = Licence::none;
};

/// A page that another person sees, with what its figures are drawn from.
struct SharedPage {
    Paper paper;
    std::optional<FirstReview> hours;   ///< set: the hours bar is the first figure
    std::optional<FirstReview> sheets;  ///< set: then one figure for each of its days
};

/// The kinds that are open and nothing else: when the last reading was and how old it is, that this
/// is no alarm, each kind under its own heading, the cautions once. What belongs to another kind is
/// taken out of a kind before it is told: no foods on day sheets, no lows in the hours bar unless
/// lows are open too, no amounts, energy or weight in what was written. The coach's own notes are
/// never part of it. `dated`: a page handed over as a file, which can't be taken back and says so.
SharedPage shared_page(const SharedRecord& record, const Share& share, const SharedKinds& open,
                       bool dated = false);

}  // namespace tracewright
