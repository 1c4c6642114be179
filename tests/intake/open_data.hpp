#pragma once

#include "source_folder.hpp"

#include <cstdlib>
#include <filesystem>
#include <string>

namespace tracewright::testing {

/// Where the open research data lie: $TRACEWRIGHT_OPEN_DATA, else beside the checkout. The tests
/// that need them skip where they are absent.
inline std::filesystem::path open_data() {
    if (const char* told = std::getenv("TRACEWRIGHT_OPEN_DATA")) {
        return told;
    }
    return std::filesystem::path(TRACEWRIGHT_SOURCE_FOLDER) / ".." / "shared" / "data";
}

inline bool has_open_data() {
    return std::filesystem::exists(open_data() / "shanghai_t2dm");
}

}  // namespace tracewright::testing

#define SKIP_WITHOUT_OPEN_DATA()                                                         \
    if (!tracewright::testing::has_open_data()) {                                        \
        GTEST_SKIP() << "the open data are not at " << tracewright::testing::open_data() \
                     << " (set TRACEWRIGHT_OPEN_DATA)";                                  \
    }
