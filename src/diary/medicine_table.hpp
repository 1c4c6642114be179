#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// Whether a medicine can cause lows. `only_with`: not alone, but beside insulin, a sulfonylurea or
/// a glinide.
enum class CausesLows : std::uint8_t { no, only_with, unknown, yes };

/// Whether a substance makes some sensors read wrong (safety rule 13).
enum class MisleadsSensor : std::uint8_t { no, some, yes };

/// One row of data/medicine-classes.csv: what is known of a substance or fixed combination by its
/// international non-proprietary name.
struct Medicine {
    std::string name;
    std::string atc;  ///< "A10BA02"; several parted by '/'; empty where none is known
    std::string medicine_class;
    std::vector<std::string> components;  ///< of a fixed combination, by name; else empty
    CausesLows causes_lows = CausesLows::unknown;
    bool sglt2 = false;
    bool glucose_lowering = false;
    bool raises_glucose = false;
    MisleadsSensor misleads_sensor = MisleadsSensor::no;
    std::string note;
    std::string source;
    bool from_memory = false;  ///< the row is remembered, not read in a source

    bool is_insulin() const;
    /// Sulfonylureas and glinides, which count together (safety rule 1).
    bool is_secretagogue() const;
    bool is_beta_blocker() const;
    /// By its code: antihypertensives, diuretics, beta-blockers, calcium-channel blockers, and
    /// those that act on the renin-angiotensin system (ATC C02, C03, C07, C08, C09).
    bool lowers_blood_pressure() const;
};

/// A spelling with the name it stands for.
struct MedicineSpelling {
    std::string spelling;
    std::string name;
};

/// The table that the program carries within itself, in the file's order. A pharmacist should read
/// data/medicine-classes.csv before use.
std::span<const Medicine> medicine_table();

/// Every spelling known: the names themselves and those of data/medicine-names.csv.
std::span<const MedicineSpelling> medicine_spellings();

/// The row of a name exactly as the table writes it; null if there is none.
const Medicine* medicine_named(std::string_view name);

/// The medicine itself, or each part of a fixed combination.
std::vector<const Medicine*> parts_of(const Medicine& medicine);

}  // namespace tracewright
