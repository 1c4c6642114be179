#pragma once

#include "source_folder.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace tracewright::testing {

/// Compares with the approved text of tests/documents, or approves it where TRACEWRIGHT_APPROVE=1.
inline void expect_approved(const std::string& text, const std::string& name) {
    const std::filesystem::path path =
        std::filesystem::path(TRACEWRIGHT_SOURCE_FOLDER) / "tests/documents" / name;
    if (std::getenv("TRACEWRIGHT_APPROVE") != nullptr) {
        std::ofstream(path, std::ios::binary) << text;
    }
    std::ifstream file(path, std::ios::binary);
    std::ostringstream approved;
    approved << file.rdbuf();
    EXPECT_EQ(text, approved.str())
        << "differs from " << name << "; after reading it, TRACEWRIGHT_APPROVE=1 renews it";
}

}  // namespace tracewright::testing
