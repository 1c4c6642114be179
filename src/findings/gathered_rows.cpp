#include "findings/gathered_rows.hpp"

#include <algorithm>

namespace tracewright {

namespace {

// An adjuster is used where nine of ten complete rows have it and it is no cause asked for.
std::vector<std::string> adjusters_of(std::span<const QuestionRow> rows,
                                      std::span<const Cause> causes) {
    std::map<std::string, int> known;
    int total = 0;
    for (const QuestionRow& row : rows) {
        if (row.outcome) {
            ++total;
            for (const auto& [name, value] : row.adjusters) {
                ++known[name];
            }
        }
    }
    std::vector<std::string> names;
    const bool carbohydrate_asked =
        std::find(causes.begin(), causes.end(), Cause::meal_carbohydrate) != causes.end();
    for (const auto& [name, count] : known) {
        if (10 * count >= 9 * total && !(name == "carbohydrate" && carbohydrate_asked)) {
            names.push_back(name);
        }
    }
    return names;
}

std::string why_not_usable(const QuestionRow& row, std::span<const Cause> causes,
                           const std::vector<std::string>& adjusters) {
    if (!row.outcome) {
        return row.none_because;
    }
    if (row.ill) {
        return "illness or cortisone noted";
    }
    for (const Cause cause : causes) {
        if (!row.causes.contains(cause)) {
            return std::string(facts_of(cause).words) + " not noted";
        }
    }
    for (const std::string& name : adjusters) {
        if (!row.adjusters.contains(name)) {
            return name + " not noted";
        }
    }
    return {};
}

}  // namespace

GatheredRows gathered_rows(std::span<const QuestionRow> rows, std::span<const Cause> causes,
                           std::vector<LeftOut>& left_out) {
    GatheredRows gathered;
    gathered.adjusted_for = adjusters_of(rows, causes);
    gathered.rows.drivers = causes.size();
    gathered.rows.adjusters = gathered.adjusted_for.size();
    for (const QuestionRow& row : rows) {
        if (!row.ill) {
            ++gathered.days;
            gathered.meal_not_noted += row.meal_not_noted ? 1 : 0;
            gathered.nothing_eaten_noted += row.nothing_eaten_noted ? 1 : 0;
        }
        if (row.outcome) {
            ++gathered.with_outcome;
            for (const Cause cause : causes) {
                const bool noted = row.causes.contains(cause);
                gathered.noted[cause] += noted ? 1 : 0;
                gathered.outcome_by_noted[cause][noted ? 1 : 0].push_back(*row.outcome);
            }
        }
        const std::string why = why_not_usable(row, causes, gathered.adjusted_for);
        if (!why.empty()) {
            left_out.push_back({row.date, why});
            gathered.ill += why == "illness or cortisone noted" ? 1 : 0;
            continue;
        }
        gathered.rows.y.push_back(*row.outcome);
        for (const Cause cause : causes) {
            gathered.rows.x.push_back(row.causes.at(cause));
        }
        for (const std::string& name : gathered.adjusted_for) {
            gathered.rows.adjuster.push_back(row.adjusters.at(name));
        }
        gathered.rows.wear.push_back(row.wear);
        gathered.rows.day.push_back(static_cast<int>(row.date.time_since_epoch().count()));
        gathered.dates.push_back(row.date);
        gathered.suspect.push_back(row.suspect);
    }
    return gathered;
}

std::vector<DriverSetting> driver_settings(std::span<const Cause> causes) {
    std::vector<DriverSetting> settings;
    for (const Cause cause : causes) {
        settings.push_back({facts_of(cause).change_size, facts_of(cause).yes_no});
    }
    return settings;
}

DriverRows without_suspect(const GatheredRows& gathered) {
    DriverRows rows = gathered.rows;
    rows.y.clear();
    rows.x.clear();
    rows.adjuster.clear();
    rows.wear.clear();
    rows.day.clear();
    const DriverRows& all = gathered.rows;
    for (std::size_t i = 0; i < all.rows(); ++i) {
        if (gathered.suspect[i]) {
            continue;
        }
        rows.y.push_back(all.y[i]);
        rows.wear.push_back(all.wear[i]);
        rows.day.push_back(all.day[i]);
        for (std::size_t j = 0; j < all.drivers; ++j) {
            rows.x.push_back(all.x[i * all.drivers + j]);
        }
        for (std::size_t j = 0; j < all.adjusters; ++j) {
            rows.adjuster.push_back(all.adjuster[i * all.adjusters + j]);
        }
    }
    return rows;
}

}  // namespace tracewright
