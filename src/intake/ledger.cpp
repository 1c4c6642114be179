#include "intake/ledger.hpp"

#include <algorithm>

namespace tracewright {

const char* name_of(Fate fate) {
    switch (fate) {
        case Fate::stored:
            return "stored";
        case Fate::duplicate:
            return "duplicate";
        case Fate::conflict:
            return "conflict";
        case Fate::rejected:
            return "rejected";
        case Fate::question:
            return "question";
        case Fate::not_data:
            return "not_data";
    }
    return "";
}

void Ledger::count(Fate fate, std::uint64_t rows) {
    rows_[static_cast<std::size_t>(fate)] += rows;
}

void Ledger::note(RowNote note) {
    count(note.fate);
    remark(std::move(note));
}

void Ledger::remark(RowNote note) {
    ++by_code_[note.code];
    if (notes_.size() < most_notes) {
        notes_.push_back(std::move(note));
    }
}

void Ledger::in_order_of_lines() {
    std::stable_sort(notes_.begin(), notes_.end(),
                     [](const RowNote& a, const RowNote& b) { return a.line < b.line; });
}

std::uint64_t Ledger::read() const {
    return with(Fate::stored) + with(Fate::duplicate) + with(Fate::conflict) + with(Fate::rejected);
}

std::uint64_t Ledger::with(Fate fate) const {
    return rows_[static_cast<std::size_t>(fate)];
}

}  // namespace tracewright
