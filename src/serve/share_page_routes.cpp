// What the holder of a share sees: asked anew at every request, and every request listed.
#include "access/share_answer.hpp"
#include "coaching/client_clock.hpp"
#include "render/shared_page_html.hpp"
#include "serve/asked_record.hpp"
#include "serve/route.hpp"
#include "store/shared_record.hpp"

namespace tracewright {

namespace {

Reply one_sentence(int status, std::string_view sentence) {
    Reply reply = text_reply(
        "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" "
        "content=\"width=device-width,initial-scale=1\"><title>" +
            std::string(sentence) + "</title></head><body><main><h1>" + std::string(sentence) +
            "</h1></main></body></html>\n",
        "text/html; charset=utf-8");
    reply.status = status;
    reply.policy = document_policy(*reply.body);
    return reply;
}

// The same for every reason, a token that opens nothing among them.
Reply refused() {
    return one_sentence(403, words_for_holder(ShareAnswer::not_in_scope));
}

struct AskedOfShare {
    std::string words = "the page";  ///< for the list of looks: never what the holder typed
    std::optional<SharedKind> kind;
    bool nothing_known = false;
};

AskedOfShare asked_of_share(const Asked& asked) {
    AskedOfShare of;
    if (asked.request.method != Method::get && asked.request.method != Method::head) {
        of.words = "a change";
    } else if (asked.target.segments.size() > 2) {
        of.kind = asked.target.segments.size() == 3 ? shared_kind_called(asked.target.segments[2])
                                                    : std::nullopt;
        of.nothing_known = !of.kind;
        of.words = of.kind ? name_of(*of.kind) : "another address";
    }
    return of;
}

ShareAnswer answer_of(const Asked& asked, const AskedOfShare& of, const Share& share,
                      const ClientFacts& facts, OpenKinds& open) {
    const Instant now = asked.acting.at;
    const CivilDate today = client_clock(facts).date_at(now);
    open = open_kinds(share, facts, now, today);
    if (of.kind) {
        const ShareAnswer answer = answer_to_holder(
            share, facts, {share.client, *of.kind, {now - share.window, now}}, now, today);
        open.kinds = answer == ShareAnswer::open ? SharedKinds().add(*of.kind) : SharedKinds();
        return answer;
    }
    if (open.answer == ShareAnswer::open && of.nothing_known) {
        return ShareAnswer::not_in_scope;
    }
    if (open.answer == ShareAnswer::open && of.words == "a change") {
        return ShareAnswer::nothing_can_be_changed;
    }
    return open.answer;
}

Reply share_reply(Asked& asked) {
    const auto token = hash_of_share_token(asked.values.front());
    const auto opened = token ? asked.store.share_opened_by(*token)
                              : store_error(StoreErrorKind::not_found, "no token");
    if (!opened) {
        return opened.error().kind == StoreErrorKind::not_found ? refused()
                                                                : problem_of(opened.error());
    }
    const auto client = asked.store.client(opened->client);
    if (!client) {
        return refused();
    }
    const Share& share = opened->record.share;
    const AskedOfShare of = asked_of_share(asked);
    OpenKinds open;
    const ShareAnswer answer = answer_of(asked, of, share, client->facts, open);
    // Before the answer: what was looked at is listed, or it was not looked at.
    if (const auto noted = asked.store.note_share_look(
            opened->record.id, {asked.acting.at, of.words, name_of(answer)});
        !noted) {
        return problem_of(noted.error());
    }
    if (answer != ShareAnswer::open) {
        return refused();
    }
    auto record = shared_record(asked.store, *client, share, opened->record.coach, asked.acting.at);
    if (!record) {
        return problem_of(record.error());
    }
    const std::scoped_lock lock(drawing());
    std::string html = shared_page_html(shared_page(*record, share, open.kinds));
    std::string policy = document_policy(html);
    Reply reply = text_reply(std::move(html), "text/html; charset=utf-8");
    reply.policy = std::move(policy);
    return reply;
}

constexpr Route table[] = {
    {Method::get, "/share/{token}", Asks::anyone, share_reply, Holds::never, nullptr, 4096},
    {Method::get, "/share/{token}/{kind}", Asks::anyone, share_reply, Holds::never, nullptr, 4096},
};

}  // namespace

Reply share_closed_for_now() {
    Reply reply = one_sentence(
        503, "This page can't be opened just now. Please try again later, or ask the coach.");
    reply.headers.emplace_back("Retry-After", "600");
    return reply;
}

std::span<const Route> share_page_routes() {
    return table;
}

}  // namespace tracewright
