#include "store/practice_values.hpp"

namespace tracewright {

std::string coach_lock_name(std::int64_t coach) {
    return "coach_lock_" + std::to_string(coach);
}

std::vector<std::uint8_t> practice_value(Database& database, const std::string& name) {
    Statement find(database, "SELECT value FROM practice WHERE name = ?");
    if (!find.with(name).step()) {
        return {};
    }
    const auto value = find.blob(0);
    return {value.begin(), value.end()};
}

void set_practice_value(Database& database, const std::string& name,
                        std::span<const std::uint8_t> value) {
    Statement set(database,
                  "INSERT INTO practice(name, value) VALUES (?, ?) "
                  "ON CONFLICT DO UPDATE SET value = excluded.value");
    set.with(name, value).run();
}

}  // namespace tracewright
