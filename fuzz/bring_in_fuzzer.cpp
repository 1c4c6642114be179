// Any bytes through the one door: the four fates sum to the rows read, readings ascend and are
// distinct.
#include "intake/bring_in.hpp"

#include <cstdint>
#include <cstdlib>

using namespace tracewright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const ZoneHistory berlin{*Zone::named("Europe/Berlin")};
    IntakeOptions options;
    options.zones = berlin;
    const Intake intake =
        bring_in_bytes(std::string(reinterpret_cast<const char*>(data), size), "fuzz", options);
    const Ledger& ledger = intake.ledger;
    if (ledger.with(Fate::stored) + ledger.with(Fate::duplicate) + ledger.with(Fate::conflict) +
            ledger.with(Fate::rejected) !=
        ledger.read()) {
        std::abort();
    }
    std::vector<std::vector<Reading>> sensors = intake.other_sensors;
    sensors.push_back(intake.readings);
    for (const std::vector<Reading>& readings : sensors) {
        for (std::size_t i = 1; i < readings.size(); ++i) {
            if (readings[i - 1].at >= readings[i].at) {
                std::abort();
            }
        }
    }
    if (intake.error && (intake.count_of_readings() > 0 || !intake.diary.empty())) {
        std::abort();
    }
    return 0;
}
