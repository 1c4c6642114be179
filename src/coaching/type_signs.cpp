#include "coaching/type_signs.hpp"

#include "coaching/a1c_results.hpp"
#include "coaching/weight.hpp"
#include "diary/written_words.hpp"
#include "findings/wording.hpp"
#include "measures/time_in_bands.hpp"
#include "trace/counted_trace.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

constexpr double raised_ketones = 0.6;  // mmol/L; from memory
constexpr int young = 35;               // years; our own rule
constexpr int sixty = 60;
constexpr double stable_cv = 36;  // %; Battelino et al. 2019, 10.2337/dci19-0028
constexpr std::chrono::hours enough_of_a_day{12};
constexpr std::chrono::days two_years{730};
constexpr std::chrono::days half_a_year{26 * 7};
constexpr double quick_rise_percent = 1.0;  // percentage points of A1c; our own rule
constexpr std::chrono::days spread_over{14};
constexpr std::chrono::days spread_needs{5};

using Seen = std::optional<TypeSignSeen>;

Seen weight_sign(const CareInput& input) {
    const auto weights = weights_of(input.facts.labs);
    const auto fall = weight_fall(weights, input.clock.date_at(input.as_of));
    const auto& change = input.facts.agreed_change;
    if (!fall || (change && change->agreed_on && *change->agreed_on <= fall->from.on)) {
        return {};
    }
    return TypeSignSeen{
        TypeSign::weight_loss, input.clock.day_of(fall->to.on).from,
        fmt::format("weight down by {} between {} and {}", percent_words(fall->percent),
                    full_date(fall->from.on, input.clock.writing()),
                    full_date(fall->to.on, input.clock.writing()))};
}

Seen thirst_sign(const CareInput& input) {
    Seen last;
    for (const DiaryEntry& entry : input.diary) {
        if (tells_how_they_are(entry) && speaks_of(entry, {"thirst"}) && entry.at <= input.as_of) {
            last = TypeSignSeen{
                TypeSign::thirst, entry.at,
                fmt::format("the diary says '{}' on {}", entry.text,
                            full_date(input.clock.date_at(entry.at), input.clock.writing()))};
        }
    }
    return last;
}

bool mostly_above_250(const Wear& wear, const CivilDay& day) {
    const TimeInBands bands = time_in_bands(cut(wear.view(), day.interval()));
    return bands.sensed() >= enough_of_a_day && bands.share(Band::very_high).value_or(0) > 0.5;
}

Seen highs_sign(const CareInput& input) {
    Seen last;
    for (const Wear& wear : input.wears) {
        int count = 0;
        for (const CivilDay& day :
             wear.empty() ? std::vector<CivilDay>{} : input.clock.days(wear.sensed_span())) {
            if (mostly_above_250(wear, day) && ++count >= 2 && (!last || *last->at < day.from)) {
                last = TypeSignSeen{TypeSign::mostly_above_250, day.from,
                                    fmt::format("above 250 mg/dL (13.9 mmol/L) most of the day on "
                                                "{} days, last on {}",
                                                count, full_date(day.date, input.clock.writing()))};
            }
        }
    }
    return last;
}

Seen ketones_sign(const CareInput& input) {
    Seen last;
    for (const DiaryEntry& entry : input.diary) {
        if (entry.kind == DiaryKind::ketones && entry.number.value_or(0) >= raised_ketones &&
            entry.at <= input.as_of) {
            last = TypeSignSeen{
                TypeSign::raised_ketones, entry.at,
                fmt::format("ketones of {:.1f} on {}", *entry.number,
                            full_date(input.clock.date_at(entry.at), input.clock.writing()))};
        }
    }
    return last;
}

std::optional<int> age_at_diagnosis(const ClientFacts& facts) {
    if (!facts.born_year || !facts.diagnosed_on) {
        return {};
    }
    const std::chrono::year_month_day date{
        std::chrono::sys_days{facts.diagnosed_on->time_since_epoch()}};
    return static_cast<int>(date.year()) - *facts.born_year;
}

// The year alone is known: who may have been under 35 counts as having been.
Seen young_sign(const CareInput& input) {
    const auto age = age_at_diagnosis(input.facts);
    if (!age || *age > young) {
        return {};
    }
    return TypeSignSeen{TypeSign::young_at_diagnosis, {}, "diagnosed young"};
}

bool speaks_of_the_pancreas(const ClientFacts& facts) {
    for (const std::string* text :
         {&facts.cautions.others, &facts.told_type, &facts.why_they_came}) {
        if (small_letters(*text).find("pancrea") != std::string::npos) {
            return true;
        }
    }
    return false;
}

Seen late_sign(const CareInput& input, bool weight_loss) {
    const auto age = age_at_diagnosis(input.facts);
    const bool is_new = input.facts.diagnosed_on &&
                        input.clock.date_at(input.as_of) - *input.facts.diagnosed_on <= two_years;
    if (!age || *age < sixty || !is_new || (!weight_loss && !speaks_of_the_pancreas(input.facts))) {
        return {};
    }
    return TypeSignSeen{
        TypeSign::new_after_sixty, {}, "new after 60, with weight loss or pancreas trouble"};
}

bool on_tablets(const CareInput& input, CivilDate day) {
    const Interval that_day = input.clock.day_of(day).interval();
    return std::ranges::any_of(input.medicines.uses(), [&](const MedicineUse& use) {
        return use.may_be_taken_in(that_day) &&
               std::ranges::any_of(use.text.recognised, &Medicine::glucose_lowering);
    });
}

Seen worsening_sign(const CareInput& input) {
    Seen last;
    const auto results = a1c_results(input.facts.labs);
    for (const A1cResult& later : results) {
        for (const A1cResult& before : results) {
            if (before.on < later.on && later.on - before.on <= half_a_year &&
                later.percent() - before.percent() >= quick_rise_percent - 1e-9 &&
                on_tablets(input, before.on)) {
                last =
                    TypeSignSeen{TypeSign::quick_worsening, input.clock.day_of(later.on).from,
                                 fmt::format("A1c up from {} to {} between {} and {} on medicine",
                                             before.words(), later.words(),
                                             full_date(before.on, input.clock.writing()),
                                             full_date(later.on, input.clock.writing()))};
            }
        }
    }
    return last;
}

Seen spread_sign(const CareInput& input) {
    const CountedTrace trace = counted_trace(input.wears);
    const MedicineRisks risks = input.medicines.risks_in({input.as_of - spread_over, input.as_of});
    if (trace.readings.empty() || (risks.answered && (risks.insulin || risks.secretagogue))) {
        return {};
    }
    const Instant to = std::min(trace.window.to, input.as_of);
    double seconds = 0;
    double sum = 0;
    double squares = 0;
    for_each_standing(cut(trace.view(), {std::max(trace.window.from, to - spread_over), to}),
                      [&](const Reading& reading, std::chrono::seconds stood) {
                          const auto weight = static_cast<double>(stood.count());
                          const double value = reading.value().in(GlucoseUnit::mg_per_dl);
                          seconds += weight;
                          sum += weight * value;
                          squares += weight * value * value;
                      });
    if (seconds < static_cast<double>(std::chrono::seconds{spread_needs}.count())) {
        return {};
    }
    const double mean = sum / seconds;
    const double cv = std::sqrt(std::max(0.0, squares / seconds - mean * mean)) / mean * 100;
    if (cv <= stable_cv) {
        return {};
    }
    return TypeSignSeen{TypeSign::wide_spread, to,
                        fmt::format("glucose varied by {} of its average", percent_words(cv))};
}

}  // namespace

bool told_type_2(const std::string& told_type) {
    const std::string told = small_letters(told_type);
    const auto holds = [&](const char* words) { return told.find(words) != std::string::npos; };
    const bool doubt = holds("1") || holds("?") || holds("sure") || holds("maybe") ||
                       holds("perhaps") || holds("not type") || holds("lada") || holds("pancrea");
    const bool says = holds("type 2") || holds("type2") || holds("t2") || holds("type ii") ||
                      holds("prediabetes") || holds("pre-diabetes") || told == "2";
    return says && !doubt;
}

namespace {

Seen told_sign(const std::string& told_type) {
    if (told_type_2(told_type)) {
        return {};
    }
    if (told_type.find_first_not_of(" \t") == std::string::npos) {
        return TypeSignSeen{
            TypeSign::type_not_told, {}, "it is not on record which type the client was told"};
    }
    return TypeSignSeen{TypeSign::other_type_told,
                        {},
                        fmt::format("on record as the type told is \"{}\"", told_type)};
}

}  // namespace

std::vector<TypeSignSeen> type_signs(const CareInput& input) {
    std::vector<TypeSignSeen> signs;
    const auto add = [&](Seen seen) {
        if (seen) {
            signs.push_back(std::move(*seen));
        }
    };
    add(told_sign(input.facts.told_type));
    const Seen weight = weight_sign(input);
    add(weight);
    add(thirst_sign(input));
    add(highs_sign(input));
    add(ketones_sign(input));
    add(young_sign(input));
    if (input.facts.cautions.another_autoimmune_disease == Answered::yes) {
        add(TypeSignSeen{
            TypeSign::another_autoimmune_disease, {}, "another autoimmune disease is on record"});
    }
    add(worsening_sign(input));
    add(late_sign(input, weight.has_value()));
    add(spread_sign(input));
    return signs;
}

bool type_was_checked(const CareInput& input, const std::vector<TypeSignSeen>& signs) {
    const PrescriberAnswer* answer =
        answer_that_holds(input.facts.prescriber_answers, AskedAbout::diabetes_type, input.as_of,
                          input.medicines, input.clock);
    return answer != nullptr && std::ranges::none_of(signs, [&](const TypeSignSeen& sign) {
               return sign.at && input.clock.date_at(*sign.at) > answer->on;
           });
}

bool are_for_the_prescriber(const CareInput& input, const std::vector<TypeSignSeen>& signs) {
    const bool only_not_told = signs.size() == 1 && signs.front().sign == TypeSign::type_not_told;
    return !signs.empty() && !only_not_told && !type_was_checked(input, signs);
}

std::string type_signs_for_coach(const std::vector<TypeSignSeen>& signs) {
    if (signs.empty()) {
        return {};
    }
    std::string seen;
    for (const TypeSignSeen& sign : signs) {
        seen += (seen.empty() ? "" : "; ") + sign.seen;
    }
    if (signs.size() == 1 && signs.front().sign == TypeSign::type_not_told) {
        return "It is not on record which type the client was told. Ask the client and the clinic.";
    }
    return "This does not fit the usual course (" + seen +
           "). Ask the clinic whether the type has been checked.";
}

std::string type_signs_for_client(const std::vector<TypeSignSeen>& signs) {
    const bool seen = std::ranges::any_of(signs, [](const TypeSignSeen& sign) {
        return sign.sign != TypeSign::type_not_told && sign.sign != TypeSign::other_type_told;
    });
    return seen ? "Please see your clinic soon." : std::string();
}

}  // namespace tracewright
