#include "intake/cell_time.hpp"

#include "intake/clock_text.hpp"
#include "intake/serial_time.hpp"

#include <algorithm>
#include <charconv>
#include <string>

namespace tracewright {

namespace {

// A number that is the whole text, its decimals behind a point or a comma.
std::optional<double> serial_in(std::string_view text) {
    std::string with_point;
    if (text.find(',') != std::string_view::npos) {
        with_point = text;
        std::ranges::replace(with_point, ',', '.');
        text = with_point;
    }
    double serial = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), serial);
    const bool whole = error == std::errc{} && end == text.data() + text.size();
    return whole ? std::optional{serial} : std::nullopt;
}

}  // namespace

std::optional<WrittenTime> cell_time(std::string_view text, CellForm form, bool serial_1904) {
    const bool of_sheet = form == CellForm::date || form == CellForm::number;
    const auto serial = serial_in(text);
    if (of_sheet && serial) {
        if (auto time = serial_time(*serial, serial_1904)) {
            return time;
        }
    }
    if (auto time = time_with_abbreviation(text)) {
        return time;
    }
    // A serial number that reached us as text: "46083.34375".
    return serial && *serial > 1 ? serial_time(*serial, serial_1904) : std::nullopt;
}

}  // namespace tracewright
