// Reads the table of src/README.md and every #include "room/..." under src.
#include "source_folder.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>

namespace {

namespace fs = std::filesystem;
using Rooms = std::map<std::string, std::set<std::string>>;

const fs::path source = fs::path(TRACEWRIGHT_SOURCE_FOLDER);

Rooms table() {
    Rooms rooms;
    std::ifstream file(source / "src/README.md");
    const std::regex row(R"(^\| ([a-z]+) \| ?([a-z, ]*)\|$)");
    for (std::string line; std::getline(file, line);) {
        std::smatch match;
        if (std::regex_match(line, match, row) && match[1] != "room") {
            std::set<std::string>& into = rooms[match[1]];
            std::istringstream names(match[2]);
            for (std::string name; std::getline(names, name, ',');) {
                name.erase(0, name.find_first_not_of(' '));
                name.erase(name.find_last_not_of(' ') + 1);
                if (!name.empty()) {
                    into.insert(name);
                }
            }
        }
    }
    return rooms;
}

// What a room may include, it may also include of the rooms that one builds on.
std::set<std::string> reachable(const Rooms& rooms, const std::string& room) {
    std::set<std::string> seen{room};
    std::vector<std::string> open{room};
    while (!open.empty()) {
        const std::string next = open.back();
        open.pop_back();
        for (const std::string& other : rooms.at(next)) {
            if (seen.insert(other).second) {
                open.push_back(other);
            }
        }
    }
    return seen;
}

std::string contents(const fs::path& path) {
    std::ifstream file(path);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

}  // namespace

TEST(Architecture, every_include_is_an_arrow_of_the_picture) {
    const Rooms rooms = table();
    ASSERT_GE(rooms.size(), 14U);
    const std::regex include("^#include \"([a-z]+)/");
    int arrows = 0;
    for (const auto& entry : fs::recursive_directory_iterator(source / "src")) {
        const std::string extension = entry.path().extension();
        if (extension != ".cpp" && extension != ".hpp") {
            continue;
        }
        const std::string room = fs::relative(entry.path(), source / "src").begin()->string();
        ASSERT_TRUE(rooms.contains(room)) << "no such room in src/README.md: " << room;
        const auto allowed = reachable(rooms, room);
        std::istringstream lines(contents(entry.path()));
        for (std::string line; std::getline(lines, line);) {
            std::smatch match;
            if (std::regex_search(line, match, include)) {
                EXPECT_TRUE(allowed.contains(match[1])) << entry.path() << " includes " << match[1]
                                                        << ", an arrow that is not in the picture";
                ++arrows;
            }
        }
    }
    EXPECT_GT(arrows, 100);
}

// So that each header compiles alone; those without a source are compiled by tests/CMakeLists.txt.
TEST(Architecture, every_source_includes_its_own_header_first) {
    const std::regex include("#include [<\"]([^>\"]+)");
    int sources = 0;
    for (const auto& entry : fs::recursive_directory_iterator(source / "src")) {
        fs::path header = entry.path();
        header.replace_extension(".hpp");
        if (entry.path().extension() != ".cpp" || !fs::exists(header)) {
            continue;
        }
        const std::string text = contents(entry.path());
        std::smatch first;
        ASSERT_TRUE(std::regex_search(text, first, include)) << entry.path();
        EXPECT_EQ(first[1], fs::relative(header, source / "src").string()) << entry.path();
        ++sources;
    }
    EXPECT_GT(sources, 100);
}

TEST(Architecture, no_room_reaches_itself_through_others) {
    const Rooms rooms = table();
    for (const auto& [room, into] : rooms) {
        for (const std::string& other : into) {
            EXPECT_FALSE(reachable(rooms, other).contains(room)) << room << " <-> " << other;
        }
    }
}

// docs/safety.md names files and tests: both must exist.
TEST(Architecture, every_safety_promise_names_a_file_and_a_test_that_exist) {
    std::string all_tests;
    for (const auto& entry : fs::recursive_directory_iterator(source / "tests")) {
        if (entry.path().extension() == ".cpp") {
            all_tests += contents(entry.path());
        }
    }
    // TEST(A, b) may be broken over lines by the formatter.
    all_tests = std::regex_replace(all_tests, std::regex("\\s+"), " ");
    std::istringstream lines(contents(source / "docs/safety.md"));
    const std::regex ticked("`([^`]+)`");
    int rows = 0;
    for (std::string line; std::getline(lines, line);) {
        if (!line.starts_with("| ") || line.starts_with("| #")) {
            continue;
        }
        ++rows;
        for (std::sregex_iterator match(line.begin(), line.end(), ticked), end; match != end;
             ++match) {
            const std::string name = (*match)[1];
            if (name.starts_with("src/") || name.starts_with("web/")) {
                EXPECT_TRUE(fs::exists(source / name)) << name;
                continue;
            }
            const auto dot = name.find('.');
            ASSERT_NE(dot, std::string::npos) << name;
            const std::string spelled = name.substr(0, dot) + ", " + name.substr(dot + 1);
            const bool test = all_tests.find(spelled + ")") != std::string::npos;
            const bool property = all_tests.find(spelled + ", (") != std::string::npos;
            EXPECT_TRUE(test || property) << "no test " << name;
        }
    }
    EXPECT_GT(rows, 10);
}

// No machine's path and no word of other places than the project's own in what is committed.
TEST(Architecture, sources_speak_of_the_project_alone) {
    const std::string home = std::string("/ho") + "me/";
    const std::string work = std::string("/wo") + "rk/";
    for (const char* folder : {"src", "tests", "docs", "demo", "scripts", "data", "fuzz", "bench",
                               "web/src", "web/tests", "web/bench"}) {
        if (!fs::exists(source / folder)) {
            continue;
        }
        for (const auto& entry : fs::recursive_directory_iterator(source / folder)) {
            if (!entry.is_regular_file()) {
                continue;
            }
            const std::string text = contents(entry.path());
            EXPECT_EQ(text.find(home), std::string::npos) << entry.path();
            EXPECT_EQ(text.find(work), std::string::npos) << entry.path();
        }
    }
}
