#include "coaching/substances.hpp"

#include "diary/medicine_text.hpp"

#include <algorithm>
#include <set>

namespace tracewright {

namespace {

constexpr std::chrono::hours after_a_dose{8};  // docs/methods: glycaemia 8.6, our own rule
constexpr std::chrono::hours after_what_hides_lows{24};

using Effect = SubstanceStretch::Effect;

Effect effect_of(const Medicine& medicine) {
    if (medicine.misleads_sensor == MisleadsSensor::yes) {
        return Effect::not_usable_for_lows;
    }
    return medicine.note.starts_with("high dose only") ? Effect::ask_the_amount
                                                       : Effect::may_read_wrong;
}

void add(std::vector<SubstanceStretch>& all, const Medicine& medicine, Interval stretch) {
    for (const Medicine* part : parts_of(medicine)) {
        if (part->misleads_sensor != MisleadsSensor::no && stretch.length().count() > 0) {
            all.push_back({effect_of(*part), stretch, part->name});
        }
    }
}

}  // namespace

std::vector<SubstanceStretch> substance_stretches(const CareInput& input, Interval window) {
    std::vector<SubstanceStretch> all;
    for (const MedicineUse& use : input.medicines.uses()) {
        const Interval taken =
            intersection({use.told_at_start ? window.from : use.from.value_or(window.from),
                          use.until.value_or(window.to)},
                         window);
        for (const Medicine* medicine : use.text.recognised) {
            add(all, *medicine, taken);
        }
    }
    for (const DiaryEntry& entry : input.diary) {
        if (entry.kind != DiaryKind::medicine && entry.kind != DiaryKind::note) {
            continue;
        }
        for (const Medicine* medicine : medicine_text(entry.text).recognised) {
            const auto lasts = medicine->misleads_sensor == MisleadsSensor::yes
                                   ? std::chrono::seconds{after_what_hides_lows}
                                   : std::chrono::seconds{after_a_dose};
            add(all, *medicine, intersection({entry.at, entry.at + lasts}, window));
        }
    }
    std::ranges::stable_sort(all, {}, [](const SubstanceStretch& one) { return one.stretch.from; });
    return all;
}

bool not_usable_for_lows(const std::vector<SubstanceStretch>& stretches) {
    return std::ranges::any_of(stretches, [](const SubstanceStretch& one) {
        return one.effect == Effect::not_usable_for_lows;
    });
}

std::vector<std::string> substances_for_coach(const std::vector<SubstanceStretch>& stretches) {
    std::vector<std::string> lines;
    std::set<std::string> told;
    for (const SubstanceStretch& one : stretches) {
        if (!told.insert(one.name).second) {
            continue;
        }
        switch (one.effect) {
            case Effect::not_usable_for_lows:
                lines.push_back("With " + one.name +
                                " some sensors read high and can hide lows: this wear is not "
                                "usable for lows. Ask the clinic; a finger-prick when it feels "
                                "low.");
                break;
            case Effect::may_read_wrong:
                lines.push_back("With " + one.name +
                                " some sensors read wrong: readings of the 8 hours after each dose "
                                "are marked. A finger-prick tells more.");
                break;
            case Effect::ask_the_amount:
                lines.push_back("In high doses " + one.name +
                                " makes some sensors read wrong: ask how much was taken and when.");
                break;
        }
    }
    return lines;
}

}  // namespace tracewright
