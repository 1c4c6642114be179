#include "coaching/licence.hpp"

namespace tracewright {

namespace {

// Whether the record ends by sending the coach to the clinic: nobody is sent twice.
bool asks_the_clinic(const std::string& record) {
    const std::size_t last = record.rfind(". ");
    const std::string sentence = last == std::string::npos ? record : record.substr(last + 2);
    return sentence.starts_with("Ask ") && sentence.find("clinic") != std::string::npos;
}

}  // namespace

std::string in_scope(const ScopedText& text, Licence licence) {
    if (licence == Licence::none) {
        return asks_the_clinic(text.record) ? text.record : text.record + " Ask the clinic.";
    }
    return text.if_licensed.empty() ? text.record : text.record + " " + text.if_licensed;
}

}  // namespace tracewright
