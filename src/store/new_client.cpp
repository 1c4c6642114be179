#include "store/new_client.hpp"

#include "coaching/client_clock.hpp"
#include "coaching/gates.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

std::string free_handle(std::span<const ClientLine> clients) {
    for (std::size_t number = clients.size() + 1;; ++number) {
        std::string handle = fmt::format("c{}", number);
        if (std::ranges::none_of(clients,
                                 [&](const ClientLine& line) { return line.handle == handle; })) {
            return handle;
        }
    }
}

bool surely_under_18(const ClientFacts& facts, Instant at) {
    const ZoneHistory clock = client_clock(facts);
    const MedicineTimeline medicines;
    const auto gates =
        gates_before_offer(Proposed::other, {}, {facts, {}, {}, medicines, clock, at});
    return std::ranges::any_of(gates, [](const Gate& gate) {
        return gate.kind == GateKind::may_be_under_18 && !gate.open_question;
    });
}

}  // namespace tracewright
