#include "coaching/client_findings.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <map>

namespace tracewright {

namespace {

constexpr double steady_cv = 36;              // percent
constexpr double least_carbohydrate_g = 130;  // a day; our own rule (safety rule 8)
constexpr int days_to_mean = 3;
constexpr int meals_of_a_whole_day = 3;

using Lines = std::vector<std::string>;

void eating(const ClientFacts& facts, Lines& lines) {
    const EatingScreen& screen = facts.cautions.eating;
    if (screen.positive == Answered::no) {
        return;
    }
    const std::string why = screen.positive == Answered::yes ? "The eating screen was positive."
                            : screen.asked_on
                                ? "The eating screen was asked on " + day_words(*screen.asked_on) +
                                      " and is not answered."
                                : "The eating screen was not done.";
    lines.push_back(why +
                    " Talk first. Don't set a food change. Offer a referral. The client's "
                    "papers leave out energy, carbohydrate totals, portions and hours in "
                    "range.");
}

void substances(const MedicineRisks& risks, Lines& lines) {
    if (risks.unusable_for_lows) {
        lines.push_back(
            "A substance on the list makes some sensors read high and can hide lows: this wear is "
            "not usable for lows. Ask the clinic.");
    } else if (risks.misleads_sensor) {
        lines.push_back(
            "A substance on the list misleads some sensors: readings for about 8 hours after it "
            "may be wrong. A finger-prick tells more.");
    }
}

// The lowest mean of three days running, each with three meals whose grams are written.
std::optional<double> lowest_three_day_mean(const FirstReview& review) {
    struct Day {
        double grams = 0;
        int meals = 0;
    };
    std::map<CivilDate, Day> days;
    for (const DiaryEntry& entry : review.input.diary) {
        if (entry.kind == DiaryKind::meal && entry.carbohydrate_g) {
            Day& day = days[review.input.zones.date_at(entry.at)];
            day.grams += entry.carbohydrate_g->value;
            ++day.meals;
        }
    }
    std::optional<double> lowest;
    for (const auto& [date, first] : days) {
        double grams = 0;
        bool whole = true;
        for (int i = 0; i < days_to_mean; ++i) {
            const auto found = days.find(date + std::chrono::days{i});
            whole = whole && found != days.end() && found->second.meals >= meals_of_a_whole_day;
            grams += whole ? found->second.grams : 0;
        }
        if (whole && (!lowest || grams / days_to_mean < *lowest)) {
            lowest = grams / days_to_mean;
        }
    }
    return lowest;
}

void little_carbohydrate(const MedicineRisks& risks, const FirstReview& review, Lines& lines) {
    const auto mean = risks.sglt2 ? lowest_three_day_mean(review) : std::nullopt;
    if (mean && *mean < least_carbohydrate_g) {
        lines.push_back(fmt::format(
            "The diary has three days running with {:.0f} g of carbohydrate a day{}: eating less, "
            "or "
            "more than 12 hours without food, is blocked until the prescriber's answer is "
            "recorded. "
            "If ill, vomiting or unable to eat: ring the clinic today, even when glucose looks "
            "normal.",
            *mean,
            risks.answered ? " beside an SGLT2 inhibitor"
                           : ", and the medicine list, not answered, counts as holding an SGLT2 "
                             "inhibitor"));
    }
}

void may_not_be_type_2(const ClientFacts& facts, const MedicineRisks& risks,
                       const FirstReview& review, Lines& lines) {
    const Measure* cv = find(review.measures, "cv");
    const bool wide = cv != nullptr && cv->value.value_or(0) > steady_cv && risks.answered &&
                      !risks.insulin && !risks.secretagogue;
    if (wide || facts.cautions.another_autoimmune_disease == Answered::yes) {
        lines.emplace_back(
            "This does not fit the usual course. Ask the clinic whether the type has been checked. "
            "Until it is answered: no low-carbohydrate, fasting or weight-loss plan.");
    }
}

void consent(const ClientFacts& facts, const FirstReview& review, Lines& lines) {
    const Consent& given = facts.consent;
    const CivilDate today = review.input.zones.date_at(review.input.as_of);
    if (given.withdrawn_on) {
        lines.push_back("Consent was withdrawn on " + day_words(*given.withdrawn_on) + ".");
    } else if (given.until && *given.until < today) {
        lines.push_back("Consent ended on " + day_words(*given.until) + ": ask again.");
    } else if (!given.given_on) {
        lines.push_back(
            "Consent is not recorded: ask what may be kept, who sees it and until "
            "when.");
    }
}

}  // namespace

std::optional<Finding> care_finding(const ClientFacts& facts, const MedicineTimeline& medicines,
                                    const FirstReview& review) {
    const MedicineRisks risks = medicines.risks_in(review.trace.window);
    Lines lines;
    may_not_be_type_2(facts, risks, review, lines);
    little_carbohydrate(risks, review, lines);
    substances(risks, lines);
    eating(facts, lines);
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
