#include "cli/notes_of_file.hpp"

#include <ostream>

namespace tracewright {

void say_of_whole_file(const Ledger& ledger, std::ostream& out) {
    for (const RowNote& note : ledger.notes()) {
        if (note.code == "sheet_not_read" || note.code == "word_not_read") {
            out << "  " << note.found << "; expected " << note.expected << "\n";
        }
    }
}

}  // namespace tracewright
