#pragma once

#include "store/meal_photo_record.hpp"
#include "store/practice_store.hpp"

#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// One file of an export, by name.
struct ExportedFile {
    std::string name;
    std::string bytes;
};

/// All that a practice holds of one client in open formats: client.json (facts, wears, notes,
/// promises, escalations with their answers, imports), readings.csv and diary.csv (UTF-8, commas,
/// CRLF-free, RFC 4180 quotes). Glucose in the unit it was reported in; times in UTC and by the
/// client's clock. client.json names the file of each of `photos`; what stands in it is opened one
/// by one (`MealPhotoBook::photo`), as they would be many megabytes together. The same holdings
/// give the same bytes. Schema: docs/formats/client.schema.json.
std::vector<ExportedFile> client_export(const ClientHoldings& holdings,
                                        std::span<const MealPhotoLine> photos = {});
/// "photo-7.jpg".
std::string exported_file_of(const MealPhotoLine& photo);

}  // namespace tracewright
