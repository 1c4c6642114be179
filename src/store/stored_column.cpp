#include "store/stored_column.hpp"

#include <stdexcept>

namespace tracewright {

std::string opened_text(const Seal& seal, std::span<const std::uint8_t> sealed,
                        const std::string& place) {
    auto text = seal.opened(sealed, place);
    if (!text) {
        throw std::runtime_error(text.error());
    }
    return std::move(*text);
}

}  // namespace tracewright
