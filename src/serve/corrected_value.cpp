#include "serve/corrected_value.hpp"

#include "diary/finger_prick.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

// What the words tell of an entry of that kind: as they stand, else behind the kind's name.
DiaryEntry as_read(DiaryKind kind, const std::string& text, const MessageOptions& how) {
    for (const std::string& words : {text, std::string(name_of(kind)) + " " + text}) {
        const auto entries = client_message(words, how);
        const auto found = std::ranges::find_if(
            entries, [&](const ProposedEntry& one) { return one.entry.kind == kind; });
        if (found != entries.end()) {
            return found->entry;
        }
    }
    DiaryEntry nothing;
    nothing.kind = kind;
    return nothing;
}

bool has_value(const DiaryEntry& entry) {
    return entry.glucose || entry.number || meter_limit(entry) != MeterLimit::none;
}

bool same_value(const DiaryEntry& a, const DiaryEntry& b) {
    const bool same_level = a.glucose.has_value() == b.glucose.has_value() &&
                            (!a.glucose || (a.glucose->hundredths == b.glucose->hundredths &&
                                            a.glucose->unit == b.glucose->unit));
    return same_level && a.number == b.number && a.number_unit == b.number_unit;
}

void take_value(DiaryEntry& told, const DiaryEntry& read) {
    told.glucose = read.glucose;
    told.number = read.number;
    told.number_unit = has_value(read) ? read.number_unit : std::string();
}

bool lasts(DiaryKind kind) {
    return kind == DiaryKind::movement || kind == DiaryKind::sleep;
}

void take_length(DiaryEntry& told, const DiaryEntry& read) {
    const bool in_hours = read.number_unit == "h";
    if (!lasts(told.kind)) {
        told.until.reset();
    } else if (read.number && (in_hours || read.number_unit == "min") &&
               (told.until || (told.kind == DiaryKind::movement && !told.time_uncertain))) {
        told.until =
            told.at + std::chrono::seconds{std::lround(*read.number * (in_hours ? 3600 : 60))};
    }
}

void take_carbohydrate(DiaryEntry& told, const DiaryEntry& before, const DiaryEntry& read,
                       const DiaryEntry& read_before) {
    const auto grams = [](const DiaryEntry& entry) {
        return entry.carbohydrate_g ? std::optional(entry.carbohydrate_g->value) : std::nullopt;
    };
    // What was told in its own field leads.
    if (grams(told) != grams(before)) {
        return;
    }
    if (read.carbohydrate_g || (grams(before) && grams(read_before) == grams(before))) {
        told.carbohydrate_g = read.carbohydrate_g;
    }
}

}  // namespace

tl::expected<void, std::string> read_value_anew(DiaryEntry& told, const DiaryEntry& before,
                                                const MessageOptions& how) {
    const DiaryEntry read = as_read(told.kind, told.text, how);
    const DiaryEntry read_before = as_read(before.kind, before.text, how);
    const bool other_kind = told.kind != before.kind;
    if (has_value(read) || other_kind || same_value(read_before, before)) {
        take_value(told, read);
    }
    if (has_value(read) || other_kind) {
        take_length(told, read);
    }
    take_carbohydrate(told, before, read, read_before);
    const bool lost = !has_value(told) && (other_kind || has_value(before));
    if (lost && told.kind == DiaryKind::finger_prick) {
        return tl::make_unexpected(
            std::string("text: found no level of glucose, expected such as 'finger-prick 6.2 "
                        "mmol/L' or 'finger-prick LO'"));
    }
    if (lost && told.kind == DiaryKind::ketones) {
        return tl::make_unexpected(
            std::string("text: found no number of ketones, expected such as 'ketones 0.6'"));
    }
    return {};
}

}  // namespace tracewright
