// Runs the plain-text cases of tests/days; their form stands in tests/days/README.md.
#include "cli/command_for_tests.hpp"
#include "source_folder.hpp"

#include <gtest/gtest.h>
#include <unistd.h>
#include <nlohmann/json.hpp>

#include <unistd.h>
#include <algorithm>

#include <filesystem>
#include <fstream>
#include <map>
#include <stdexcept>

using namespace tracewright;
using namespace tracewright::testing;
namespace fs = std::filesystem;
using nlohmann::json;

namespace {

// Words parted by spaces; "several words" between quotes are one where a command is told.
std::vector<std::string> words_of(const std::string& line) {
    const bool quotes = line.starts_with("do ") || line.starts_with("nowhere ");
    std::istringstream in(line);
    std::vector<std::string> words;
    for (std::string word; in >> word;) {
        if (quotes && word.front() == '"') {
            std::string rest;
            while (word.size() == 1 || word.back() != '"') {
                if (!(in >> rest)) {
                    throw std::runtime_error("a quote that is not closed: " + line);
                }
                word += " " + rest;
            }
            word = word.substr(1, word.size() - 2);
        }
        words.push_back(word);
    }
    return words;
}

std::string bytes_of(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

// All files under a path, name and bytes.
std::string all_bytes(const fs::path& under) {
    std::map<std::string, std::string> files;
    for (const auto& entry : fs::recursive_directory_iterator(under)) {
        if (entry.is_regular_file()) {
            files[fs::relative(entry.path(), under).string()] = bytes_of(entry.path());
        }
    }
    std::string all;
    for (const auto& [name, bytes] : files) {
        all += name + "\n" + bytes;
    }
    return all;
}

using Wall = std::chrono::local_seconds;

Wall wall_of(const std::string& text) {
    int y = 0, mo = 0, d = 0, h = 0, mi = 0;
    if (std::sscanf(text.c_str(), "%d-%d-%dT%d:%d", &y, &mo, &d, &h, &mi) != 5) {
        throw std::runtime_error("not a time: " + text);
    }
    return std::chrono::local_days{std::chrono::year{y} / mo / d} + std::chrono::hours{h} +
           std::chrono::minutes{mi};
}

std::string text_of(Wall wall) {
    const auto day = std::chrono::floor<std::chrono::days>(wall);
    const std::chrono::year_month_day ymd{day};
    const std::chrono::hh_mm_ss time{wall - day};
    char text[32];
    std::snprintf(text, sizeof text, "%04d-%02u-%02u %02d:%02d", static_cast<int>(ymd.year()),
                  static_cast<unsigned>(ymd.month()), static_cast<unsigned>(ymd.day()),
                  static_cast<int>(time.hours().count()), static_cast<int>(time.minutes().count()));
    return text;
}

// "every NAME from A to B step M of V UNIT [and V from A to B]... [without A to B]..."
std::string drawn(const std::vector<std::string>& w) {
    struct Part {
        Wall from, to;
        std::string value;
    };
    std::vector<Part> parts;
    for (std::size_t i = 11; i < w.size();) {
        if (w[i] == "and") {
            parts.push_back({wall_of(w.at(i + 3)), wall_of(w.at(i + 5)), w.at(i + 1)});
            i += 6;
        } else if (w[i] == "without") {
            parts.push_back({wall_of(w.at(i + 1)), wall_of(w.at(i + 3)), ""});
            i += 4;
        } else {
            throw std::runtime_error("a case says '" + w[i] +
                                     "' where 'and' or 'without' is expected");
        }
    }
    std::string text = "time,glucose " + w.at(10) + "\n";
    for (Wall at = wall_of(w.at(3)); at < wall_of(w.at(5));
         at += std::chrono::minutes{std::stoi(w.at(7))}) {
        std::string value = w.at(9);
        for (const Part& part : parts) {
            if (part.from <= at && at < part.to) {
                value = part.value;
            }
        }
        if (!value.empty()) {
            text += text_of(at) + "," + value + "\n";
        }
    }
    return text;
}

class Case {
  public:
    explicit Case(const fs::path& path)
        : folder_(fs::temp_directory_path() /
                  ("tracewright-day-" + std::to_string(::getpid()) + "-" + path.stem().string())) {
        fs::remove_all(folder_);
        fs::create_directories(folder_);
        std::ifstream file(path);
        for (std::string line; std::getline(file, line);) {
            ++line_;
            if (!line.empty() && line[0] != '#') {
                take(line, file);
            }
        }
    }
    ~Case() { fs::remove_all(folder_); }
    Case(const Case&) = delete;
    Case& operator=(const Case&) = delete;

    int checks() const { return checks_; }

  private:
    void take(const std::string& line, std::istream& rest) {
        const std::vector<std::string> words = words_of(line);
        if (words[0] == "options") {
            options_.assign(words.begin() + 1, words.end());
        } else if (words[0] == "file") {
            std::string text;
            for (std::string row; std::getline(rest, row) && row != "end"; ++line_) {
                text += row + "\n";
            }
            ++line_;
            write(words.at(1), text);
        } else if (words[0] == "every") {
            write(words.at(1), drawn(words));
        } else if (words[0] == "practice") {
            fs::create_directories(folder_ / "practice");
            std::ofstream(folder_ / "pass") << "an invented passphrase\n";
            do_it({"init", "Sorrel (invented)"});
        } else if (words[0] == "do") {
            do_it({words.begin() + 1, words.end()});
        } else if (words[0] == "run") {
            run_it({words.begin() + 1, words.end()});
        } else if (words[0] == "then") {
            check_last(words, line);
        } else if (words[0] == "page") {
            ++checks_;
            const std::string wanted = line.substr(line.find(words.at(2)) + words[2].size() + 1);
            const bool holds = bytes_of(folder_ / words.at(1)).find(wanted) != std::string::npos;
            EXPECT_EQ(holds, words[2] == "says") << at() << wanted;
        } else if (words[0] == "same") {
            ++checks_;
            EXPECT_EQ(all_bytes(folder_ / words.at(1)), all_bytes(folder_ / words.at(2))) << at();
        } else if (words[0] == "nowhere") {
            ++checks_;
            EXPECT_EQ(all_bytes(folder_ / "practice").find(words.at(1)), std::string::npos) << at();
        } else if (words[0] == "exit") {
            ++checks_;
            EXPECT_EQ(static_cast<int>(ran(words.at(1)).exit), std::stoi(words.at(2))) << at();
        } else {
            check(words, line);
        }
    }

    void write(const std::string& name, const std::string& text) {
        std::ofstream(folder_ / name, std::ios::binary) << text;
        if (!name.ends_with(".json")) {
            files_.push_back((folder_ / name).string());
        }
    }

    const Ran& ran(const std::string& command) {
        auto found = runs_.find(command);
        if (found != runs_.end()) {
            return found->second;
        }
        std::vector<std::string> args{command};
        args.insert(args.end(), files_.begin(), files_.end());
        args.insert(args.end(), options_.begin(), options_.end());
        if (command == "measures") {
            args.push_back("--json");
        } else if (command == "review") {
            args.insert(args.end(), {"--out", (folder_ / "review").string()});
        }
        Ran result = run_here(args);
        if (command == "review") {
            std::ifstream file(folder_ / "review/review.json");
            std::ostringstream text;
            text << file.rdbuf();
            result.out += text.str();
        }
        return runs_.emplace(command, std::move(result)).first->second;
    }

    // A command on the files told so far; names that end in .json or .html are in the case's
    // folder.
    void run_it(std::vector<std::string> args) {
        args.insert(args.begin() + 1, files_.begin(), files_.end());
        for (std::size_t i = 0; i < options_.size(); ++i) {
            const bool told = std::find(args.begin(), args.end(), options_[i]) != args.end();
            if (told && options_[i].starts_with("--")) {
                ++i;  // what the command says itself
            } else {
                args.push_back(options_[i]);
            }
        }
        for (std::string& word : args) {
            if (word.ends_with(".json") || word.ends_with(".html")) {
                word = (folder_ / word).string();
            }
        }
        last_ = run_here(args);
    }

    // A command on the case's practice; names of the case's files and folders are found there.
    void do_it(std::vector<std::string> args) {
        for (std::size_t i = 0; i < args.size(); ++i) {
            const bool place = i > 0 && (args[i - 1] == "--out" || args[i - 1] == "--facts" ||
                                         args[i - 1] == "--page" || args[i - 1] == "backup");
            if (place || args[i].ends_with(".csv")) {
                args[i] = (folder_ / args[i]).string();
            }
        }
        args.insert(args.end(), {"--practice", (folder_ / "practice/p").string(),
                                 "--passphrase-file", (folder_ / "pass").string()});
        if (std::find(args.begin(), args.end(), options_.at(0)) == args.end()) {
            args.insert(args.end(), options_.begin(), options_.end());
        }
        last_ = run_here(args);
    }

    // The folder's name bears the number of this process, which may hold any digits a case says
    // are never told: it is taken out of what the command said.
    Ran run_here(const std::vector<std::string>& args) {
        Ran result = run(args);
        for (std::string* said : {&result.out, &result.err}) {
            const std::string folder = folder_.string();
            for (auto found = said->find(folder); found != std::string::npos;
                 found = said->find(folder, found)) {
                said->replace(found, folder.size(), "FOLDER");
            }
        }
        return result;
    }

    void check_last(const std::vector<std::string>& words, const std::string& line) {
        ++checks_;
        if (words.at(1) == "exit") {
            EXPECT_EQ(static_cast<int>(last_.exit), std::stoi(words.at(2))) << at() << last_.err;
            return;
        }
        const std::string all = last_.out + last_.err;
        const std::string wanted = line.substr(line.find(words.at(1)) + words.at(1).size() + 1);
        if (words.at(1) == "first") {
            EXPECT_TRUE(all.starts_with(wanted)) << at() << wanted << "\nin:\n" << all;
            return;
        }
        EXPECT_EQ(all.find(wanted) != std::string::npos, words.at(1) == "says")
            << at() << wanted << "\nin:\n"
            << all;
    }

    void check(const std::vector<std::string>& words, const std::string& line) {
        ++checks_;
        const Ran& result = ran(words.at(0));
        const std::string all = result.out + result.err;
        const std::string& verb = words.at(1);
        if (verb == "says" || verb == "never") {
            const std::string wanted =
                line.substr(line.find(words.at(2), line.find(verb) + verb.size()));
            EXPECT_EQ(all.find(wanted) != std::string::npos, verb == "says")
                << at() << wanted << "\nin:\n"
                << all;
            return;
        }
        const json value = json::parse(result.out)["files"][0]["measures"][words.at(2)]["value"];
        ASSERT_TRUE(value.is_number()) << at() << value;
        if (verb == "number") {
            EXPECT_NEAR(value.get<double>(), std::stod(words.at(3)), 1e-6) << at();
        } else if (verb == "within") {
            EXPECT_GE(value.get<double>(), std::stod(words.at(3))) << at();
            EXPECT_LE(value.get<double>(), std::stod(words.at(4))) << at();
        } else {
            ADD_FAILURE() << at() << "no such check: " << verb;
        }
    }

    std::string at() const { return "line " + std::to_string(line_) + ": "; }

    fs::path folder_;
    std::vector<std::string> options_;
    std::vector<std::string> files_;
    std::map<std::string, Ran> runs_;
    Ran last_;
    int line_ = 0;
    int checks_ = 0;
};

class Days : public ::testing::TestWithParam<fs::path> {};

std::vector<fs::path> cases() {
    std::vector<fs::path> found;
    for (const auto& entry :
         fs::directory_iterator(fs::path(TRACEWRIGHT_SOURCE_FOLDER) / "tests/days")) {
        if (entry.path().extension() == ".txt") {
            found.push_back(entry.path());
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

std::string name_of_case(const ::testing::TestParamInfo<fs::path>& info) {
    std::string name = info.param.stem().string();
    std::replace_if(
        name.begin(), name.end(),
        [](char c) { return !std::isalnum(static_cast<unsigned char>(c)); }, '_');
    return name;
}

}  // namespace

TEST_P(Days, says_what_it_must) {
    const Case run_case(GetParam());
    EXPECT_GT(run_case.checks(), 0) << "a case without a check";
}

INSTANTIATE_TEST_SUITE_P(PlainText, Days, ::testing::ValuesIn(cases()), name_of_case);
