#include "serve/paper_reply.hpp"

#include "render/paper_pages.hpp"
#include "serve/asked_record.hpp"

#include <fmt/format.h>

namespace tracewright {

Reply page_of(const DrawnPaper& drawn) {
    const std::scoped_lock lock(drawing());
    std::string html = paper_html(drawn.paper, drawn.figures);
    std::string policy = document_policy(html);
    Reply reply = text_reply(std::move(html), "text/html; charset=utf-8");
    reply.policy = std::move(policy);
    return reply;
}

Reply print_of(const DrawnPaper& drawn) {
    const std::scoped_lock lock(drawing());
    auto bytes = paper_pdf(drawn.paper, drawn.figures);
    if (!bytes) {
        return problem(422, "paper_too_long", "The paper does not fit", bytes.error().sentence());
    }
    Reply reply = text_reply(std::move(*bytes), "application/pdf");
    reply.headers.emplace_back("Content-Disposition",
                               fmt::format("inline; filename=\"{}.pdf\"", drawn.name));
    return reply;
}

}  // namespace tracewright
