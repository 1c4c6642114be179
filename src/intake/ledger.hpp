#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace tracewright {

/// How a row ends. The first four are what a row read can be; a question is one of them later.
enum class Fate : std::uint8_t { stored, duplicate, conflict, rejected, question, not_data };

const char* name_of(Fate fate);

/// One row whose fate needs words: everything that is not plainly stored, and rows stored with a
/// warning. Line and column are 1-based.
struct RowNote {
    std::uint32_t line = 0;
    std::uint32_t column = 0;
    Fate fate = Fate::rejected;
    std::string code;  ///< stable: "value_not_a_number", "skipped_hour", "duplicate_row", ...
    std::string found;
    std::string expected;
};

/// Every row of a file with its fate.
class Ledger {
  public:
    /// A row, or a run of rows, that plainly ended so.
    void count(Fate fate, std::uint64_t rows = 1);
    /// A row that ended so for a reason. Notes past `most_notes` are counted by code, not kept.
    void note(RowNote note);
    /// A remark on a row already counted (a warning on a stored row), or on the file (line 0).
    void remark(RowNote note);

    void in_order_of_lines();

    /// Rows read: what was stored, duplicate, in conflict or rejected. Rows behind an open question
    /// and rows that are not data are counted apart.
    std::uint64_t read() const;
    std::uint64_t with(Fate fate) const;
    const std::vector<RowNote>& notes() const { return notes_; }
    /// How many rows bear each code, kept or not.
    const std::map<std::string, std::uint64_t>& by_code() const { return by_code_; }

    static constexpr std::size_t most_notes = 100'000;

  private:
    std::array<std::uint64_t, 6> rows_{};
    std::vector<RowNote> notes_;
    std::map<std::string, std::uint64_t> by_code_;
};

}  // namespace tracewright
