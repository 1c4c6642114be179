#pragma once

#include <cstdint>

namespace tracewright {

enum class GlucoseUnit : std::uint8_t { mg_per_dl, mmol_per_l };

/// mg/dL in one mmol/L: a tenth of the molar mass of glucose, 180.16 g/mol.
/// Source: LOINC prints 180.156 g/mol; 18.016 is the rounded factor in use.
inline constexpr double mg_per_dl_in_mmol_per_l = 18.016;

/// A glucose level as it was reported: whole hundredths of the reported unit.
/// Levels of different units neither compare nor convert by themselves.
struct Glucose {
    std::int32_t hundredths = 0;
    GlucoseUnit unit = GlucoseUnit::mg_per_dl;

    /// The level in its own unit.
    double value() const { return hundredths / 100.0; }
    /// The level in another unit, for display and for formulas; never for band edges.
    double in(GlucoseUnit wanted) const {
        if (wanted == unit) {
            return value();
        }
        return wanted == GlucoseUnit::mg_per_dl ? value() * mg_per_dl_in_mmol_per_l
                                                : value() / mg_per_dl_in_mmol_per_l;
    }

    bool operator==(const Glucose&) const = default;
};

/// A number in `from` told in `to` (18.016 mg/dL per mmol/L); the number itself if they are equal.
double converted(double value, GlucoseUnit from, GlucoseUnit to);

/// "mg/dL" or "mmol/L".
const char* name_of(GlucoseUnit unit);

/// `value` in hundredths, halves away from zero. The caller checks the range first.
std::int32_t rounded_hundredths(double value);

/// As the trade prints it: mg/dL whole, mmol/L with one decimal; halves away from zero.
/// Decided on the decimal number, not its binary neighbour, for values of up to 4 decimals.
/// Source of the rule: ours (glycaemia: display), common practice.
double rounded_for_display(double value, GlucoseUnit unit);

}  // namespace tracewright
