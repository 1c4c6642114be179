#pragma once

#include "diary/food_match.hpp"
#include "intake/message_parts.hpp"

#include <vector>

namespace tracewright {

/// "lunch: nothing", "no breakfast": known not to have been eaten. Kept as a note.
bool is_left_out(const MessagePart& part);

/// The kind of entry that a part of a message is. A symptom, illness, level or medicine goes before
/// food, food before what only a verb tells; what nothing tells is a note, with a doubt.
DiaryKind kind_of_part(const MessagePart& part, GlucoseUnit unit, const KnownFoods& foods,
                       std::vector<Doubt>& doubts);

/// "30 g carbohydrate", and nothing else: an amount of the meal before it.
bool is_carbohydrate_alone(const MessagePart& part);

/// "340 kcal", "about 400 calories", and nothing else: belongs to the meal before it.
bool is_energy_alone(const MessagePart& part);

/// "45 g carbs": what the message itself says.
void set_carbohydrate(const MessagePart& part, DiaryEntry& entry);

/// Sets what the part says in numbers: length, steps, level (in `unit` where none is written),
/// ketones, grams of carbohydrate. A level that is none makes the entry a note.
void set_numbers(const MessagePart& part, GlucoseUnit unit, DiaryEntry& entry,
                 std::vector<Doubt>& doubts);

/// Of sleep in hours, of movement in minutes or steps.
void set_length(const MessagePart& part, DiaryEntry& entry, std::vector<Doubt>& doubts);

}  // namespace tracewright
