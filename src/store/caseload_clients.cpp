#include "store/caseload_clients.hpp"

#include "store/client_of_list.hpp"

namespace tracewright {

Stored<std::vector<CaseloadClient>> caseload_clients(PracticeStore& store, Instant as_of) {
    const auto clients = store.clients();
    if (!clients) {
        return tl::make_unexpected(clients.error());
    }
    std::vector<CaseloadClient> gathered;
    for (const ClientLine& line : *clients) {
        auto client = client_of_list(store, line, as_of);
        if (!client) {
            return tl::make_unexpected(client.error());
        }
        gathered.push_back(std::move(*client));
    }
    return gathered;
}

}  // namespace tracewright
