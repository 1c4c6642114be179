#include "coaching/client_clock.hpp"

namespace tracewright {

namespace {

constexpr Instant earliest{std::chrono::sys_days{std::chrono::year{1900} / 1 / 1}};

}  // namespace

ZoneHistory client_clock(const ClientFacts& facts) {
    const auto home = facts.zones.empty() ? tl::expected<Zone, std::string>(Zone::floating())
                                          : Zone::named(facts.zones.front().zone);
    ZoneHistory zones(home.value_or(Zone::floating()));
    zones.write(facts.writing);
    Instant before = earliest;
    for (std::size_t i = 1; i < facts.zones.size(); ++i) {
        const auto zone = Zone::named(facts.zones[i].zone);
        if (!zone || !facts.zones[i].from) {
            continue;
        }
        const Instant from = zones.resolve(*facts.zones[i].from).first;
        if (from > before) {
            zones.change(from, *zone);
            before = from;
        }
    }
    return zones;
}

}  // namespace tracewright
