#include "store/reminder_document.hpp"

#include "store/document_reader.hpp"

#include <algorithm>

namespace tracewright {

namespace {

using Json = nlohmann::ordered_json;

std::string clock_of(std::chrono::minutes into) {
    return fmt::format("{:02}:{:02}", into.count() / 60, into.count() % 60);
}

void read_clock(DocumentReader& reader, const char* key, std::chrono::minutes& into) {
    std::string written;
    reader.text(key, written);
    if (reader.at(key) == nullptr) {
        return;
    }
    const auto digit = [&](std::size_t i) { return written[i] >= '0' && written[i] <= '9'; };
    if (written.size() != 5 || written[2] != ':' || !digit(0) || !digit(1) || !digit(3) ||
        !digit(4)) {
        unreadable(reader.path(key), "a time of day such as 21:00");
    }
    const int hours = (written[0] - '0') * 10 + written[1] - '0';
    const int minutes = (written[3] - '0') * 10 + written[4] - '0';
    if (hours > 23 || minutes > 59) {
        unreadable(reader.path(key), "a time of day such as 21:00");
    }
    into = std::chrono::minutes{hours * 60 + minutes};
}

ReminderRules rules_of(const Json& document) {
    ReminderRules rules;
    DocumentReader reader(document, "");
    read_clock(reader, "quiet_from", rules.quiet_from);
    read_clock(reader, "quiet_to", rules.quiet_to);
    reader.number("silent_hours", rules.silent_hours, 1, 24 * 366);
    reader.number("most_a_day", rules.most_a_day, 0, 1000);
    if (rules.silent_hours < 1) {
        unreadable("silent_hours", "at least 1");
    }
    if (rules.most_a_day < 0) {
        unreadable("most_a_day", "at least 0");
    }
    if (const Json* off = reader.at("off")) {
        if (!off->is_array()) {
            unreadable("off", "a list");
        }
        for (const Json& kind : *off) {
            const bool known =
                kind.is_string() &&
                std::ranges::find(reminder_kinds, kind.get<std::string>()) != reminder_kinds.end();
            if (!known) {
                unreadable("off", "kinds of reminders");
            }
            rules.off.push_back(kind.get<std::string>());
        }
    }
    reader.finish();
    return rules;
}

}  // namespace

std::string reminder_document(const ReminderRules& rules) {
    const Json document{{"quiet_from", clock_of(rules.quiet_from)},
                        {"quiet_to", clock_of(rules.quiet_to)},
                        {"silent_hours", rules.silent_hours},
                        {"most_a_day", rules.most_a_day},
                        {"off", rules.off}};
    return document.dump(-1, ' ', false, Json::error_handler_t::replace);
}

tl::expected<ReminderRules, std::string> reminder_rules_read(std::string_view document) {
    const Json json = Json::parse(document, nullptr, false);
    if (!json.is_object()) {
        return tl::make_unexpected(
            std::string("found text that is no JSON object, expected the rules of reminders"));
    }
    try {
        return rules_of(json);
    } catch (const UnreadableDocument& bad) {
        return tl::make_unexpected(std::string(bad.what()));
    }
}

}  // namespace tracewright
