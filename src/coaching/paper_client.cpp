#include "coaching/paper_client.hpp"

#include "coaching/client_medicines.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

const Contact* contact_of(const ClientFacts& facts, ContactKind kind) {
    const auto found = std::ranges::find(facts.contacts, kind, &Contact::kind);
    return found == facts.contacts.end() ? nullptr : &*found;
}

}  // namespace

PaperClient::PaperClient(const FirstReview& of_review, const ClientFacts& of_facts,
                         std::span<const StandingEscalation> of_escalations, std::string by_coach,
                         Licence by_licence)
    : review(of_review),
      facts(of_facts),
      escalations(of_escalations),
      coach(std::move(by_coach)),
      licence(by_licence),
      medicines(client_medicines(of_facts, of_review.input.zones)) {}

CareInput PaperClient::care() const {
    return {facts,     review.input.wears, review.input.diary,
            medicines, review.input.zones, review.input.as_of};
}

std::string PaperClient::made() const {
    const Instant at = review.input.as_of;
    const auto day = std::chrono::floor<std::chrono::days>(at);
    const std::chrono::year_month_day date{std::chrono::sys_days{day.time_since_epoch()}};
    const std::chrono::hh_mm_ss clock{std::chrono::floor<std::chrono::seconds>(at - day)};
    return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}Z", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                       clock.hours().count(), clock.minutes().count(), clock.seconds().count());
}

bool PaperClient::pregnant_or_may_be() const {
    const Pregnancy answer = facts.cautions.pregnancy;
    return answer != Pregnancy::no && answer != Pregnancy::not_answered;
}

const Contact* clinic_of(const ClientFacts& facts) {
    const Contact* clinic = contact_of(facts, ContactKind::clinic);
    return clinic != nullptr ? clinic : prescriber_of(facts);
}

const Contact* prescriber_of(const ClientFacts& facts) {
    return contact_of(facts, ContactKind::prescriber);
}

}  // namespace tracewright
