#include "coaching/wear_life_split.hpp"

#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <map>

namespace tracewright {

namespace {

constexpr double seconds_a_day = 86400;
constexpr double usual_wear_days = 14;
constexpr double yes_below = 0.05;

std::string plain_site(const std::string& written) {
    const auto first = written.find_first_not_of(" \t");
    if (first == std::string::npos) {
        return {};
    }
    std::string site = written.substr(first, written.find_last_not_of(" \t") - first + 1);
    std::ranges::transform(site, site.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return site;
}

std::vector<Lifetime> lifetimes_of(std::span<const WearLine* const> wears, std::size_t group) {
    std::vector<Lifetime> lifetimes;
    for (const WearLine* wear : wears) {
        lifetimes.push_back(lifetime_of(*wear));
        lifetimes.back().group = group;
    }
    return lifetimes;
}

AlikeWears alike(const std::string& what, std::span<const WearLine* const> wears) {
    AlikeWears group{what, static_cast<int>(wears.size()), 0, 0, survival(lifetimes_of(wears, 0))};
    group.fell_off = static_cast<int>(std::ranges::count(wears, WearEnd::fell_off, &WearLine::end));
    group.sensor_failed =
        static_cast<int>(std::ranges::count(wears, WearEnd::sensor_failed, &WearLine::end));
    return group;
}

std::string sentence_begin(std::string words) {
    words.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(words.front())));
    return words;
}

std::string told(const AlikeWears& group) {
    std::string text =
        fmt::format("{}: {} {}, {} fell off, {} failed", sentence_begin(group.what), group.count,
                    group.count == 1 ? "wear" : "wears", group.fell_off, group.sensor_failed);
    if (group.count < fewest_wears_compared) {
        return text + ".";
    }
    const SurvivalStep* last = nullptr;
    for (const SurvivalStep& step : group.life.steps) {
        last = step.time < usual_wear_days ? &step : last;
    }
    return text +
           (last == nullptr
                ? "."
                : fmt::format("; {} worked on to day {:.0f} (95 % interval {:.0f} to {:.0f} %).",
                              percent_words(100 * last->share), usual_wear_days,
                              100 * last->interval95[0], 100 * last->interval95[1]));
}

// Groups in the order in which they are told, with their wears.
using Groups = std::vector<std::pair<std::string, std::vector<const WearLine*>>>;

class Splitter {
  public:
    Splitter(const Groups& groups, int not_told) : groups_(groups) { split_.not_told = not_told; }

    LifeSplit split(const char* code, const char* question, const char* not_by_lot) {
        Finding& finding = split_.finding;
        finding.code = code;
        finding.question = question;
        for (const auto& [what, wears] : groups_) {
            split_.groups.push_back(alike(what, wears));
            finding.evidence.used += split_.groups.back().count;
            finding.sentence += (finding.sentence.empty() ? "" : " ") + told(split_.groups.back());
        }
        finding.evidence.used_what = "wears";
        finding.evidence.method =
            "Kaplan & Meier 1958 (10.1080/01621459.1958.10501452); log-rank test; failed: fell off "
            "or sensor failed";
        if (split_.not_told > 0) {
            finding.sentence += fmt::format(" Of {} more it is not told.", split_.not_told);
        }
        compare();
        finding.caveats.push_back({CaveatKind::travels_together, not_by_lot});
        return std::move(split_);
    }

  private:
    const Groups& groups_;
    LifeSplit split_;

    bool large_enough() const {
        return groups_.size() >= 2 && split_.groups[0].count >= fewest_wears_compared &&
               split_.groups[1].count >= fewest_wears_compared &&
               split_.groups[0].life.failures + split_.groups[1].life.failures >=
                   fewest_sensor_failures;
    }

    void compare() {
        Finding& finding = split_.finding;
        if (!large_enough()) {
            finding.sentence += fmt::format(
                " They can't be compared yet: that takes {} wears on each side and {} that failed.",
                fewest_wears_compared, fewest_sensor_failures);
            finding.next = {NextStep::collect_more,
                            "Write down how each sensor sat and how it ended."};
            return;
        }
        auto both = lifetimes_of(groups_[0].second, 0);
        const auto other = lifetimes_of(groups_[1].second, 1);
        both.insert(both.end(), other.begin(), other.end());
        split_.test = log_rank(both);
        const std::string p = fmt::format("(log-rank p {:.3f})", split_.test->p);
        if (split_.test->p >= yes_below) {
            finding.sentence +=
                fmt::format(" Which lasts longer, {} or {}, these wears can't tell {}.",
                            groups_[0].first, groups_[1].first, p);
            return;
        }
        finding.answer = Answer::yes;
        const bool first = split_.test->observed[0] < split_.test->expected[0];
        finding.sentence +=
            fmt::format(" Sensors {} lasted longer than those {} {}.", groups_[first ? 0 : 1].first,
                        groups_[first ? 1 : 0].first, p);
    }
};

}  // namespace

Lifetime lifetime_of(const WearLine& wear) {
    return {static_cast<double>(wear.lasted.count()) / seconds_a_day,
            wear.end == WearEnd::fell_off || wear.end == WearEnd::sensor_failed, 0};
}

std::optional<LifeSplit> split_by_overpatch(std::span<const WearLine> wears) {
    Groups groups = {{"with an overpatch", {}}, {"without one", {}}};
    int not_told = 0;
    for (const WearLine& wear : wears) {
        if (wear.fixing.overpatch) {
            groups[*wear.fixing.overpatch ? 0 : 1].second.push_back(&wear);
        } else {
            ++not_told;
        }
    }
    if (groups[0].second.empty() && groups[1].second.empty()) {
        return std::nullopt;
    }
    return Splitter(groups, not_told)
        .split(
            "sensor_life_overpatch", "Do sensors last longer under an overpatch?",
            "Who wore an overpatch was not drawn by lot: season, site and skin may have differed "
            "with it.");
}

std::optional<LifeSplit> split_by_site(std::span<const WearLine> wears) {
    std::map<std::string, std::vector<const WearLine*>> by_site;
    int not_told = 0;
    for (const WearLine& wear : wears) {
        const std::string site = plain_site(wear.fixing.site);
        if (site.empty()) {
            ++not_told;
        } else {
            by_site[site].push_back(&wear);
        }
    }
    if (by_site.empty()) {
        return std::nullopt;
    }
    Groups groups;
    for (auto& [site, at_it] : by_site) {
        groups.emplace_back("at the site '" + site + "'", std::move(at_it));
    }
    std::ranges::stable_sort(
        groups, [](const auto& a, const auto& b) { return a.second.size() > b.second.size(); });
    return Splitter(groups, not_told)
        .split("sensor_life_site", "Do sensors last longer at one site than at another?",
               "The site was not drawn by lot: season and overpatch may have differed with it. Of "
               "several sites the two most worn are compared.");
}

}  // namespace tracewright
