#include "cli/share_command.hpp"

#include "access/share_answer.hpp"
#include "cli/json_text.hpp"
#include "coaching/client_clock.hpp"
#include "diary/says_something.hpp"
#include "findings/wording.hpp"
#include "render/shared_page_html.hpp"
#include "serve/share_json.hpp"
#include "store/shared_record.hpp"
#include "store/whole_file.hpp"
#include "time/day_text.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

namespace {

constexpr std::chrono::days usual_length{30};

Exit refuse(const Streams& streams, const std::string& sentence, Exit exit = Exit::wrong_usage) {
    streams.err << "tracewright: " << sentence << "\n";
    return exit;
}

void list_one(const ShareRecord& record, const ZoneHistory& clock, Instant now, std::ostream& out) {
    const Share& share = record.share;
    out << fmt::format(
        "{}. {}, {} ({})\n   {}\n   the last {} days; given {}, until {}{}\n", record.id,
        share.recipient, share.purpose, state_of(share, now), text_of(share.kinds),
        share.window.count(), full_date(clock.date_at(share.given_at), clock.writing()),
        full_date(clock.date_at(share.until - std::chrono::seconds{1}), clock.writing()),
        share.revoked_at
            ? ", revoked " + day_and_time(clock.wall_time(*share.revoked_at), clock.writing())
            : "");
    for (const ShareLook& look : record.looks) {
        out << fmt::format("   {}: {}: {}\n",
                           day_and_time(clock.wall_time(look.at), clock.writing()), look.asked,
                           look.answer);
    }
    if (record.looks.empty()) {
        out << "   nobody has looked yet\n";
    }
}

Exit list(OpenClient& open, const ClientRecord& client, bool as_json, const Streams& streams) {
    const auto shares = open.store().shares(open.client);
    if (!shares) {
        return said(shares.error(), streams);
    }
    const Instant now = open.practice.acting.at;
    if (as_json) {
        Json json{{"format", "shares"}, {"version", shares_json_version}};
        json.update(json_of_shares(*shares, client.facts, now));
        streams.out << dumped(json);
        return Exit::done;
    }
    for (const ShareRecord& record : *shares) {
        list_one(record, client_clock(client.facts), now, streams.out);
    }
    if (shares->empty()) {
        streams.out << "Nothing was shared yet.\n";
    }
    return Exit::done;
}

// Why a holder would see nothing now, or less than was given, for the coach.
void say_what_is_closed(const Share& share, const ClientFacts& facts, Instant now,
                        const Streams& streams) {
    if (!consent_holds(facts.consent, client_clock(facts).date_at(now))) {
        streams.out << "No consent is written down that holds today: it is closed until it is.\n";
    }
    SharedKinds closed;
    for (const SharedKind kind : every_shared_kind) {
        if (share.kinds.has(kind) && closed_by_eating_screen(facts).has(kind)) {
            closed.add(kind);
        }
    }
    if (!closed.none()) {
        streams.out << "Closed while the screen on eating is positive or not answered: "
                    << text_of(closed) << ".\n";
    }
}

Exit give(OpenClient& open, const ClientRecord& client, const Share& share,
          const Streams& streams) {
    const std::string token = drawn_share_token();
    const auto given = open.store().give_share(open.client, share, *hash_of_share_token(token),
                                               open.practice.acting);
    if (!given) {
        return said(given.error(), streams);
    }
    streams.out << fmt::format(
        "share {} was given: {}. Hand this address over now, it is told this once:\n"
        "/share/{}\nbelow the address that 'serve' prints. Without a certificate it opens on this "
        "machine only; --page writes a copy to hand over.\n",
        *given, text_of(share.kinds), token);
    say_what_is_closed(share, client.facts, open.practice.acting.at, streams);
    return Exit::done;
}

Exit write_page(OpenClient& open, const ClientRecord& client, Share share, const std::string& path,
                const Streams& streams) {
    const Instant now = open.practice.acting.at;
    if (open.practice.coach.role == CoachRole::reader) {
        return refuse(streams, "found a coach who is reader, expected one who may give data away",
                      Exit::cannot_answer);
    }
    share.client = client.handle;
    share.given_at = now;
    const OpenKinds kinds =
        open_kinds(share, client.facts, now, client_clock(client.facts).date_at(now));
    if (kinds.answer != ShareAnswer::open) {
        say_what_is_closed(share, client.facts, now, streams);
        return refuse(streams, "found nothing of it that may be shown now; no page was written",
                      Exit::cannot_answer);
    }
    auto record = shared_record(open.store(), client, share, open.practice.acting.coach, now);
    if (!record) {
        return said(record.error(), streams);
    }
    // Before the page: what was handed over is in the audit, or it was not handed over.
    if (const auto noted =
            open.store().note_look(open.client, "shared_page_made", open.practice.acting);
        !noted) {
        return said(noted.error(), streams);
    }
    const std::string page = shared_page_html(shared_page(*record, share, kinds.kinds, true));
    if (!write_whole_file(path, std::string_view(page))) {
        return refuse(streams, "could not write the page", Exit::bad_input);
    }
    streams.out << fmt::format(
        "The page was written: {}. It is a copy of today: it can't be taken back.\n",
        text_of(kinds.kinds));
    say_what_is_closed(share, client.facts, now, streams);
    return Exit::done;
}

}  // namespace

Exit share_of(const PracticeOptions& options, const ShareOptions& words, const Streams& streams) {
    const auto kinds = kinds_in_text(words.kinds);
    if (!kinds) {
        return refuse(streams,
                      "found another word in --kinds, expected some of: hours in range, "
                      "lows, day sheets, diary, food amounts, mood, notes, "
                      "weight, medicines, letter");
    }
    const auto last_day = day_of_text(words.until);
    if (!words.until.empty() && !last_day) {
        return refuse(streams, "found no day after --until, expected one such as 2026-03-02");
    }
    auto open = opened_client(options, words.client, streams);
    if (!open) {
        return open.error();
    }
    const auto client = open->store().client(open->client);
    if (!client) {
        return said(client.error(), streams);
    }
    if (words.revoke) {
        const auto revoked =
            open->store().revoke_share(open->client, *words.revoke, open->practice.acting);
        if (!revoked) {
            return said(revoked.error(), streams);
        }
        streams.out << fmt::format("share {} was revoked: the next request is refused.\n",
                                   *words.revoke);
        return Exit::done;
    }
    if (words.to.empty() && words.purpose.empty() && words.page.empty()) {
        return list(*open, *client, words.json, streams);
    }
    if (!says_something(words.to) || !says_something(words.purpose)) {
        return refuse(streams,
                      "found a share without --to or --for, expected whom it is for and why");
    }
    const ZoneHistory clock = client_clock(client->facts);
    Share share;
    share.recipient = words.to;
    share.purpose = words.purpose;
    share.kinds = *kinds;
    share.window = std::chrono::days{words.days};
    share.until =
        clock.day_of(last_day.value_or(clock.date_at(open->practice.acting.at) + usual_length)).to;
    return words.page.empty() ? give(*open, *client, share, streams)
                              : write_page(*open, *client, share, words.page, streams);
}

}  // namespace tracewright
