#include "coaching/labs_not_read.hpp"

#include "coaching/a1c_results.hpp"
#include "coaching/weight.hpp"

#include <fmt/format.h>

namespace tracewright {

std::vector<LabResult> labs_not_read(std::span<const LabResult> labs) {
    std::vector<LabResult> left;
    for (const LabResult& lab : labs) {
        const std::span one(&lab, 1);
        if (a1c_results(one).empty() && fasting_results(one).empty() && weights_of(one).empty()) {
            left.push_back(lab);
        }
    }
    return left;
}

std::string lab_words(const LabResult& lab) {
    return fmt::format("{} {:g}{}{}", lab.what, lab.value, lab.unit.empty() ? "" : " ", lab.unit);
}

}  // namespace tracewright
