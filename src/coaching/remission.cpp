#include "coaching/remission.hpp"

#include "diary/medicine_text.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::chrono::days three_months{90};
constexpr std::chrono::days six_months{180};
constexpr std::chrono::days a_year{365};

bool lowers_glucose(const MedicineText& text) {
    return std::ranges::any_of(text.recognised, [](const Medicine* medicine) {
        return medicine->glucose_lowering ||
               std::ranges::any_of(parts_of(*medicine),
                                   [](const Medicine* part) { return part->glucose_lowering; });
    });
}

struct Candidate {
    CivilDate on;
    bool under = false;
    std::string words;
};

class Checker {
  public:
    explicit Checker(const RemissionInput& input) : input_(input) {}

    RemissionCheck check() {
        check_.a1c_doubted = !a1c_doubted_because(input_.facts).empty();
        medicines();
        wait(input_.surgery_on, three_months, "surgery");
        wait(input_.diet_started, six_months, "the start of the diet programme");
        results();
        return check_;
    }

  private:
    const RemissionInput& input_;
    RemissionCheck check_;
    bool on_medicine_ = false;
    bool open_ = false;

    void no_sooner_than(CivilDate day) {
        check_.earliest = check_.earliest ? std::max(*check_.earliest, day) : day;
    }

    void wait(std::optional<CivilDate> from, std::chrono::days length, const char* what) {
        if (from) {
            no_sooner_than(*from + length);
            if (*from + length > input_.today) {
                check_.blocks.push_back(
                    fmt::format("{} days after {} end on {}.", length.count(), what,
                                full_date(*from + length, input_.facts.writing)));
            }
        }
    }

    void medicines() {
        if (!input_.facts.medicines_asked_on) {
            open_ = true;
            check_.blocks.emplace_back("Medicines have not been asked about: please ask.");
        }
        for (const MedicineLine& line : input_.facts.medicines) {
            const MedicineText text = medicine_text(line.written);
            if (text.says_none) {
                continue;
            }
            if (text.unrecognised) {
                open_ = true;
                check_.blocks.push_back("Medicine not recognised: please ask. As written: '" +
                                        line.written + "'.");
            } else if (lowers_glucose(text)) {
                of_medicine(line, text);
            }
        }
    }

    void of_medicine(const MedicineLine& line, const MedicineText& text) {
        if (line.from && *line.from > input_.today) {
            return;
        }
        if (line.until && *line.until < input_.today) {
            no_sooner_than(*line.until + three_months);
            if (*line.until + three_months > input_.today) {
                check_.blocks.push_back(
                    fmt::format("90 days after the last day of '{}' end on {}.", line.written,
                                full_date(*line.until + three_months, input_.facts.writing)));
            }
            return;
        }
        if (text.doing == MedicineDoing::stopped && !line.until) {
            open_ = true;
            check_.blocks.push_back("The last day of '" + line.written +
                                    "' is not told: please ask.");
            return;
        }
        on_medicine_ = true;
        check_.blocks.push_back("'" + line.written +
                                "' lowers glucose and is taken, whatever it is taken for.");
    }

    std::vector<Candidate> candidates() const {
        std::vector<Candidate> found;
        if (!check_.a1c_doubted) {
            for (const A1cResult& result : a1c_results(input_.facts.labs)) {
                found.push_back({result.on, result.under_6_5(), "A1c " + result.words()});
            }
        } else {
            for (const FastingResult& result : fasting_results(input_.facts.labs)) {
                found.push_back(
                    {result.on, result.under_126(),
                     "fasting glucose " + glucose_words(result.level.value(), result.level.unit)});
            }
            if (input_.sensor) {
                found.push_back({input_.sensor->on, input_.sensor->percent < 6.5,
                                 fmt::format("A1c estimated from the sensor {:.1f} %",
                                             input_.sensor->percent)});
            }
        }
        std::erase_if(found, [&](const Candidate& one) { return one.on > input_.today; });
        std::ranges::stable_sort(found, {}, &Candidate::on);
        return found;
    }

    void results() {
        const std::vector<Candidate> all = candidates();
        const CivilDate earliest = check_.earliest.value_or(CivilDate::min());
        // The last result on or after the first day that can count decides; without one the last.
        const Candidate* last = all.empty() ? nullptr : &all.back();
        const bool in_time = last != nullptr && last->on >= earliest;
        if (last == nullptr) {
            check_.blocks.emplace_back(check_.a1c_doubted
                                           ? "No fasting glucose and no sensor's estimate is there."
                                           : "No laboratory A1c is there.");
        } else if (!last->under) {
            check_.blocks.push_back(fmt::format("The last result ({}, {}) is not under the limit.",
                                                last->words,
                                                full_date(last->on, input_.facts.writing)));
        } else if (!in_time) {
            check_.blocks.push_back(
                fmt::format("The last result ({}) is of {}: a result of {} or later counts.",
                            last->words, full_date(last->on, input_.facts.writing),
                            full_date(earliest, input_.facts.writing)));
        }
        if (last != nullptr) {
            check_.counted_on = last->on;
        }
        const bool too_early = check_.earliest && *check_.earliest > input_.today;
        check_.state = on_medicine_      ? RemissionState::on_medicine
                       : open_           ? RemissionState::medicines_open
                       : last == nullptr ? RemissionState::no_result
                       : !last->under    ? RemissionState::too_high
                       : too_early       ? RemissionState::not_yet
                       : !in_time        ? RemissionState::not_yet
                                         : RemissionState::meets;
        if (check_.state == RemissionState::meets) {
            check_.test_next = last->on + a_year;
        } else if (check_.state == RemissionState::not_yet) {
            check_.test_next = std::max(*check_.earliest, input_.today);
        }
    }
};

std::string head_of(const RemissionCheck& check, WayOfWriting way) {
    switch (check.state) {
        case RemissionState::meets:
            return "Meets the numbers of the consensus definition; your prescriber confirms.";
        case RemissionState::too_high:
            return "Does not meet the numbers of the consensus definition.";
        case RemissionState::not_yet:
            return fmt::format("Not yet: the earliest date for a result that counts is {}.",
                               full_date(*check.earliest, way));
        case RemissionState::on_medicine:
            return "Does not meet the consensus definition while a medicine that lowers glucose is "
                   "taken.";
        case RemissionState::medicines_open:
            return "Can't be told until the medicines are answered.";
        case RemissionState::no_result:
            return "Can't be told without a result.";
        case RemissionState::clinic_leads:
            return "The maternity or diabetes clinic leads.";
    }
    return {};
}

}  // namespace

RemissionCheck remission_check(const RemissionInput& input) {
    return Checker(input).check();
}

Finding remission_finding(const RemissionCheck& check, const RemissionInput& input) {
    Finding finding;
    finding.code = "remission";
    finding.question = "Are the numbers of the consensus definition of remission met?";
    finding.answer = check.state == RemissionState::meets ? Answer::yes : Answer::cannot_tell;
    finding.sentence = head_of(check, input.facts.writing);
    for (const std::string& block : check.blocks) {
        finding.sentence += " " + block;
    }
    if (check.a1c_doubted) {
        std::string reasons;
        for (const std::string& reason : a1c_doubted_because(input.facts)) {
            reasons += (reasons.empty() ? "" : ", ") + reason;
        }
        finding.sentence += fmt::format(
            " The laboratory A1c may mislead here ({}): fasting glucose under 126 mg/dL (7.0 "
            "mmol/L) or an A1c estimated from the sensor under 6.5 % stands in for it.",
            reasons);
    }
    if (check.state == RemissionState::meets) {
        finding.next = {NextStep::contact_prescriber,
                        fmt::format("Ask the prescriber to confirm; test again by {}, then at "
                                    "least once a year.",
                                    full_date(*check.test_next, input.facts.writing))};
        finding.client_sentence =
            "Your numbers meet the definition that doctors agreed on. Your prescriber confirms it, "
            "and it is tested again each year.";
    } else if (check.test_next) {
        finding.next = {
            NextStep::collect_more,
            fmt::format("Test on {} or later.", full_date(*check.test_next, input.facts.writing))};
    }
    finding.evidence.method =
        "Riddle et al. 2021, 10.2337/dci21-0034; three months taken as 90 days";
    return finding;
}

}  // namespace tracewright
