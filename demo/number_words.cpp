#include "number_words.hpp"

#include <cmath>
#include <cstdlib>

namespace tracewright {

std::string padded(long long value, int digits) {
    std::string text = std::to_string(std::llabs(value));
    while (static_cast<int>(text.size()) < digits) {
        text.insert(text.begin(), '0');
    }
    return value < 0 ? "-" + text : text;
}

std::string number_words(double value, int most_decimals) {
    const long long unit = std::llround(std::pow(10, most_decimals));
    const long long scaled = std::llround(std::abs(value) * static_cast<double>(unit));
    std::string text = std::to_string(scaled / unit);
    if (most_decimals > 0 && scaled % unit != 0) {
        std::string decimals = padded(scaled % unit, most_decimals);
        decimals.erase(decimals.find_last_not_of('0') + 1);
        text += "." + decimals;
    }
    return value < 0 && scaled != 0 ? "-" + text : text;
}

std::string pricked_words(double mg_per_dl, GlucoseUnit unit) {
    if (unit == GlucoseUnit::mg_per_dl) {
        return std::to_string(std::llround(mg_per_dl));
    }
    const long long tenths = std::llround(mg_per_dl / mg_per_dl_in_mmol_per_l * 10);
    return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10);
}

std::string with_comma(std::string text) {
    if (const auto point = text.find('.'); point != std::string::npos) {
        text[point] = ',';
    }
    return text;
}

}  // namespace tracewright
