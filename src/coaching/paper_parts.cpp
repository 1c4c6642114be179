#include "coaching/paper_parts.hpp"

#include "coaching/first_aid.hpp"
#include "coaching/paper_client.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

std::string named(const char* who, const Contact* contact) {
    return contact == nullptr || contact->name.empty() ? who
                                                       : fmt::format("{}, {}", who, contact->name);
}

// The local emergency number belongs to nobody and is rung at any hour: no name, no words.
bool is_emergency_number(const Contact& contact) {
    return contact.kind == ContactKind::emergency && contact.name.empty() &&
           holds_a_number(contact.telephone) &&
           contact.telephone.find_first_not_of("0123456789 +-/().") == std::string::npos;
}

}  // namespace

std::optional<PaperBox> first_aid(const CareInput& care) {
    return first_aid_box(care.medicines.risks_at(care.as_of));
}

void add_contacts(Paper& paper, const ClientFacts& facts) {
    const Contact* clinic = clinic_of(facts);
    paper.blocks.emplace_back(contact_line(named("Your clinic", clinic), clinic));
    const auto number = std::ranges::find_if(facts.contacts, is_emergency_number);
    paper.blocks.emplace_back(
        PaperContact{"Emergency number", number == facts.contacts.end() ? "" : number->telephone});
    for (const Contact& contact : facts.contacts) {
        if (contact.kind == ContactKind::emergency && !is_emergency_number(contact)) {
            paper.blocks.emplace_back(
                contact_line(named("To be told in an emergency", &contact), &contact));
        }
    }
}

std::string last_reading_for_client(const CareInput& care) {
    std::optional<Instant> last;
    for (const Wear& wear : care.wears) {
        if (!wear.empty()) {
            last = std::max(last.value_or(wear.readings.back().at), wear.readings.back().at);
        }
    }
    if (!last) {
        return "There is no sensor reading yet.";
    }
    return fmt::format("Last sensor reading: {}, {}. This page knows of nothing after it.",
                       day_and_time(care.clock.wall_time(*last), care.clock.writing()),
                       age_words(*last, care.as_of, care.clock));
}

void end_client_page(Paper& paper, const CareInput& care) {
    paper.reader = PaperReader::client;
    paper.made = made_at(care.as_of);
    paper.blocks.emplace_back(PaperSentence{last_reading_for_client(care)});
    paper.blocks.emplace_back(PaperBox{
        "",
        {"This page is for a talk about habits. It is not a medical device or medical advice. It "
         "is not an alarm. A sensor can be wrong: if it does not match how you feel, do a "
         "finger-prick. Only your prescriber changes your medicine. Very low or very high and "
         "unwell: get help now."}});
}

std::string made_at(Instant as_of) {
    const auto day = std::chrono::floor<std::chrono::days>(as_of);
    const std::chrono::year_month_day date{day};
    const std::chrono::hh_mm_ss time{as_of - day};
    return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}Z", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                       time.hours().count(), time.minutes().count(), time.seconds().count());
}

}  // namespace tracewright
