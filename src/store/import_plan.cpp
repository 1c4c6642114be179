#include "store/import_plan.hpp"

#include "store/meeting.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace tracewright {

namespace {

constexpr std::size_t few_differences = 2;
constexpr std::size_t one_in = 50;
constexpr std::size_t pairs_to_tell_by = 12;
constexpr double most_relative_difference = 0.25;
constexpr double least_correlation = 0.6;

std::string whose_file(const std::string& why) {
    return why + " Is this this client's file?";
}

class Planner {
  public:
    Planner(BroughtIn file, std::span<const KnownWear> known, WhoseFile whose,
            std::chrono::seconds new_wear_after)
        : file_(std::move(file)), known_(known), whose_(whose), new_wear_after_(new_wear_after) {}

    ImportPlan plan(const std::function<bool(const DiaryEntry&)>& known_entry) {
        std::vector<std::vector<Reading>> sensors = std::move(file_.other_sensors);
        sensors.insert(sensors.begin(), std::move(file_.readings));
        const std::vector<std::optional<std::size_t>> owners = owners_of_known(sensors);
        for (std::size_t sensor = 0; sensor < sensors.size(); ++sensor) {
            for (Wear& wear : wears_of(std::move(sensors[sensor]), file_.source, new_wear_after_)) {
                readings_ += wear.readings.size();
                place(std::move(wear), sensor, owners);
            }
        }
        for (DiaryEntry& entry : file_.diary) {
            const bool known = known_entry(entry);
            (known ? known_lines_ : new_lines_).insert(entry.source_line);
            if (!known) {
                plan_.entries.push_back(std::move(entry));
            }
        }
        plan_.held.insert(plan_.held.end(), file_.held.begin(), file_.held.end());
        count_rows();
        if (plan_.question) {
            hold_everything();
        }
        return std::move(plan_);
    }

  private:
    BroughtIn file_;
    std::span<const KnownWear> known_;
    WhoseFile whose_;
    std::chrono::seconds new_wear_after_;
    ImportPlan plan_;
    std::size_t readings_ = 0;
    std::size_t repeated_ = 0;
    std::size_t contradicted_ = 0;
    std::set<int> known_lines_;
    std::set<int> new_lines_;

    void ask(std::string question) {
        if (!plan_.question && whose_ == WhoseFile::not_asked) {
            plan_.question = std::move(question);
        }
    }

    // For each known wear the sensor of the file that repeats most of it, where the file has
    // several and one does.
    std::vector<std::optional<std::size_t>> owners_of_known(
        std::span<const std::vector<Reading>> sensors) const {
        std::vector<std::optional<std::size_t>> owners(known_.size());
        for (std::size_t k = 0; sensors.size() > 1 && k < known_.size(); ++k) {
            std::size_t most = 0;
            for (std::size_t s = 0; s < sensors.size() && !known_[k].wear.empty(); ++s) {
                const Meeting meeting = meeting_of(sensors[s], known_[k].wear);
                const std::size_t repeated = meeting.repeated.size();
                if (repeated > most && repeated > meeting.contradicted.size()) {
                    most = repeated;
                    owners[k] = s;
                }
            }
        }
        return owners;
    }

    void place(Wear wear, std::size_t sensor, std::span<const std::optional<std::size_t>> owners) {
        std::vector<bool> taken(wear.readings.size(), false);
        std::optional<std::int64_t> joins;
        for (std::size_t k = 0; k < known_.size(); ++k) {
            const KnownWear& known = known_[k];
            if (known.wear.empty() || owners[k].value_or(sensor) != sensor) {
                continue;
            }
            const Meeting meeting = meeting_of(wear.readings, known.wear);
            judge(meeting, wear, known.wear);
            for (const std::size_t i : meeting.repeated) {
                repeated_ += taken[i] ? 0U : 1U;
                taken[i] = true;
            }
            for (const std::size_t i : meeting.contradicted) {
                if (!taken[i]) {
                    ++contradicted_;
                    plan_.held.push_back({wear.readings[i].at, wear.readings[i].value(), 0});
                }
                taken[i] = true;
            }
            if (!meeting.repeated.empty() || (meeting.between == 0 && follows(wear, known.wear))) {
                joins = known.id;
            }
        }
        std::vector<Reading> fresh;
        for (std::size_t i = 0; i < taken.size(); ++i) {
            if (!taken[i]) {
                fresh.push_back(wear.readings[i]);
            }
        }
        if (!fresh.empty()) {
            wear.readings = std::move(fresh);
            wear.start = std::min(wear.start, wear.readings.front().at);
            plan_.wears.push_back({joins, std::move(wear)});
        }
    }

    // One sensor goes on: no moment in common, a short silence between, the same rhythm.
    bool follows(const Wear& wear, const Wear& known) const {
        const Interval a = wear.sensed_span();
        const Interval b = known.sensed_span();
        const auto silence = std::max(a.from - b.to, b.from - a.to);
        return silence < new_wear_after_ && silence > -wear.interval &&
               wear.interval == known.interval;
    }

    void judge(const Meeting& meeting, const Wear& wear, const Wear& known) {
        const std::size_t met = meeting.repeated.size() + meeting.contradicted.size();
        if (meeting.contradicted.size() > std::max(few_differences, met / one_in)) {
            ask(whose_file(fmt::format(
                "This file has {} readings at moments of a wear that is already here, and {} of "
                "them differ.",
                met, meeting.contradicted.size())));
        }
        // A few readings between a sensor's regular ones are scans of the same sensor.
        if (meeting.between <= meeting.repeated.size()) {
            return;
        }
        const Agreement agreement = agreement_of(wear.readings, known.readings);
        plan_.agreement = agreement;
        if (agreement.pairs < pairs_to_tell_by) {
            ask(whose_file(fmt::format(
                "This file overlaps a wear that is already here, with {} pairs of readings to "
                "compare: too few to tell whether both were worn by one person.",
                agreement.pairs)));
        } else if (agreement.mean_relative_difference > most_relative_difference ||
                   agreement.correlation < least_correlation) {
            ask(whose_file(fmt::format(
                "This file overlaps a wear that is already here, and the two differ by {:.0f} % "
                "on average with correlation {:.2f}: more than two sensors on one person do.",
                100 * agreement.mean_relative_difference, agreement.correlation)));
        }
    }

    // Rows, not readings: a row may bear a reading and entries both. Such a row is a duplicate if
    // all it bears is known.
    void count_rows() {
        std::set<int> lines = known_lines_;
        lines.insert(new_lines_.begin(), new_lines_.end());
        const std::uint64_t stored = file_.rows_stored;
        const std::uint64_t things = readings_ + lines.size();
        const std::uint64_t shared = things > stored ? things - stored : 0;
        std::uint64_t known_rows = repeated_;
        for (const int line : known_lines_) {
            known_rows += new_lines_.contains(line) ? 0U : 1U;
        }
        // With the same share of rows bearing both among the known ones as among all: exact when
        // everything or nothing is known, and when no row bears both.
        const bool everything = plan_.entries.empty() && repeated_ == readings_;
        if (everything) {
            known_rows = stored;
        } else if (things > 0) {
            known_rows -= shared * known_rows / things;
        }
        known_rows = std::min(known_rows, stored);
        const std::uint64_t conflict = std::min<std::uint64_t>(contradicted_, stored - known_rows);
        plan_.rows_stored = stored - known_rows - conflict;
        plan_.rows_duplicate = file_.rows_duplicate + known_rows;
        plan_.rows_conflict = file_.rows_conflict + conflict;
        plan_.rows_rejected = file_.rows_rejected;
    }

    void hold_everything() {
        plan_.wears.clear();
        plan_.entries.clear();
        plan_.held.clear();
        // Levels that happen to be equal are another person's all the same.
        plan_.rows_duplicate = file_.rows_duplicate;
        plan_.rows_conflict = file_.rows_conflict + file_.rows_stored;
        plan_.rows_stored = 0;
    }
};

}  // namespace

Agreement agreement_of(std::span<const Reading> a, std::span<const Reading> b) {
    Agreement agreement;
    double sum_x = 0;
    double sum_y = 0;
    double sum_xx = 0;
    double sum_yy = 0;
    double sum_xy = 0;
    auto near = b.begin();
    for (const Reading& reading : a) {
        while (near != b.end() && std::next(near) != b.end() &&
               std::chrono::abs(std::next(near)->at - reading.at) <=
                   std::chrono::abs(near->at - reading.at)) {
            ++near;
        }
        if (near == b.end() || std::chrono::abs(near->at - reading.at) * 2 >
                                   std::max(reading.interval(), near->interval())) {
            continue;
        }
        const double x = reading.value().in(GlucoseUnit::mg_per_dl);
        const double y = near->value().in(GlucoseUnit::mg_per_dl);
        ++agreement.pairs;
        agreement.mean_relative_difference += std::abs(x - y) / ((x + y) / 2);
        sum_x += x;
        sum_y += y;
        sum_xx += x * x;
        sum_yy += y * y;
        sum_xy += x * y;
    }
    if (agreement.pairs == 0) {
        return agreement;
    }
    const auto n = static_cast<double>(agreement.pairs);
    agreement.mean_relative_difference /= n;
    const double spread = (sum_xx - sum_x * sum_x / n) * (sum_yy - sum_y * sum_y / n);
    agreement.correlation = spread > 0 ? (sum_xy - sum_x * sum_y / n) / std::sqrt(spread) : 0;
    return agreement;
}

ImportPlan import_plan(BroughtIn file, std::span<const KnownWear> known,
                       const std::function<bool(const DiaryEntry&)>& known_entry, WhoseFile whose,
                       std::chrono::seconds new_wear_after) {
    return Planner(std::move(file), known, whose, new_wear_after).plan(known_entry);
}

}  // namespace tracewright
