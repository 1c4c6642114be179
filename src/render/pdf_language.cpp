#include "render/pdf_language.hpp"

#include <fmt/format.h>

#include <charconv>

namespace tracewright {

std::string with_language(std::string pdf, std::string_view language) {
    const auto startxref = pdf.rfind("startxref");
    const auto trailer = pdf.rfind("trailer");
    if (startxref == std::string::npos || trailer == std::string::npos) {
        return pdf;
    }
    const auto root = pdf.find("/Root ", trailer);
    const auto size = pdf.find("/Size ", trailer);
    if (root == std::string::npos || size == std::string::npos) {
        return pdf;
    }
    int object = 0;
    int objects = 0;
    long long table = 0;
    const auto parse = [&](std::size_t at, auto& value) {
        at = pdf.find_first_of("0123456789", at);
        return at != std::string::npos &&
               std::from_chars(pdf.data() + at, pdf.data() + pdf.size(), value).ec == std::errc{};
    };
    if (!parse(root, object) || !parse(size, objects) || !parse(startxref, table)) {
        return pdf;
    }
    const std::string opening = fmt::format("\n{} 0 obj", object);
    const auto begin = pdf.rfind(opening, trailer);
    const auto end = pdf.find("endobj", begin == std::string::npos ? trailer : begin);
    const auto dictionary = pdf.find("<<", begin == std::string::npos ? trailer : begin);
    if (begin == std::string::npos || end == std::string::npos || dictionary > end) {
        return pdf;
    }
    const std::string rest = pdf.substr(dictionary + 2, end - dictionary - 2);
    const std::string info = [&] {
        const auto at = pdf.find("/Info ", trailer);
        return at == std::string::npos ? std::string() : pdf.substr(at, pdf.find('R', at) + 1 - at);
    }();
    if (!pdf.ends_with('\n')) {
        pdf += '\n';
    }
    const std::size_t at = pdf.size();
    pdf += fmt::format(
        "{} 0 obj\n<< /Lang ({}) /MarkInfo << /Marked true >> /ViewerPreferences << "
        "/DisplayDocTitle true >>{}endobj\n",
        object, language, rest);
    const std::size_t new_table = pdf.size();
    pdf += fmt::format(
        "xref\n{} 1\n{:010} 00000 n \ntrailer\n<< /Size {} /Root {} 0 R {} /Prev {} "
        ">>\nstartxref\n{}\n%%EOF\n",
        object, at, objects, object, info, table, new_table);
    return pdf;
}

}  // namespace tracewright
