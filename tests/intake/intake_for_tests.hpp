#pragma once

#include "intake/bring_in.hpp"

#include <algorithm>
#include <cstdio>
#include <stdexcept>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace tracewright::testing {

inline Intake read(const std::string& text, IntakeOptions options = {}) {
    return bring_in_bytes(text, "test.csv", options);
}

inline IntakeOptions in_berlin() {
    IntakeOptions options;
    options.zones = ZoneHistory{*Zone::named("Europe/Berlin")};
    return options;
}

/// Of 2026, in UTC.
constexpr Instant march(int day, std::chrono::minutes clock = {}) {
    return Instant{std::chrono::sys_days{std::chrono::year{2026} / 3 / day}} + clock;
}

/// A header and rows a quarter of an hour apart from 2 March 2026 08:00 on.
inline std::string table(const std::vector<std::string>& values,
                         const std::string& title = "glucose mg/dL", char delimiter = ',') {
    std::string text = "time" + std::string(1, delimiter) + title + "\n";
    int minute = 8 * 60;
    for (const std::string& value : values) {
        char time[32];
        std::snprintf(time, sizeof time, "2026-03-02 %02d:%02d", minute / 60, minute % 60);
        text += std::string(time) + delimiter + value + "\n";
        minute += 15;
    }
    return text;
}

inline std::vector<std::string> plenty(const std::vector<std::string>& some,
                                       const std::string& value = "120") {
    std::vector<std::string> values(10, value);
    values.insert(values.end(), some.begin(), some.end());
    return values;
}

inline std::uint64_t count(const Intake& intake, Fate fate) {
    return intake.ledger.with(fate);
}

inline std::uint64_t code(const Intake& intake, const std::string& code) {
    const auto found = intake.ledger.by_code().find(code);
    return found == intake.ledger.by_code().end() ? 0 : found->second;
}

inline const RowNote& note(const Intake& intake, const std::string& code) {
    for (const RowNote& n : intake.ledger.notes()) {
        if (n.code == code) {
            return n;
        }
    }
    throw std::runtime_error("no note " + code);
}

inline void expect_sums(const Intake& intake) {
    EXPECT_EQ(count(intake, Fate::stored) + count(intake, Fate::duplicate) +
                  count(intake, Fate::conflict) + count(intake, Fate::rejected),
              intake.ledger.read());
}

inline bool asks(const Intake& intake, const std::string& code) {
    return std::any_of(intake.questions.begin(), intake.questions.end(),
                       [&](const Question& q) { return q.code == code; });
}

}  // namespace tracewright::testing
