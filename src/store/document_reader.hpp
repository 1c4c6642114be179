#pragma once

#include "time/instant.hpp"

#include <fmt/format.h>
#include <array>
#include <cstddef>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <stdexcept>
#include <string>

namespace tracewright {

/// Thrown by a DocumentReader; its words name the key, what was found and what was expected.
/// Whoever reads a document catches it and gives the words back as a value.
struct UnreadableDocument : std::runtime_error {
    using std::runtime_error::runtime_error;
};

[[noreturn]] void unreadable(const std::string& key, const std::string& expected);

/// What was stored once stays readable; what is told now is held to bounds.
enum class Held : bool { as_stored, as_told };

/// One object of a document, read key by key; `finish` refuses what is left over. A key that is
/// missing or null leaves its value as it was.
class DocumentReader {
  public:
    using Json = nlohmann::ordered_json;

    /// `object` outlives the reader; `path` is how its keys are named in errors.
    DocumentReader(const Json& object, std::string path, Held held = Held::as_stored);

    bool told() const { return held_ == Held::as_told; }

    const Json* at(const char* key);
    std::string path(const std::string& key) const;
    void text(const char* key, std::string& value);
    void truth(const char* key, bool& value);
    /// Told: within the bounds. Stored: any that fits.
    void number(const char* key, int& value, int least, int most);
    void number(const char* key, std::optional<int>& value, int least, int most);
    void number(const char* key, double& value);
    void number(const char* key, std::optional<double>& value);
    /// Told: of the years 1900 to 2100, as a wall time is.
    void date(const char* key, CivilDate& value);
    void date(const char* key, std::optional<CivilDate>& value);
    void wall_time(const char* key, std::optional<WallTime>& value);
    void finish() const;

    /// An enumeration by its words, in the order of its values.
    template <typename Enumeration, std::size_t Count>
    void word(const char* key, const std::array<const char*, Count>& words, Enumeration& value) {
        std::string written;
        text(key, written);
        if (at(key) == nullptr) {
            return;
        }
        std::string expected = "one of";
        for (std::size_t i = 0; i < Count; ++i) {
            if (written == words[i]) {
                value = static_cast<Enumeration>(i);
                return;
            }
            expected += fmt::format(" '{}'", words[i]);
        }
        unreadable(path(key), expected);
    }
    template <typename Read>
    void list(const char* key, Read read) {
        const Json* found = at(key);
        if (found == nullptr) {
            return;
        }
        if (!found->is_array()) {
            unreadable(path(key), "a list");
        }
        for (std::size_t i = 0; i < found->size(); ++i) {
            DocumentReader item((*found)[i], fmt::format("{}[{}]", path(key), i + 1), held_);
            read(item);
            item.finish();
        }
    }
    template <typename Read>
    void object(const char* key, Read read) {
        if (const Json* found = at(key)) {
            DocumentReader inner(*found, path(key), held_);
            read(inner);
            inner.finish();
        }
    }

  private:
    const Json& object_;
    std::string path_;
    Held held_;
    std::set<std::string> met_;
};

}  // namespace tracewright
