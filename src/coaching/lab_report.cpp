#include "coaching/lab_report.hpp"

#include "coaching/agreed_change.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/eating_care.hpp"
#include "coaching/gates.hpp"
#include "coaching/labs_not_read.hpp"
#include "coaching/next_lab.hpp"
#include "coaching/trial_calendar_page.hpp"
#include "coaching/weight.hpp"
#include "findings/edge_words.hpp"
#include "findings/wording.hpp"
#include "measures/day_sums.hpp"
#include "measures/glucose_indicator.hpp"
#include "measures/shown_range.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

constexpr std::chrono::days near_enough{28};
constexpr std::chrono::days remembers{84};  // 12 weeks

std::string points(double value) {
    return fmt::format("{:.1f}", std::abs(value));
}

double to_tenth(double value) {
    return std::round(value * 10 + 1e-9) / 10;
}

struct MeanOfDays {
    double mg_per_dl = 0;
    int days = 0;
};

MeanOfDays mean_between(const std::vector<DayMean>& days, CivilDate from, CivilDate to) {
    MeanOfDays mean;
    for (const DayMean& day : days) {
        if (day.date >= from && day.date <= to) {
            mean.mg_per_dl += day.mg_per_dl;
            ++mean.days;
        }
    }
    mean.mg_per_dl /= std::max(1, mean.days);
    return mean;
}

bool closed_by_the_eating_screen(const std::vector<Gate>& gates) {
    return std::ranges::any_of(gates, [](const Gate& gate) {
        return gate.kind == GateKind::eating || gate.kind == GateKind::eating_signs;
    });
}

class Reporter {
  public:
    explicit Reporter(const LabQuestion& question)
        : question_(question),
          today_(question.input.zones.date_at(question.input.as_of)),
          days_(day_means(question.input)),
          results_(a1c_results(question.facts.labs)),
          medicines_(client_medicines(question.facts, question.input.zones)),
          goals_(goals_that_hold(question.facts)) {
        std::erase_if(results_, [&](const A1cResult& result) { return result.on > today_; });
    }

    LabReport report() {
        report_.not_read = labs_not_read(question_.facts.labs);
        line();
        if (goals_.kind == GoalKind::pregnancy) {
            clinic_leads();
            return std::move(report_);
        }
        next_test();
        apart();
        expect();
        remission();
        return std::move(report_);
    }

  private:
    const LabQuestion& question_;
    CivilDate today_;
    std::vector<DayMean> days_;
    std::vector<A1cResult> results_;
    MedicineTimeline medicines_;
    Goals goals_;
    LabReport report_;

    WayOfWriting way() const { return question_.input.zones.writing(); }
    CareInput care() const {
        return {question_.facts, question_.input.wears, question_.input.diary,
                medicines_,      question_.input.zones, question_.input.as_of};
    }

    void clinic_leads() {
        report_.remission.state = RemissionState::clinic_leads;
        Finding finding;
        finding.code = "a1c_expected";
        finding.question = "What may the next A1c be?";
        finding.sentence =
            "Nothing is expected here: in pregnancy, while planning one, or when unsure, the "
            "maternity or diabetes clinic leads and says which test to go by.";
        report_.findings.push_back(std::move(finding));
    }

    // By the range of pregnancy where that is shown.
    std::string share_words(const Wear& wear) const {
        const ShownRange range = shown_range(goals_);
        const TimeByRange time = time_by_range(wear.view(), range);
        const auto sensed = static_cast<double>(time.sensed().count());
        const std::string share = percent_words(
            sensed > 0 ? 100 * static_cast<double>(time.in_range.count()) / sensed : 0);
        const GlucoseUnit unit = question_.input.unit;
        return range.in_pregnancy()
                   ? share + " at " +
                         from_to_words(edge_words(range.low, unit), edge_words(range.high, unit),
                                       std::string(" ") + name_of(unit))
                   : share + " in range";
    }

    void line() {
        std::vector<LineRow>& line = report_.line;
        for (const A1cResult& result : results_) {
            const std::string words = "A1c " + result.words();
            line.push_back({result.on, "lab", words, words});
        }
        for (const FastingResult& result : fasting_results(question_.facts.labs)) {
            const std::string words =
                "fasting glucose " + glucose_words(result.level.value(), result.level.unit);
            line.push_back({result.on, "lab", words, words});
        }
        const ZoneHistory& zones = question_.input.zones;
        for (const Wear& wear : question_.input.wears) {
            if (!wear.empty()) {
                const Interval span = wear.sensed_span();
                const std::string days =
                    fmt::format("{} to {}", wear.label,
                                day_words(zones.date_at(wear.readings.back().at), way()));
                line.push_back(
                    {zones.date_at(span.from), "wear", days + ", " + share_words(wear), days});
            }
        }
        const Instant before_any_life{std::chrono::sys_days{std::chrono::year{1850} / 1 / 1}};
        for (const MedicineEvent& event :
             medicines_.events_between(before_any_life, question_.input.as_of)) {
            const char* what = event.kind == MedicineEvent::Kind::start  ? "started"
                               : event.kind == MedicineEvent::Kind::stop ? "stopped"
                                                                         : "changed";
            // A stop is told at the end of its last day.
            const auto at = event.kind == MedicineEvent::Kind::stop
                                ? event.at - std::chrono::seconds{1}
                                : event.at;
            const std::string words = event.names + " " + what;
            line.push_back({zones.date_at(at), "medicine", words, words});
        }
        for (const AgreedChange& change : question_.facts.earlier_changes) {
            changes(change);
        }
        if (question_.facts.agreed_change) {
            changes(*question_.facts.agreed_change);
        }
        for (const Weight& weight : weights_of(question_.facts.labs)) {
            line.push_back({weight.on, "weight", fmt::format("{:.1f} kg", weight.kg), {}});
        }
        for (const KeptTrial& kept : question_.trials) {
            trials(kept);
        }
        std::ranges::stable_sort(line, {}, &LineRow::on);
    }

    void changes(const AgreedChange& change) {
        const bool kept_off = is_kept_off_paper(change, care());
        const auto add = [&](CivilDate on, const std::string& words) {
            report_.line.push_back({on, "change", words, kept_off ? std::string() : words});
        };
        if (change.agreed_on) {
            add(*change.agreed_on, change.words);
        }
        if (change.ended_on && change.outcome != ChangeOutcome::open) {
            add(*change.ended_on, change.words + ": " + name_of(change.outcome));
        }
    }

    void trials(const KeptTrial& kept) {
        const Trial& trial = kept.trial;
        const bool kept_off = is_kept_off_paper(trial, care());
        const auto add = [&](CivilDate on, const char* what) {
            const std::string words = what + trial.question;
            report_.line.push_back({on, "trial", words, kept_off ? std::string() : words});
        };
        add(trial.first_day(), "begun: ");
        if (kept.stopped_on) {
            add(*kept.stopped_on, "stopped: ");
        } else if (state_of(kept, today_) == TrialState::ended) {
            add(trial.last_day(), "ended: ");
        }
    }

    void next_test() {
        report_.next_test =
            next_lab(question_.facts, medicines_, question_.input.zones, question_.input.as_of).on;
    }

    // The last result with days seen near it.
    void apart() {
        Finding finding;
        finding.code = "a1c_gap";
        finding.question = "Do the laboratory's A1c and the sensor agree?";
        finding.evidence.method =
            "laboratory A1c less 3.31 + 0.02392 x mean (Bergenstal et al. 2018, "
            "10.2337/dc18-1581), "
            "within 28 days of each other";
        finding.evidence.used_what = "days";
        for (auto result = results_.rbegin(); result != results_.rend(); ++result) {
            const MeanOfDays near =
                mean_between(days_, result->on - near_enough, result->on + near_enough);
            if (near.days < 1) {
                continue;
            }
            tell_gap(finding, *result, near);
            report_.findings.push_back(std::move(finding));
            return;
        }
        finding.sentence = results_.empty() ? "No laboratory A1c is there."
                                            : "No day within 28 days of a laboratory A1c was seen.";
        report_.findings.push_back(std::move(finding));
    }

    void tell_gap(Finding& finding, const A1cResult& result, const MeanOfDays& near) const {
        const double indicator = glucose_management_indicator(near.mg_per_dl).percent;
        const double gap = to_tenth(to_tenth(result.percent()) - to_tenth(indicator));
        const int seen = mean_between(days_, result.on - remembers, result.on).days;
        finding.evidence.used = near.days;
        finding.estimate = Estimate{gap, "percentage points", std::nullopt, ""};
        const double level =
            converted(near.mg_per_dl, GlucoseUnit::mg_per_dl, question_.input.unit);
        const std::string difference = gap == 0
                                           ? std::string("the same")
                                           : fmt::format("{} points {} than the sensor's estimate",
                                                         points(gap), gap > 0 ? "higher" : "lower");
        finding.sentence = fmt::format(
            "Mean glucose {} on {} days gives a glucose management indicator (GMI) of {:.1f} %. "
            "The "
            "laboratory's A1c of {} was {}: {}. Half of people differ by 0.5 or more. Reasons: how "
            "long red cells live, iron, kidneys, haemoglobin variants, the sensor's own error, and "
            "the weeks before, which the laboratory also sees: of the 84 days before it {} were "
            "seen.",
            glucose_words(level, question_.input.unit), near.days, to_tenth(indicator),
            full_date(result.on, way()), result.words(), difference, seen);
        finding.client_sentence =
            "The laboratory looks back about three months; the sensor sees these days. They often "
            "differ.";
    }

    void expect() {
        Finding finding;
        finding.code = "a1c_expected";
        finding.question = "What may the next A1c be?";
        finding.evidence.method =
            "mean weighted by the age of red cells (120 days), line of Nathan et al. 2008 "
            "(10.2337/dc08-0545), own offset shrunk by the pairs behind it";
        finding.evidence.used_what = "days";
        const auto doubts = a1c_doubted_because(question_.facts);
        if (!doubts.empty()) {
            finding.sentence = fmt::format(
                "Nothing is expected here: the laboratory's A1c may mislead with {}. Ask the "
                "clinic which test to go by.",
                fmt::join(doubts, ", "));
            report_.findings.push_back(std::move(finding));
            return;
        }
        report_.expected = expected_a1c(days_, results_, *report_.next_test, today_);
        const ExpectedA1c& expected = *report_.expected;
        finding.evidence.used = expected.days_seen;
        if (!expected.none_because.empty()) {
            finding.sentence = "Nothing is expected: " + expected.none_because + ".";
            finding.next = {NextStep::collect_more, "At least 10 days of readings."};
        } else {
            tell_expected(finding, expected);
        }
        report_.findings.push_back(std::move(finding));
    }

    void tell_expected(Finding& finding, const ExpectedA1c& expected) const {
        finding.estimate = Estimate{expected.percent, "%", expected.interval95, ""};
        const std::string own =
            expected.offset.pairs == 0
                ? "No past result of this client has enough days beside it, so what people in "
                  "general differ by is in the range."
                : fmt::format("This client's own gap from {} past {} is in it ({:.1f} points {}).",
                              expected.offset.pairs, expected.offset.pairs == 1 ? "pair" : "pairs",
                              std::abs(expected.offset.value),
                              expected.offset.value < 0 ? "lower" : "higher");
        finding.sentence = fmt::format(
            "If glucose stays as in these days, an A1c of {} is expected at about {:.1f} %, in 95 "
            "of "
            "100 such cases between {:.1f} and {:.1f} %. {} The days seen carry {:.0f} % of what "
            "it "
            "remembers. The best date for the next test is {} or later.",
            full_date(expected.on, way()), to_tenth(expected.percent),
            to_tenth(expected.interval95[0]), to_tenth(expected.interval95[1]), own,
            100 * expected.weight_seen, full_date(*report_.next_test, way()));
        finding.next = {NextStep::nothing, fmt::format("Laboratory A1c on {} or later.",
                                                       full_date(*report_.next_test, way()))};
        if (expected.offset.pairs < 2) {
            finding.caveats.push_back(
                {CaveatKind::few_days,
                 "The own gap rests on fewer than two past pairs: the range is wide."});
        }
    }

    void remission() {
        std::optional<SensorEstimate> sensor;
        if (!days_.empty()) {
            const CivilDate last = days_.back().date;
            const MeanOfDays lately = mean_between(days_, last - near_enough, last);
            if (lately.days >= 10) {
                sensor =
                    SensorEstimate{last, glucose_management_indicator(lately.mg_per_dl).percent};
            }
        }
        const RemissionInput input{question_.facts, today_, question_.diet_started,
                                   question_.surgery_on, sensor};
        report_.remission = remission_check(input);
        report_.findings.push_back(remission_finding(report_.remission, input));
    }
};

}  // namespace

std::vector<DayMean> day_means(const ReviewInput& input) {
    const CountedTrace trace = counted_trace(input.wears, input.prefer_wear);
    std::vector<DayMean> means;
    if (trace.readings.empty()) {
        return means;
    }
    for (const DayOfTrace& day : days_of_trace(trace.view(), input.zones)) {
        if (day.valid) {
            means.push_back({day.date, day.sums.mean(GlucoseUnit::mg_per_dl)});
        }
    }
    return means;
}

bool is_kept_off_paper(const AgreedChange& change, const CareInput& care) {
    return numbers_turned_down(care.facts.cautions.eating) &&
           closed_by_the_eating_screen(gates_before_agreeing(change, true, care));
}

bool is_kept_off_paper(const Trial& trial, const CareInput& care) {
    return numbers_turned_down(care.facts.cautions.eating) &&
           closed_by_the_eating_screen(gates_before_trial_papers(trial, care));
}

LabReport lab_report(const LabQuestion& question) {
    return Reporter(question).report();
}

}  // namespace tracewright
