#pragma once

#include "coaching/care_input.hpp"
#include "coaching/client_review.hpp"
#include "coaching/licence.hpp"
#include "coaching/paper.hpp"

#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// What the papers about one client are written from: the review that the coach's page shows, what
/// the practice knows, and who coaches. Keeps references: they outlive it.
struct PaperClient {
    PaperClient(const FirstReview& of_review, const ClientFacts& of_facts,
                std::span<const StandingEscalation> of_escalations, std::string by_coach = {},
                Licence by_licence = Licence::none);

    const FirstReview& review;
    const ClientFacts& facts;
    std::span<const StandingEscalation> escalations;  ///< answered ones too
    std::string coach;                                ///< empty: not told
    Licence licence;
    MedicineTimeline medicines;

    CareInput care() const;
    CivilDate today() const { return review.input.zones.date_at(review.input.as_of); }
    /// ISO 8601, UTC: of the moment the review was made for.
    std::string made() const;
    bool pregnant_or_may_be() const;
    /// Consent withdrawn or ended, for the coach; empty otherwise.
    std::string consent_over() const;
};

/// Whether the words hold a number to ring, not only when or how: "in the afternoon", "after
/// 18:00".
bool holds_a_number(const std::string& telephone);

/// A line of whom to ring; without a number to ring a blank one, with what is known of when.
PaperContact contact_line(std::string who, const Contact* contact);

/// The clinic's or prescriber's telephone, as far as known.
const Contact* clinic_of(const ClientFacts& facts);
const Contact* prescriber_of(const ClientFacts& facts);

}  // namespace tracewright
