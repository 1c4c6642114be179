#include "store/practice_writing.hpp"

#include "store/document_reader.hpp"

namespace tracewright {

namespace {

using Json = nlohmann::ordered_json;

enum class DatesWritten : std::uint8_t { day_first, month_first };
enum class HoursWritten : std::uint8_t { twenty_four, twelve };

// Words of an enumeration, in the order of its values.
constexpr std::array<const char*, 2> dates{"day first", "month first"};
constexpr std::array<const char*, 2> hours{"24", "12"};
constexpr std::array<const char*, 2> units{"mg/dL", "mmol/L"};

PracticeWriting writing_of(PracticeWriting writing, const Json& document) {
    DocumentReader reader(document, "");
    auto date = writing.way.month_first ? DatesWritten::month_first : DatesWritten::day_first;
    auto hour = writing.way.twelve_hours ? HoursWritten::twelve : HoursWritten::twenty_four;
    reader.word("dates", dates, date);
    reader.word("hours", hours, hour);
    reader.word("glucose", units, writing.unit);
    reader.finish();
    writing.way = {date == DatesWritten::month_first, hour == HoursWritten::twelve};
    return writing;
}

}  // namespace

std::string writing_document(const PracticeWriting& writing) {
    return Json{{"dates", dates.at(writing.way.month_first ? 1 : 0)},
                {"hours", hours.at(writing.way.twelve_hours ? 1 : 0)},
                {"glucose", units.at(static_cast<std::size_t>(writing.unit))}}
        .dump();
}

tl::expected<PracticeWriting, std::string> writing_changed(const PracticeWriting& writing,
                                                           std::string_view document) {
    const Json json = Json::parse(document, nullptr, false);
    if (!json.is_object()) {
        return tl::make_unexpected(
            std::string("found text that is no JSON object, expected how the practice writes"));
    }
    try {
        return writing_of(writing, json);
    } catch (const UnreadableDocument& bad) {
        return tl::make_unexpected(std::string(bad.what()));
    }
}

}  // namespace tracewright
