// Every word that some source writes into the audit has its words, and no words stand for nothing.
// Own rule, no source.
#include "serve/deed_words.hpp"

#include "serve/route.hpp"
#include "source_folder.hpp"

#include <gmock/gmock.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>

namespace tracewright::testing {
namespace {

namespace fs = std::filesystem;
using ::testing::Contains;
using ::testing::MatchesRegex;

const std::string source = std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/src/";

std::string text_of(const fs::path& path) {
    std::ifstream file(path);
    return {std::istreambuf_iterator<char>(file), {}};
}

// From an opening bracket to the one that closes it.
std::string within_brackets(const std::string& text, std::size_t at) {
    int depth = 1;
    std::size_t end = at;
    for (; end < text.size() && depth > 0; ++end) {
        depth += text[end] == '(' ? 1 : text[end] == ')' ? -1 : 0;
    }
    return text.substr(at, end - at);
}

void add_all(const std::string& text, const std::regex& word, std::set<std::string>& deeds) {
    for (std::sregex_iterator it(text.begin(), text.end(), word), end; it != end; ++it) {
        deeds.insert((*it)[1]);
    }
}

// A deed is handed to one of these calls, named a deed, or stands in the table of a route; commands
// also hand one on by their own ways, so there every word that ends as looks do is taken.
std::set<std::string> deeds_written() {
    const std::regex call(
        R"((audit_?\.add|AuditTable\(database\)\.add|note_look|note_deed|client_of_practice|client_of_change|client_of_sheet|client_asked_for_papers)\()");
    const std::regex word(R"re("([a-z]+(?:_[a-z]+)+)")re");
    const std::regex named(R"re(_deed = "([a-z]+(?:_[a-z]+)+)")re");
    const std::regex handed_on(R"re("((?!not_)[a-z]+(?:_[a-z]+)*_(?:made|looked_at|asked))")re");
    std::set<std::string> deeds;
    for (const char* room : {"store", "serve", "cli"}) {
        for (const auto& entry : fs::directory_iterator(source + room)) {
            const std::string text = entry.is_regular_file() ? text_of(entry.path()) : "";
            for (std::sregex_iterator it(text.begin(), text.end(), call), end; it != end; ++it) {
                const auto at = static_cast<std::size_t>(it->position() + it->length());
                add_all(within_brackets(text, at), word, deeds);
            }
            add_all(text, named, deeds);
            if (std::string_view(room) == "cli") {
                add_all(text, handed_on, deeds);
            }
        }
    }
    for (const Route& route : routes()) {
        if (route.looked != nullptr) {
            deeds.insert(route.looked);
        }
    }
    return deeds;
}

TEST(DeedWords, every_deed_that_a_source_writes_has_words) {
    const auto deeds = deeds_written();
    // Of each way to write one.
    for (const char* deed : {"practice_made", "client_added", "stretch_counted", "writing_changed",
                             "client_seen", "signed_in", "start_page_made", "plan_looked_at"}) {
        EXPECT_THAT(deeds, Contains(deed));
    }
    for (const std::string& deed : deeds) {
        EXPECT_NE(words_of_deed(deed), deed) << deed << " has no words";
    }
}

TEST(DeedWords, none_are_of_a_deed_that_no_source_writes) {
    const auto deeds = deeds_written();
    std::set<std::string_view> once;
    for (const auto& [deed, words] : worded_deeds()) {
        EXPECT_THAT(deeds, Contains(std::string(deed)));
        EXPECT_TRUE(once.insert(deed).second) << deed << " stands twice";
        // They go on after a name, with the client named behind them.
        EXPECT_THAT(std::string(words), MatchesRegex("[a-z].*[a-z]")) << deed;
    }
}

TEST(DeedWords, what_is_not_known_stands_for_itself) {
    EXPECT_EQ(words_of_deed("spoken_by_a_later_version"), "spoken_by_a_later_version");
}

}  // namespace
}  // namespace tracewright::testing
