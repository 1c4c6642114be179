#include "coaching/weight.hpp"

#include "diary/written_words.hpp"

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::chrono::days within{26 * 7};
constexpr double enough_percent = 5;
constexpr double lightest_kg = 20;
constexpr double heaviest_kg = 400;

// Exact by the international pound of 0.45359237 kg (1959).
double kg_in(const std::string& unit) {
    const std::string name = small_letters(unit);
    if (name == "kg") {
        return 1;
    }
    if (name == "lb" || name == "lbs") {
        return 0.45359237;
    }
    return name == "st" ? 14 * 0.45359237 : name == "g" ? 0.001 : 0;
}

bool is_weight(const LabResult& lab) {
    const std::string what = small_letters(lab.what);
    return what == "weight" || what == "body weight";
}

}  // namespace

std::vector<Weight> weights_of(std::span<const LabResult> labs) {
    std::vector<Weight> weights;
    for (const LabResult& lab : labs) {
        const double kg = lab.value * kg_in(lab.unit);
        if (is_weight(lab) && kg >= lightest_kg && kg <= heaviest_kg) {
            weights.push_back({lab.on, kg});
        }
    }
    std::ranges::stable_sort(weights, {}, &Weight::on);
    return weights;
}

std::optional<WeightFall> weight_fall(std::span<const Weight> weights, CivilDate as_of) {
    std::optional<WeightFall> last;
    for (std::size_t i = 0; i < weights.size() && weights[i].on <= as_of; ++i) {
        const Weight& to = weights[i];
        const Weight* heaviest = &to;
        for (std::size_t k = 0; k < i; ++k) {
            if (to.on - weights[k].on <= within && weights[k].kg > heaviest->kg) {
                heaviest = &weights[k];
            }
        }
        // A millionth of leeway: 200 lb to 190 lb is 5 % whatever the binary neighbours.
        if ((heaviest->kg - to.kg) * 100 >= enough_percent * heaviest->kg - 1e-6) {
            last = WeightFall{*heaviest, to, (heaviest->kg - to.kg) / heaviest->kg * 100};
        }
    }
    return last;
}

}  // namespace tracewright
