#include "store/reminder_document.hpp"
#include "store/sqlite_practice.hpp"

namespace tracewright {

namespace {

constexpr const char* row_name = "reminder_rules";

}  // namespace

Stored<ReminderRules> SqlitePractice::reminder_rules() {
    return reading([&]() -> Stored<ReminderRules> {
        Statement kept(*database_, "SELECT value FROM practice WHERE name = ?");
        if (!kept.with(row_name).step()) {
            return ReminderRules{};
        }
        const auto text = seal_.opened(kept.blob(0), row_name);
        const auto rules = text.and_then(
            [](const std::string& document) { return reminder_rules_read(document); });
        if (!rules) {
            return store_error(StoreErrorKind::broken, rules.error());
        }
        return *rules;
    });
}

Stored<void> SqlitePractice::set_reminder_rules(const ReminderRules& rules, const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<void> {
        const std::string document = reminder_document(rules);
        if (const auto read = reminder_rules_read(document); !read) {
            return store_error(StoreErrorKind::refused, read.error());
        }
        Statement put(*database_,
                      "INSERT INTO practice(name, value) VALUES (?, ?) ON CONFLICT(name) DO UPDATE "
                      "SET value = excluded.value");
        put.with(row_name, seal_.sealed(document, row_name)).run();
        audit_.add(acting, "reminder_rules_changed", std::nullopt);
        return {};
    });
}

}  // namespace tracewright
