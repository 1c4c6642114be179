#include "findings/special_days.hpp"

#include "diary/medicine_text.hpp"
#include "diary/written_words.hpp"
#include "findings/hours_of_day.hpp"
#include "findings/wording.hpp"
#include "measures/shown_range.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

// Empty: none.
std::string glucocorticoid_in(const DiaryEntry& entry) {
    if (entry.kind != DiaryKind::medicine && entry.kind != DiaryKind::note) {
        return {};
    }
    const MedicineText text = medicine_text(entry.text);
    if (text.doing == MedicineDoing::stopped) {
        return {};
    }
    for (const Medicine* medicine : text.recognised) {
        const bool denied =
            speaks_of(entry, {medicine->name}) && !speaks_of_undenied(entry, {medicine->name});
        if (medicine->medicine_class.starts_with("glucocorticoid") && !denied) {
            return medicine->name;
        }
    }
    return speaks_of_undenied(entry, {"cortison", "steroid"}) ? "as noted" : "";
}

}  // namespace

std::vector<SpecialDay> special_days(const Diary& diary, const ZoneHistory& zones) {
    std::vector<SpecialDay> days;
    const auto add = [&](CivilDate date, const std::string& why) {
        const bool told = std::ranges::any_of(
            days, [&](const SpecialDay& day) { return day.date == date && day.why == why; });
        if (!told) {
            days.push_back({date, why});
        }
    };
    for (const DiaryEntry& entry : diary) {
        const CivilDate date = zones.date_at(entry.at);
        if (entry.kind == DiaryKind::illness) {
            add(date, "illness noted");
        } else if (const std::string name = glucocorticoid_in(entry); !name.empty()) {
            add(date, "cortisone (" + name + ")");
            add(date + std::chrono::days{1}, "the day after cortisone");
        }
    }
    std::ranges::stable_sort(days, {}, &SpecialDay::date);
    return days;
}

std::set<CivilDate> special_dates(const Diary& diary, const ZoneHistory& zones) {
    std::set<CivilDate> dates;
    for (const SpecialDay& day : special_days(diary, zones)) {
        dates.insert(day.date);
    }
    return dates;
}

std::optional<Finding> special_days_finding(const FirstReview& review) {
    const auto special = special_days(review.input.diary, review.input.zones);
    const ShownRange range = shown_range(review.input.goals);
    TimeByRange all;
    TimeByRange without;
    std::string named;
    int left_out = 0;
    for (const ReviewDay& day : review.days) {
        const TimeByRange time = time_by_range(day.view, range);
        all += time;
        std::string why;
        for (const SpecialDay& one : special) {
            if (one.date == day.day.date) {
                why += (why.empty() ? "" : ", ") + one.why;
            }
        }
        if (why.empty()) {
            without += time;
        } else {
            named += fmt::format("{}{} ({})", named.empty() ? "" : "; ",
                                 day_words(day.day.date, review.input.zones.writing()), why);
            ++left_out;
        }
    }
    if (left_out == 0) {
        return std::nullopt;
    }
    Finding finding;
    finding.code = "special_days";
    finding.question = "Were there days unlike the others?";
    finding.answer = Answer::yes;
    finding.sentence = fmt::format(
        "{}. With {} {}; without {}. A rise on such a day is put down to no food and no habit.",
        named, left_out == 1 ? "it" : "them", in_range_words(all), in_range_words(without));
    finding.evidence.used = static_cast<int>(review.days.size());
    finding.evidence.used_what = "days";
    finding.evidence.left_out = left_out;
    finding.evidence.left_out_why = "in the second figure: illness or cortisone noted";
    finding.next = {NextStep::ask_client, "Ask how those days were, and whether they are over."};
    return finding;
}

}  // namespace tracewright
