#include "coaching/care_input.hpp"
#include "coaching/client_findings.hpp"
#include "coaching/consent_words.hpp"
#include "coaching/eating_care.hpp"
#include "coaching/restricted_eating.hpp"
#include "coaching/substances.hpp"
#include "coaching/type_signs.hpp"
#include "findings/wording.hpp"

namespace tracewright {

namespace {

using Lines = std::vector<std::string>;

void may_not_be_type_2(const CareInput& input, Lines& lines) {
    const auto signs = type_signs(input);
    if (!signs.empty() && !type_was_checked(input, signs)) {
        lines.push_back(type_signs_for_coach(signs) +
                        " Until it is answered: no low-carbohydrate, fasting or weight-loss plan.");
    }
}

void add(std::string line, Lines& lines) {
    if (!line.empty()) {
        lines.push_back(std::move(line));
    }
}

void consent(const ClientFacts& facts, const FirstReview& review, Lines& lines) {
    const Consent& given = facts.consent;
    const CivilDate today = review.input.zones.date_at(review.input.as_of);
    std::string over = consent_over_for_coach(given, today, review.input.zones.writing());
    if (!over.empty()) {
        lines.push_back(std::move(over));
    } else if (!given.given_on) {
        lines.emplace_back(
            "Consent is not recorded: ask what may be kept, who sees it and until "
            "when.");
    }
}

}  // namespace

std::optional<Finding> care_finding(const ClientFacts& facts, const MedicineTimeline& medicines,
                                    const FirstReview& review) {
    const CareInput input{facts,     review.input.wears, review.input.diary,
                          medicines, review.input.zones, review.input.as_of};
    Lines lines;
    may_not_be_type_2(input, lines);
    add(restricted_eating_for_coach(input), lines);
    for (std::string& line :
         substances_for_coach(substance_stretches(input, review.trace.window))) {
        add(std::move(line), lines);
    }
    add(eating_for_coach(input), lines);
    consent(facts, review, lines);
    if (lines.empty()) {
        return std::nullopt;
    }
    Finding finding;
    finding.code = "care";
    finding.question = "What to be careful about?";
    finding.answer = Answer::yes;
    for (const std::string& line : lines) {
        finding.sentence += (finding.sentence.empty() ? "" : " ") + line;
    }
    finding.next = {NextStep::ask_client, "Local guidance and the client's clinic come first."};
    return finding;
}

}  // namespace tracewright
