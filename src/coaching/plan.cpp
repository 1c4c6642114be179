#include "coaching/plan.hpp"

#include "coaching/agreed_change.hpp"
#include "coaching/check_plan.hpp"
#include "coaching/gate_rules.hpp"
#include "coaching/plan_words.hpp"
#include "findings/causes_to_ask.hpp"
#include "findings/hours_gained.hpp"
#include "inference/normal_quantile.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace tracewright {

namespace {

constexpr double sure = 0.8;
constexpr double unlikely = 0.2;
constexpr double fast_fall_hours = 2;        // a gain that may lower A1c fast; ours
constexpr double little_carbohydrate = 130;  // grams a day
constexpr int points = 41;

struct AskedOutcome {
    std::vector<QuestionRow> rows;
    std::vector<Cause> asked;
    std::map<Cause, QuestionFinding> found;
    OwnScale scale;
};

OwnScale scale_of(std::span<const QuestionRow> rows) {
    std::vector<double> values;
    for (const QuestionRow& row : rows) {
        if (row.outcome && !row.ill) {
            values.push_back(*row.outcome);
        }
    }
    if (values.size() < 2) {
        return {};
    }
    OwnScale scale;
    for (const double value : values) {
        scale.mean += value / static_cast<double>(values.size());
    }
    for (const double value : values) {
        scale.sd += (value - scale.mean) * (value - scale.mean);
    }
    scale.sd = std::sqrt(scale.sd / static_cast<double>(values.size() - 1));
    return scale;
}

class Planner {
  public:
    Planner(const ReviewInput& input, const CareInput& care, const PlanSettings& settings)
        : input_(input), care_(care), settings_(settings), trace_(trace_of_questions(input)) {
        plan_.worth_hours = settings.worth_hours;
    }

    Plan plan() {
        std::vector<const CandidateChange*> open;
        ClientGates client(care_);
        for (const CandidateChange& change : candidate_changes()) {
            const Proposed proposed = proposed_by(change);
            auto gates = client.before_offer(proposed, change.words);
            if (gates.empty()) {
                open.push_back(&change);
            } else {
                plan_.closed.push_back({&change, std::move(gates), proposed});
            }
        }
        if (!trace_.readings.empty()) {
            ask(open);
            for (const CandidateChange* change : open) {
                rank(*change);
            }
        }
        std::ranges::stable_sort(plan_.ranked, [](const auto& a, const auto& b) {
            return a.hours != b.hours ? a.hours > b.hours
                                      : effort_of(a.change->effort) < effort_of(b.change->effort);
        });
        decide();
        return std::move(plan_);
    }

  private:
    const ReviewInput& input_;
    const CareInput& care_;
    const PlanSettings& settings_;
    CountedTrace trace_;
    std::map<Outcome, AskedOutcome> asked_;
    Plan plan_;

    // A smaller portion is a low-carbohydrate plan where the day has little already, or where its
    // carbohydrate is not noted.
    Proposed proposed_by(const CandidateChange& change) const {
        if (change.cause != Cause::meal_carbohydrate) {
            return change.proposed;
        }
        if (trace_.readings.empty()) {
            return Proposed::low_carbohydrate;
        }
        const double less = std::abs(facts_of(Cause::meal_carbohydrate).change_size);
        const auto rows =
            question_rows(input_, trace_, Outcome::day_mean, std::array{Cause::day_carbohydrate});
        double sum = 0;
        int days = 0;
        for (const QuestionRow& row : rows) {
            if (const auto found = row.causes.find(Cause::day_carbohydrate);
                found != row.causes.end()) {
                sum += found->second;
                ++days;
            }
        }
        return days == 0 || sum / days - less < little_carbohydrate ? Proposed::low_carbohydrate
                                                                    : change.proposed;
    }

    void ask(std::span<const CandidateChange* const> open) {
        std::map<Outcome, std::vector<Cause>> wanted;
        for (const CandidateChange* change : open) {
            auto& causes = wanted[change->outcome];
            if (change->cause) {
                causes.push_back(*change->cause);
            }
        }
        std::size_t count = 0;
        for (const auto& [outcome, causes] : wanted) {
            AskedOutcome& one = asked_[outcome];
            one.rows = question_rows(input_, trace_, outcome, causes);
            one.asked = causes_to_ask(one.rows, causes);
            one.scale = scale_of(one.rows);
            count += one.asked.size();
        }
        for (auto& [outcome, one] : asked_) {
            if (one.asked.empty()) {
                continue;
            }
            QuestionSettings together;
            together.asked_besides = count - one.asked.size();
            for (QuestionFinding& told :
                 answers_from_rows(input_, outcome, one.rows, one.asked, together).findings) {
                one.found.emplace(told.cause, std::move(told));
            }
        }
    }

    void rank(const CandidateChange& change) {
        const AskedOutcome& asked = asked_.at(change.outcome);
        RankedCandidate candidate;
        candidate.change = &change;
        candidate.others = others_of(change, asked.scale);
        candidate.days_read = static_cast<int>(std::ranges::count_if(
            asked.rows, [](const QuestionRow& row) { return row.outcome.has_value(); }));
        const QuestionFinding* own = nullptr;
        if (change.cause) {
            const auto found = asked.found.find(*change.cause);
            if (found != asked.found.end() && found->second.result.gate == DriverGate::open &&
                found->second.result.deviation > 0) {
                own = &found->second;
                candidate.own = found->second;
                candidate.both = NormalTelling{own->result.effect, own->result.deviation};
            }
        }
        if (candidate.others.prior) {
            candidate.both = candidate.both ? joined(*candidate.both, *candidate.others.prior)
                                            : *candidate.others.prior;
        }
        if (candidate.both && change.cause) {
            work_out_hours(candidate, asked.rows);
        }
        candidate.says = says_of(candidate, own != nullptr);
        if (!worth_showing(candidate)) {
            return;
        }
        if (auto eyes = eye_gates(care_); candidate.hours >= fast_fall_hours && !eyes.empty()) {
            plan_.closed.push_back(
                {&change, std::move(eyes), change.proposed});  // rule 10: the clinic first
            return;
        }
        candidate.cautions = cautions_of(change, care_);
        candidate.sentences = sentences_of(candidate, settings_.worth_hours);
        plan_.ranked.push_back(std::move(candidate));
    }

    // Where neither the client nor others have a number, only what a trial can ask is shown.
    static bool worth_showing(const RankedCandidate& candidate) {
        if (candidate.days_read == 0) {
            return false;
        }
        return candidate.both ? candidate.days_touched > 0 || !candidate.change->cause
                              : *candidate.change->trial != '\0';
    }

    static CandidateSays says_of(const RankedCandidate& candidate, bool own) {
        if (candidate.both && candidate.probability < unlikely) {
            return CandidateSays::not_worth_it;
        }
        // The client's days outweigh others in size; where the two point to different sides, a
        // trial tells.
        const auto& prior = candidate.others.prior;
        const bool unlike =
            own && prior && prior->mean * candidate.own->result.effect < 0 &&
            disagree(*prior, {candidate.own->result.effect, candidate.own->result.deviation});
        const bool agreed = own && !unlike && !candidate.others.conflict;
        return agreed && candidate.probability >= sure ? CandidateSays::worth_agreeing
                                                       : CandidateSays::find_out_first;
    }

    double hours_with(double effect, const CandidateChange& change,
                      std::span<const QuestionRow> rows, std::span<const double> ways) const {
        const double slope = effect / facts_of(*change.cause).change_size;
        if (facts_of(change.outcome).unit == OutcomeUnit::hours) {
            double sum = 0;
            double read = 0;
            for (std::size_t i = 0; i < rows.size(); ++i) {
                sum += slope * ways[i];
                read += rows[i].outcome ? 1 : 0;
            }
            return read > 0 ? sum / read : 0;
        }
        std::vector<GlucoseShift> shifts;
        for (std::size_t i = 0; i < rows.size(); ++i) {
            if (ways[i] != 0) {
                shifts.push_back({rows[i].made_of, slope * ways[i]});
            }
        }
        return hours_gained(trace_.view(), shifts);
    }

    void work_out_hours(RankedCandidate& candidate, std::span<const QuestionRow> rows) const {
        const CandidateChange& change = *candidate.change;
        const auto ways = ways_of(change, rows);
        candidate.days_touched =
            static_cast<int>(std::ranges::count_if(ways, [](double way) { return way != 0; }));
        const auto at = [&](double z) {
            return hours_with(candidate.both->mean + z * candidate.both->deviation, change, rows,
                              ways);
        };
        double sum = 0;
        int worth = 0;
        for (int i = 0; i < points; ++i) {
            const double hours = at(normal_quantile((i + 0.5) / points));  // of equal shares
            sum += hours;
            worth += hours >= settings_.worth_hours ? 1 : 0;
        }
        candidate.hours = sum / points;
        candidate.probability = static_cast<double>(worth) / points;
        candidate.hours95 = {at(normal_quantile(0.025)), at(normal_quantile(0.975))};
        std::ranges::sort(candidate.hours95);
    }

    // Where the diary shows the change on no day, every day had room for one.
    static std::vector<double> ways_of(const CandidateChange& change,
                                       std::span<const QuestionRow> rows) {
        auto ways = ways_to_better_side(rows, *change.cause, change.less_of_it);
        const bool any = std::ranges::any_of(ways, [](double way) { return way != 0; });
        if (!any && facts_of(*change.cause).yes_no) {
            for (std::size_t i = 0; i < rows.size(); ++i) {
                const auto value = rows[i].causes.find(*change.cause);
                const bool done = value != rows[i].causes.end() && value->second != 0;
                ways[i] = rows[i].outcome && !done ? 1 : 0;
            }
        }
        return ways;
    }

    void decide() {
        if (care_.facts.agreed_change) {
            plan_.agreed_closed = gates_since_agreed(care_);
            plan_.says = PlanSays::one_is_agreed;
        } else if (plan_.ranked.empty()) {
            plan_.says = plan_.closed.size() == candidate_changes().size()
                             ? PlanSays::nothing_offered
                             : PlanSays::no_change_yet;
        } else {
            const auto says = [&](CandidateSays what) {
                return std::ranges::find(plan_.ranked, what, &RankedCandidate::says) !=
                       plan_.ranked.end();
            };
            plan_.says = says(CandidateSays::worth_agreeing)   ? PlanSays::agree_on_one
                         : says(CandidateSays::find_out_first) ? PlanSays::find_out_first
                                                               : PlanSays::no_change_yet;
        }
        const auto best = leading(plan_);
        if (best != nullptr) {
            plan_.check = check_plan(*best, input_, care_, settings_.worth_hours);
        }
        plan_.sentence = plan_sentence(plan_, care_);
    }
};

}  // namespace

Plan plan_for(const ReviewInput& input, const CareInput& care, const PlanSettings& settings) {
    return Planner(input, care, settings).plan();
}

}  // namespace tracewright
