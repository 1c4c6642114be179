#pragma once

#include "diary/medicine_text.hpp"
#include "time/instant.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// One medicine of a client over one stretch of time, as told.
struct MedicineUse {
    MedicineText text;
    std::optional<Instant> from;   ///< empty: since before anything known
    std::optional<Instant> until;  ///< empty: still taken
    /// The start is the day on which it was told: it may have been taken before.
    bool told_at_start = false;

    /// Whether it was, or may have been, taken at some time of the window.
    bool may_be_taken_in(Interval window) const;
};

/// What a list of medicines amounts to, the unknown counted as risky (safety rule 1).
struct MedicineRisks {
    bool answered = false;  ///< the client was asked and every name is known
    bool can_cause_lows = true;
    bool sglt2 = true;
    bool insulin = true;
    bool secretagogue = true;  ///< sulfonylurea or glinide
    bool beta_blocker = false;
    bool misleads_sensor = false;
    bool unusable_for_lows = false;   ///< a substance that can hide lows from some sensors
    std::vector<std::string> to_ask;  ///< sentences: 'medicine not recognised: please ask ...'
};

/// The answer 'none that can cause lows' to a medicine list: answered, and none can.
bool answered_none_that_can_cause_lows(const MedicineRisks& risks);

/// A start, stop or change that any comparison across it must tell.
struct MedicineEvent {
    enum class Kind { start, stop, change };
    Instant at;
    Kind kind;
    std::string names;  ///< recognised names, else the words as written
};

/// A client's medicines over time. Every comparison of two stretches consults `events_between`:
/// what a medicine may have done is not credited to a habit.
class MedicineTimeline {
  public:
    /// `asked`: since when the coach has asked about medicines; empty: not yet.
    explicit MedicineTimeline(std::vector<MedicineUse> uses = {},
                              std::optional<Instant> asked = std::nullopt);

    const std::vector<MedicineUse>& uses() const { return uses_; }

    /// Of the uses that touch [from, to]. Before `asked`, and never asked, all counts as risky. A
    /// use without a start, or with one that is only the day of telling, counts from ever; a
    /// 'stopped' text without an end counts as still taken.
    MedicineRisks risks_in(Interval window) const;
    MedicineRisks risks_at(Instant at) const {
        return risks_in({at, at + std::chrono::seconds{1}});
    }

    /// Starts, stops and changes within [from, to), in order of time. A text that says 'changed' is
    /// a change at its start; so is a line that begins on the last day of another with the same
    /// recognised names.
    std::vector<MedicineEvent> events_between(Instant from, Instant to) const;

  private:
    const MedicineUse* gone_on_with(const MedicineUse& ended) const;

    std::vector<MedicineUse> uses_;
    std::optional<Instant> asked_;
};

/// Whether a medicine that lowers blood pressure is taken in the window, or the list is not
/// answered there.
bool on_blood_pressure_tablets(const MedicineTimeline& medicines, Interval window);

/// The risks of a list of texts, all taken at once; an empty list is 'not asked'.
MedicineRisks risks_of(const std::vector<MedicineText>& taken);

}  // namespace tracewright
