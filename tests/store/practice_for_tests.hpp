#pragma once

#include "access/practice_key.hpp"
#include "store/practice_backup.hpp"
#include "store/sqlite_practice.hpp"

#include <gtest/gtest.h>
#include <unistd.h>

#include <atomic>
#include <chrono>
#include <cmath>
#include <filesystem>
#include <memory>
#include <string>

namespace tracewright {

// Everybody in here is invented.

/// A folder that goes with the test.
class Folder {
  public:
    Folder() {
        static std::atomic<int> count{0};
        path_ = std::filesystem::temp_directory_path() /
                ("tracewright-store-" + std::to_string(::getpid()) + "-" + std::to_string(++count));
        std::filesystem::create_directories(path_);
    }
    ~Folder() {
        std::error_code none;
        std::filesystem::permissions(path_, std::filesystem::perms::owner_all, none);
        std::filesystem::remove_all(path_, none);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    std::string file(const std::string& name) const { return (path_ / name).string(); }
    std::string path() const { return path_.string(); }

  private:
    std::filesystem::path path_;
};

inline Instant at_second(std::int64_t seconds) {
    return Instant{std::chrono::seconds{1'772'000'000 + seconds}};
}

inline constexpr std::int64_t the_owner = 1;

inline Acting acting(std::int64_t seconds = 0) {
    return {the_owner, at_second(seconds)};
}

inline SecretKey key_for_tests() {
    std::array<std::uint8_t, SecretKey::bytes> bytes{};
    bytes.fill(7);
    return SecretKey::from(bytes);
}

inline SecretKey recovery_key_for_tests() {
    std::array<std::uint8_t, SecretKey::bytes> bytes{};
    bytes.fill(9);
    return SecretKey::from(bytes);
}

inline LockedPracticeKey locked_for_tests() {
    return *LockedPracticeKey::locked(key_for_tests(), "invented passphrase",
                                      recovery_key_for_tests(), PassphraseWork::least);
}

inline tl::expected<SecretKey, std::string> unlock_for_tests(const LockedPracticeKey& locked) {
    return locked.opened_by_passphrase("invented passphrase");
}

inline std::unique_ptr<SqlitePractice> new_practice(const std::string& path) {
    auto practice = SqlitePractice::create(path, key_for_tests(), locked_for_tests(),
                                           Coach{"o1", "Sorrel (invented)"}, at_second(0));
    EXPECT_TRUE(practice) << practice.error().sentence;
    return std::move(*practice);
}

inline std::unique_ptr<SqlitePractice> opened_practice(const std::string& path) {
    auto practice = SqlitePractice::open(path, unlock_for_tests);
    EXPECT_TRUE(practice) << practice.error().sentence;
    return std::move(*practice);
}

/// A file of `count` readings from `from` on, each `interval` seconds, of a smooth course that
/// `person` shapes; with one meal each six hours.
inline BroughtIn file_of(std::int64_t from, int count, int interval = 300, int person = 0,
                         double factor = 1) {
    BroughtIn file;
    file.source = "folder of Tansy/readings of Tansy.csv";
    for (int i = 0; i < count; ++i) {
        const auto seconds = from + std::int64_t{i} * interval;
        const double hours = static_cast<double>(seconds) / 3600.0;
        const double level = factor * (130 + 30 * std::sin(hours * (1.1 + person)) +
                                       15 * std::sin(hours * 3.7 + person));
        file.readings.emplace_back(
            at_second(seconds),
            Glucose{static_cast<std::int32_t>(std::lround(level)) * 100, GlucoseUnit::mg_per_dl},
            std::chrono::seconds{interval});
        ++file.rows_stored;
    }
    return file;
}

inline BroughtIn with_meals(BroughtIn file, int count) {
    for (int i = 0; i < count; ++i) {
        DiaryEntry meal;
        meal.kind = DiaryKind::meal;
        meal.at = file.readings.front().at + std::chrono::hours{6 * i};
        meal.written = WallTime{meal.at.time_since_epoch()};
        meal.text = "porridge of Tansy " + std::to_string(i);
        meal.carbohydrate_g = Amount{45.5, 5, true};
        meal.source = file.source;
        meal.source_line = 10'000 + i;
        file.diary.push_back(meal);
        ++file.rows_stored;
    }
    return file;
}

}  // namespace tracewright
