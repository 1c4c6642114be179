#pragma once

#include "coaching/care_input.hpp"
#include "coaching/client_medicines.hpp"
#include "findings/review_input.hpp"
#include "render/figure.hpp"
#include "serve/route.hpp"

#include <tl/expected.hpp>

#include <mutex>

namespace tracewright {

/// All that is kept of the client asked about, as of now, with the medicines taken over time.
struct AskedRecord {
    ReviewInput input;
    const ClientFacts& facts;
    MedicineTimeline medicines;

    /// What gates look at.
    CareInput care() const {
        return {facts, input.wears, input.diary, medicines, input.zones, input.as_of};
    }
    CivilDate today() const { return input.zones.date_at(input.as_of); }
};

/// Error: what the practice refused. A client may have no reading yet.
tl::expected<AskedRecord, Reply> asked_record(Asked& asked);
/// The same where nothing can be said without readings: 404 no_readings.
tl::expected<AskedRecord, Reply> asked_record_with_readings(Asked& asked);

/// What a review reads of the client in the window asked for (?from=&to=), else the last wear.
/// Error: 422 for no window, 404 where there is no reading.
tl::expected<ReviewInput, Reply> asked_review_input(Asked& asked);

/// When the last reading was by the client's clock and how old it is (safety rule 6); null without
/// one.
Json json_of_last_reading(const ReviewInput& input);

/// To hold while figures or papers are drawn: the libraries that set text are used one at a time.
std::mutex& drawing();

/// A drawing with what it says and its data. `id` names it within the reply.
Json json_of_figure(const std::string& id, const Figure& figure);

}  // namespace tracewright
