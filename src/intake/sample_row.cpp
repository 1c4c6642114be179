#include "intake/sample_row.hpp"

#include "intake/plain_text.hpp"

namespace tracewright {

std::vector<SampleRow> sample_of(RowSource& source, std::size_t most) {
    source.rewind();
    std::vector<SampleRow> sample;
    Row row;
    while (sample.size() < most && source.next(row)) {
        SampleRow& copy = sample.emplace_back();
        copy.line = row.line;
        copy.fault = row.fault;
        copy.cells.reserve(row.cells.size());
        copy.forms.reserve(row.cells.size());
        for (const Cell& cell : row.cells) {
            copy.cells.push_back(plain(cell.text));
            copy.forms.push_back(cell.form);
        }
    }
    source.rewind();
    return sample;
}

}  // namespace tracewright
