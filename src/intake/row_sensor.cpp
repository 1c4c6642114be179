#include "intake/row_sensor.hpp"

#include "intake/plain_text.hpp"

namespace tracewright {

std::uint32_t RowSensor::of(const Row& row) {
    if (!column_ || *column_ >= row.cells.size()) {
        return last_;
    }
    const std::string name = plain(row.cells[*column_].text);
    if (!name.empty()) {
        last_ = known_.emplace(name, static_cast<std::uint32_t>(known_.size())).first->second;
    }
    return last_;
}

}  // namespace tracewright
