#include "coaching/paper_client.hpp"

#include "coaching/client_medicines.hpp"
#include "coaching/consent_words.hpp"

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

std::string PaperClient::consent_over() const {
    return consent_over_for_coach(facts.consent, today(), review.input.zones.writing());
}

bool PaperClient::pregnant_or_may_be() const {
    const Pregnancy answer = facts.cautions.pregnancy;
    return answer != Pregnancy::no && answer != Pregnancy::not_answered;
}

bool holds_a_number(const std::string& telephone) {
    constexpr std::size_t fewest = 3;  // 112
    std::size_t digits = 0;
    for (std::size_t i = 0; i < telephone.size(); ++i) {
        const bool digit = telephone[i] >= '0' && telephone[i] <= '9';
        const bool of_a_clock = (i + 1 < telephone.size() && telephone[i + 1] == ':') ||
                                (i + 2 < telephone.size() && telephone[i + 2] == ':') ||
                                (i > 0 && telephone[i - 1] == ':') ||
                                (i > 1 && telephone[i - 2] == ':');
        digits += digit && !of_a_clock ? 1U : 0U;
    }
    return digits >= fewest;
}

PaperContact contact_line(std::string who, const Contact* contact) {
    if (contact == nullptr || holds_a_number(contact->telephone)) {
        return {std::move(who), contact == nullptr ? "" : contact->telephone};
    }
    return {contact->telephone.empty() ? who : who + ", " + contact->telephone, ""};
}

const Contact* clinic_of(const ClientFacts& facts) {
    const Contact* clinic = contact_of(facts, ContactKind::clinic);
    return clinic != nullptr ? clinic : prescriber_of(facts);
}

const Contact* prescriber_of(const ClientFacts& facts) {
    return contact_of(facts, ContactKind::prescriber);
}

}  // namespace tracewright
