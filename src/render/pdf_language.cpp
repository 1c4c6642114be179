#include "render/pdf_language.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cstdint>

namespace tracewright {

namespace {

// UTF-16 with a byte order mark, in hexadecimal: a PDF string of any text.
std::string pdf_text(std::string_view text) {
    std::string hex = "<FEFF";
    for (std::size_t i = 0; i < text.size();) {
        const auto lead = static_cast<unsigned char>(text[i]);
        const std::size_t length = lead < 0x80 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
        char32_t point = length == 1 ? lead : lead & (0xFFU >> (length + 1));
        for (std::size_t k = 1; k < length && i + k < text.size(); ++k) {
            point = (point << 6U) | (static_cast<unsigned char>(text[i + k]) & 0x3FU);
        }
        i += length;
        if (point >= 0x10000) {
            point -= 0x10000;
            hex += fmt::format("{:04X}", 0xD800U + (static_cast<std::uint32_t>(point) >> 10U));
            point = 0xDC00U + (point & 0x3FFU);
        }
        hex += fmt::format("{:04X}", static_cast<std::uint32_t>(point));
    }
    return hex + ">";
}

struct Written {
    int object = 0;
    std::size_t at = 0;
};

// The figures' objects again, with their texts; none if there are not as many figures as texts.
std::vector<Written> write_figures(std::string& pdf, const std::vector<std::string>& texts) {
    constexpr std::string_view figure = "<< /Type /StructElem\n   /S /Figure";
    struct Found {
        int object = 0;
        std::string rest;
    };
    std::vector<Found> found;
    for (auto at = pdf.find(figure); at != std::string::npos; at = pdf.find(figure, at + 1)) {
        const auto line = pdf.rfind('\n', at - 2) + 1;
        const auto end = pdf.find("endobj", at);
        Found object;
        if (end == std::string::npos ||
            std::from_chars(pdf.data() + line, pdf.data() + at, object.object).ec != std::errc{}) {
            return {};
        }
        object.rest = pdf.substr(at + 2, end - at - 2);
        found.push_back(std::move(object));
    }
    std::vector<Written> written;
    if (found.size() != texts.size()) {
        return written;
    }
    for (std::size_t i = 0; i < found.size(); ++i) {
        written.push_back({found[i].object, pdf.size()});
        pdf += fmt::format("{} 0 obj\n<< /Alt {}{}endobj\n", found[i].object, pdf_text(texts[i]),
                           found[i].rest);
    }
    return written;
}

}  // namespace

std::string with_language(std::string pdf, std::string_view language,
                          const std::vector<std::string>& figure_texts) {
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
    std::vector<Written> written = write_figures(pdf, figure_texts);
    written.push_back({object, pdf.size()});
    pdf += fmt::format(
        "{} 0 obj\n<< /Lang ({}) /MarkInfo << /Marked true >> /ViewerPreferences << "
        "/DisplayDocTitle true >>{}endobj\n",
        object, language, rest);
    const std::size_t new_table = pdf.size();
    pdf += "xref\n";
    for (const Written& entry : written) {
        pdf += fmt::format("{} 1\n{:010} 00000 n \n", entry.object, entry.at);
    }
    pdf += fmt::format("trailer\n<< /Size {} /Root {} 0 R {} /Prev {} >>\nstartxref\n{}\n%%EOF\n",
                       objects, object, info, table, new_table);
    return pdf;
}

}  // namespace tracewright
