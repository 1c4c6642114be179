#pragma once

#include "intake/message_parts.hpp"
#include "units/glucose.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// A number of a message that may be a level.
struct ToldNumber {
    double value = 0;
    bool decimal = false;  ///< written with one: no meter shows mg/dL so
};

/// Whether a number is one that a meter can show.
bool plausible_level(double value, GlucoseUnit unit);

/// The unit that a number without one is read in: the usual one of the client, unless only the
/// other can be meant. "19.5" is mmol/L for everyone, for no meter shows mg/dL with a decimal:
/// taken for mg/dL a very high would be read as a very low.
GlucoseUnit likely_unit(const ToldNumber& number, GlucoseUnit usual);

/// What a reader can't be sure of where no unit is written, in a sentence without an end stop.
std::string doubt_about_unit(const ToldNumber& number, GlucoseUnit taken);

/// The numbers of a part that may be a level: no count of tablets or sweets, no weight or time.
std::vector<ToldNumber> numbers_of_levels(const MessagePart& part);

/// "2 glucose tabs", "3 dextrose sweets": fast sugar, neither a level nor a medicine.
bool tells_of_fast_sugar(const MessagePart& part);

/// Whether a part of a message is nothing but a level of glucose: "low 2.6", "sugar was 47", "2.6"
/// behind a time. A bare number needs a decimal in mmol/L, for an hour or an amount is written
/// without one. Where the part names a level the number may be in the unit that is not the usual
/// one.
bool tells_a_level(const MessagePart& part, GlucoseUnit usual);

/// "went low", "had a low", "hypo": a low without a number. "felt low" is a mood, "low carb" food.
bool tells_of_a_low(const MessagePart& part);

}  // namespace tracewright
