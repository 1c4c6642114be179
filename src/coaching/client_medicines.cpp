#include "coaching/client_medicines.hpp"

namespace tracewright {

MedicineTimeline client_medicines(const ClientFacts& facts, const ZoneHistory& clock) {
    std::vector<MedicineUse> uses;
    for (const MedicineLine& line : facts.medicines) {
        MedicineUse use;
        use.text = medicine_text(line.written);
        if (line.from) {
            use.from = clock.day_of(*line.from).from;
        }
        if (line.until) {
            use.until = clock.day_of(*line.until).to;
        }
        uses.push_back(std::move(use));
    }
    std::optional<Instant> asked;
    if (facts.medicines_asked_on) {
        asked = clock.day_of(*facts.medicines_asked_on).from;
    }
    // What is told with a date is known for that time too, though it was asked about later.
    for (const MedicineUse& use : uses) {
        if (asked && use.from && *use.from < *asked) {
            asked = use.from;
        }
    }
    return MedicineTimeline(std::move(uses), asked);
}

}  // namespace tracewright
