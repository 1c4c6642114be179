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
/// CRLF-free, RFC 4180 quotes), and a photo-NUMBER.jpg for each of `photos`, which
/// `MealPhotoBook::photos` gives. Glucose in the unit it was reported in; times in UTC and by the
/// client's clock. The same holdings give the same bytes. Schema: docs/formats/client.schema.json.
std::vector<ExportedFile> client_export(const ClientHoldings& holdings,
                                        std::span<const MealPhotoRecord> photos = {});

}  // namespace tracewright
