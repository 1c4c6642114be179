#include "coaching/sensor_record.hpp"

#include "coaching/wear_life_split.hpp"
#include "findings/question_words.hpp"
#include "findings/wording.hpp"
#include "inference/theil_sen.hpp"
#include "measures/error_grid.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>

namespace tracewright {

namespace {

// Pairs that are all alike tell nothing of how far others can lie apart.
bool has_width(const std::array<double, 2>& interval) {
    return interval[1] > interval[0];
}

class Recorder {
  public:
    Recorder(const ReviewInput& input, std::span<const WearFixing> fixings)
        : input_(input), fixings_(fixings) {}

    SensorRecord record() {
        life();
        accuracy();
        tell_life();
        tell_accuracy();
        return std::move(record_);
    }

  private:
    const ReviewInput& input_;
    std::span<const WearFixing> fixings_;
    SensorRecord record_;
    std::vector<AccuracyPair> pairs_;

    void life() {
        std::vector<Lifetime> lifetimes;
        for (std::size_t i = 0; i < input_.wears.size(); ++i) {
            const Wear& wear = input_.wears[i];
            if (wear.empty()) {
                continue;
            }
            record_.wears.push_back({wear.label, input_.zones.date_at(wear.start), wear.lasted(),
                                     wear.end, fixings_.empty() ? WearFixing{} : fixings_[i]});
            lifetimes.push_back(lifetime_of(record_.wears.back()));
        }
        record_.life = survival(lifetimes);
        record_.by_overpatch = split_by_overpatch(record_.wears);
        record_.by_site = split_by_site(record_.wears);
    }

    void accuracy() {
        std::map<int, std::pair<double, int>> by_day_of_wear;  // sum of differences, how many
        std::vector<double> reference;
        std::vector<double> sensor;
        std::vector<int> day;
        for (const Wear& wear : input_.wears) {
            if (wear.empty()) {
                continue;
            }
            for (const AccuracyPair& pair : finger_prick_pairs_with(wear.view(), input_.diary)) {
                pairs_.push_back(pair);
                const auto day_of_wear =
                    std::chrono::floor<std::chrono::days>(pair.at - wear.start);
                auto& [sum, count] = by_day_of_wear[static_cast<int>(day_of_wear.count())];
                sum += pair.sensor - pair.reference;
                ++count;
                reference.push_back(pair.reference);
                sensor.push_back(pair.sensor);
                day.push_back(
                    static_cast<int>(input_.zones.date_at(pair.at).time_since_epoch().count()));
            }
        }
        record_.accuracy = sensor_accuracy(pairs_);
        record_.yardstick = sensor_yardstick(pairs_);
        record_.by_day = limits_of_agreement_clustered(reference, sensor, day);
        if (record_.accuracy.carry == PairsCarry::intervals && by_day_of_wear.size() >= 5) {
            std::vector<double> days;
            std::vector<double> means;
            for (const auto& [day_of_wear, sum] : by_day_of_wear) {
                days.push_back(day_of_wear);
                means.push_back(sum.first / sum.second);
            }
            const MedianLine line = theil_sen(days, means);
            // However alike the days are, the line may tilt by a step of the levels over them.
            const double tilt =
                value_error_of(OutcomeUnit::glucose).least_sd / (days.back() - days.front());
            record_.drift = SensorDrift{line.slope,
                                        {std::min(line.slope95[0], line.slope - tilt),
                                         std::max(line.slope95[1], line.slope + tilt)}};
        }
    }

    int ended(WearEnd end) const {
        return static_cast<int>(std::ranges::count(record_.wears, end, &WearLine::end));
    }

    void tell_life() {
        Finding& finding = record_.life_finding;
        finding.code = "sensor_life";
        finding.question = "How long do this client's sensors last?";
        const int count = record_.life.count;
        finding.evidence.used = count;
        finding.evidence.used_what = "wears";
        finding.evidence.method =
            "Kaplan & Meier 1958 (10.1080/01621459.1958.10501452); failed: fell off or sensor "
            "failed";
        finding.sentence = fmt::format(
            "{} {}: {} fell off, {} failed, {} ended otherwise or have no end told.", count,
            count == 1 ? "wear" : "wears", ended(WearEnd::fell_off), ended(WearEnd::sensor_failed),
            count - ended(WearEnd::fell_off) - ended(WearEnd::sensor_failed));
        if (record_.life.failures < fewest_sensor_failures) {
            finding.sentence += fmt::format(
                " With fewer than {} that fell off or failed, how long they last can't be "
                "told.",
                fewest_sensor_failures);
            finding.next = {NextStep::collect_more, "Write down how each wear ended."};
        } else if (record_.life.median) {
            finding.sentence +=
                fmt::format(" Half have failed by day {:.1f}.", *record_.life.median);
        } else if (!record_.life.steps.empty()) {
            const SurvivalStep& last = record_.life.steps.back();
            finding.sentence +=
                fmt::format(" {} still worked after day {:.1f} (95 % interval {:.0f} to {:.0f} %).",
                            percent_words(100 * last.share), last.time, 100 * last.interval95[0],
                            100 * last.interval95[1]);
        }
        if (count < fewest_wears_compared) {
            finding.caveats.push_back(
                {CaveatKind::few_days,
                 fmt::format("With fewer than {} wears, an overpatch, a site or a kind of sensor "
                             "can't be compared yet.",
                             fewest_wears_compared)});
        }
    }

    std::string shown(double mg_per_dl) const {
        return glucose_words(converted(std::abs(mg_per_dl), GlucoseUnit::mg_per_dl, input_.unit),
                             input_.unit);
    }
    static constexpr const char* same = "the same";
    std::string apart(double mg_per_dl) const {
        const double level = converted(std::abs(mg_per_dl), GlucoseUnit::mg_per_dl, input_.unit);
        return rounded_for_display(level, input_.unit) == 0
                   ? same
                   : shown(mg_per_dl) + (mg_per_dl > 0 ? " higher" : " lower");
    }

    // To one digit more than a reading has: a drift is small and adds up.
    std::string a_day(double mg_per_dl) const {
        const bool mg = input_.unit == GlucoseUnit::mg_per_dl;
        const double level = converted(std::abs(mg_per_dl), GlucoseUnit::mg_per_dl, input_.unit);
        const std::string number = mg ? fmt::format("{:.1f}", level) : fmt::format("{:.2f}", level);
        return number + " " + name_of(input_.unit) + (mg_per_dl < 0 ? " lower" : " higher");
    }
    std::string drift_sentence(const SensorDrift& drift) const {
        const bool either_way = drift.interval95[0] <= 0 && drift.interval95[1] >= 0;
        return fmt::format(" With each day of wear it read {} (95 % interval from {} to {}){}.",
                           a_day(drift.a_day), a_day(drift.interval95[0]),
                           a_day(drift.interval95[1]),
                           either_way ? ": whether it drifts can't be told" : "");
    }

    std::string zones() const {
        std::string text;
        for (std::size_t i = 0; i < record_.accuracy.zones.size(); ++i) {
            if (record_.accuracy.zones[i] > 0) {
                text += (text.empty() ? "" : ", ") +
                        fmt::format("{} {}", static_cast<char>('A' + i), record_.accuracy.zones[i]);
            }
        }
        return text;
    }

    void tell_accuracy() {
        Finding& finding = record_.accuracy_finding;
        const SensorAccuracy& found = record_.accuracy;
        finding.code = "sensor_accuracy";
        finding.question = "How far does the sensor read from finger-pricks?";
        finding.evidence.used = static_cast<int>(found.pairs);
        finding.evidence.used_what = "pairs";
        finding.evidence.method =
            "reading within 5 minutes; 15/15 and 20/20 by the cut of 100 mg/dL; limits of "
            "agreement "
            "(10.1016/S0140-6736(86)90837-8); consensus error grid, type 2, vertices from memory";
        if (found.carry == PairsCarry::nothing) {
            finding.sentence = fmt::format(
                "{} {} of finger-prick and reading: too few to say; at least 10 are needed.",
                found.pairs, found.pairs == 1 ? "pair" : "pairs");
            finding.next = {NextStep::finger_prick,
                            "Finger-prick at different levels and write the time down."};
            return;
        }
        finding.estimate = Estimate{converted(found.bias, GlucoseUnit::mg_per_dl, input_.unit),
                                    name_of(input_.unit),
                                    {},
                                    ""};
        finding.sentence = fmt::format(
            "Over {} pairs the sensor read {} finger-pricks on average", found.pairs,
            apart(found.bias) == same ? "about the same as" : apart(found.bias) + " than");
        const LimitsOfAgreement& limits = record_.by_day ? *record_.by_day : *found.limits;
        if (found.carry == PairsCarry::intervals && has_width(limits.mean95)) {
            finding.estimate->interval95 = {
                {converted(limits.mean95[0], GlucoseUnit::mg_per_dl, input_.unit),
                 converted(limits.mean95[1], GlucoseUnit::mg_per_dl, input_.unit)}};
            finding.sentence += fmt::format(" (95 % interval from {} to {})",
                                            apart(limits.mean95[0]), apart(limits.mean95[1]));
        }
        finding.sentence += fmt::format(
            "; 95 % of pairs lie between {} and {}. Mean absolute relative difference (MARD) "
            "{:.1f} "
            "%; {:.0f} % within 15/15, {:.0f} % within 20/20. Error grid: {}.",
            apart(limits.limits[0]), apart(limits.limits[1]), found.mard, found.agreeing[0],
            found.agreeing[1], zones());
        if (record_.drift) {
            finding.sentence += drift_sentence(*record_.drift);
        }
        finding.caveats.push_back(
            {CaveatKind::single_readings,
             "A home meter is itself off by up to 15 %: this is the difference "
             "of the two, not the sensor's error alone."});
        if (found.carry == PairsCarry::description) {
            finding.caveats.push_back(
                {CaveatKind::few_days, "With fewer than 20 pairs this is a description only."});
        }
    }
};

}  // namespace

SensorRecord sensor_record(const ReviewInput& input, std::span<const WearFixing> fixings) {
    if (!fixings.empty() && fixings.size() != input.wears.size()) {
        throw std::invalid_argument("how sensors sat is told of another number of wears");
    }
    return Recorder(input, fixings).record();
}

std::vector<const Finding*> findings_of(const SensorRecord& record) {
    std::vector<const Finding*> findings = {&record.life_finding};
    for (const auto* split : {&record.by_overpatch, &record.by_site}) {
        if (*split) {
            findings.push_back(&(*split)->finding);
        }
    }
    findings.push_back(&record.accuracy_finding);
    return findings;
}

}  // namespace tracewright
