#pragma once

#include "diary/diary_entry.hpp"
#include "intake/client_message.hpp"

#include <tl/expected.hpp>

#include <string>

namespace tracewright {

/// What the corrected words tell, in the place of what the earlier ones told: level, number, length
/// and carbohydrate of `told`, whose kind or text is another than that of `before`. They are read
/// as a message is. A value that the earlier words never told (it stood in a column) stays, while
/// the kind does, unless the new words tell one. Error: a sentence, where a finger-prick or ketones
/// would be left without a value.
tl::expected<void, std::string> read_value_anew(DiaryEntry& told, const DiaryEntry& before,
                                                const MessageOptions& how);

}  // namespace tracewright
