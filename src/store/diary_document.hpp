#pragma once

#include "diary/diary_entry.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>

namespace tracewright {

/// A diary entry as one line of JSON, keys in fixed order and only where there is something. All of
/// the entry comes back. Format: docs/formats/practice.md.
std::string diary_document(const DiaryEntry& entry);

/// Error: a sentence that bears nothing of the entry.
tl::expected<DiaryEntry, std::string> diary_entry_read(std::string_view document);

/// What makes two entries the same one: all but the file and line they came from.
std::string sameness_of(const DiaryEntry& entry);

}  // namespace tracewright
