#include "coaching/client_medicines.hpp"

namespace tracewright {

namespace {

constexpr std::chrono::days reaches_back{90};

}  // namespace

MedicineTimeline client_medicines(const ClientFacts& facts, const ZoneHistory& clock) {
    std::vector<MedicineUse> uses;
    for (const MedicineLine& line : facts.medicines) {
        MedicineUse use;
        use.text = medicine_text(line.written);
        if (line.from) {
            use.from = clock.day_of(*line.from).from;
            use.told_at_start = line.from == facts.medicines_asked_on;
        }
        if (line.until) {
            use.until = clock.day_of(*line.until).to;
        }
        uses.push_back(std::move(use));
    }
    std::optional<Instant> asked;
    if (facts.medicines_asked_on) {
        asked = clock.day_of(*facts.medicines_asked_on).from - reaches_back;
    }
    return MedicineTimeline(std::move(uses), asked);
}

}  // namespace tracewright
