#include "coaching/paper.hpp"

namespace tracewright {

std::vector<std::string> contacts_without_number(const Paper& paper) {
    std::vector<std::string> without;
    for (const PaperBlock& block : paper.blocks) {
        const auto* contact = std::get_if<PaperContact>(&block);
        if (contact != nullptr && contact->telephone.empty()) {
            without.push_back(contact->who);
        }
    }
    return without;
}

}  // namespace tracewright
