#pragma once

#include "trace/reading.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace tracewright {

/// A number as written, exact to hundredths.
struct WrittenNumber {
    std::int64_t hundredths = 0;
    bool rounded = false;  ///< more than two decimals that mean something were written
    std::string tail;      ///< what follows the digits: a unit, usually
    double value() const { return static_cast<double>(hundredths) / 100; }
};

/// A number at the start of `text` (plain ASCII, trimmed): sign, digits with or without thousands
/// grouped by the other mark, a blank or an apostrophe, decimals behind `decimal_mark`, an
/// exponent. Empty if it does not start with a number, or is larger than 10^12.
std::optional<WrittenNumber> written_number(std::string_view text, char decimal_mark);

/// What a text of digits and marks says about its decimal mark.
enum class MarkEvidence : std::uint8_t {
    none,        ///< no mark, or no number
    point,       ///< only the point can be the decimal mark
    comma,       ///< only the comma
    lone_point,  ///< "1.234": a decimal point or a thousand
    lone_comma   ///< "1,234"
};
MarkEvidence mark_evidence(std::string_view text);

/// A glucose cell: a level, or LOW or HIGH with the limit if one is written ("<40", "> 22.2").
struct WrittenGlucose {
    std::int64_t hundredths = 0;  ///< the level, or the limit; 0 where LOW or HIGH bears none
    Limit limit = Limit::none;
    std::optional<GlucoseUnit> unit;  ///< where the cell itself names it
    bool rounded = false;
};

/// Why a glucose cell is no level.
enum class NoGlucose : std::uint8_t { empty, zero, not_a_number };

struct GlucoseCell {
    std::optional<WrittenGlucose> level;
    NoGlucose why = NoGlucose::empty;
};
GlucoseCell written_glucose(std::string_view plain_text, char decimal_mark);

/// The unit a piece of text names: "mg / dl", "mmol/l", "mg_dl"; empty if none.
std::optional<GlucoseUnit> unit_named(std::string_view text);

/// Whether a text names a unit of glucose and nothing else: "mg/dL", "(mmol/l)".
bool is_unit_alone(std::string_view text);

}  // namespace tracewright
