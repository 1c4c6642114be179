#include "coaching/licence.hpp"

namespace tracewright {

std::string in_scope(const ScopedText& text, Licence licence) {
    if (licence == Licence::none) {
        return text.record + " Ask the clinic.";
    }
    return text.if_licensed.empty() ? text.record : text.record + " " + text.if_licensed;
}

}  // namespace tracewright
