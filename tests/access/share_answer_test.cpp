#include "access/share_answer.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace tracewright {
namespace {

using namespace std::chrono_literals;

constexpr CivilDate today{std::chrono::local_days{std::chrono::year{2026} / 4 / 20}};
constexpr Instant now{std::chrono::sys_days{std::chrono::year{2026} / 4 / 20} + 9h};
constexpr std::chrono::days day{1};

ClientFacts consenting_client(Answered eating = Answered::no) {
    ClientFacts facts;
    facts.consent.given_on = today - 30 * day;
    facts.cautions.eating = {today - 30 * day, "o1", eating};
    return facts;
}

Share share_of(SharedKinds kinds) {
    return {"c1", "spouse", "to help at night", kinds, 14 * day, now - 2 * day, now + 28 * day, {}};
}

SharedKinds all_kinds() {
    SharedKinds kinds;
    std::ranges::for_each(every_shared_kind, [&](SharedKind kind) { kinds.add(kind); });
    return kinds;
}

ShareRequest look_at(SharedKind kind) {
    return {"c1", kind, {now - 14 * day, now}, ShareRequest::Act::look};
}

ShareAnswer answer(const Share& share, const ClientFacts& facts = consenting_client(),
                   const ShareRequest& request = look_at(SharedKind::lows), Instant at = now) {
    return answer_to_holder(share, facts, request, at, today);
}

// Every scope there is, against every kind asked for.
TEST(ShareAnswer, a_holder_sees_what_the_scope_names_and_nothing_else) {
    const unsigned scopes = 1U << every_shared_kind.size();
    for (unsigned scope = 0; scope < scopes; ++scope) {
        SharedKinds kinds;
        for (std::size_t i = 0; i < every_shared_kind.size(); ++i) {
            if ((scope >> i & 1U) != 0) {
                kinds.add(every_shared_kind[i]);
            }
        }
        for (std::size_t i = 0; i < every_shared_kind.size(); ++i) {
            const bool given = (scope >> i & 1U) != 0;
            ASSERT_EQ(answer(share_of(kinds), consenting_client(), look_at(every_shared_kind[i])),
                      given ? ShareAnswer::open : ShareAnswer::not_in_scope)
                << scope << ' ' << name_of(every_shared_kind[i]);
        }
    }
}

TEST(ShareAnswer, mood_notes_and_weight_are_off_where_no_kind_was_named) {
    const SharedKinds usual = Share{}.kinds;
    EXPECT_TRUE(usual.has(SharedKind::hours_in_range) && usual.has(SharedKind::lows));
    EXPECT_EQ(std::ranges::count_if(every_shared_kind, [&](auto kind) { return usual.has(kind); }),
              2);
}

TEST(ShareAnswer, an_eating_screen_positive_or_unanswered_closes_numbers_whatever_was_given) {
    ClientFacts undated = consenting_client(Answered::no);
    undated.cautions.eating.asked_on.reset();
    for (const ClientFacts& facts :
         {consenting_client(Answered::yes), consenting_client(Answered::not_yet), undated}) {
        for (const auto kind :
             {SharedKind::hours_in_range, SharedKind::day_sheets, SharedKind::food_amounts,
              SharedKind::meal_photos, SharedKind::weight, SharedKind::letter}) {
            EXPECT_EQ(answer(share_of(all_kinds()), facts, look_at(kind)), ShareAnswer::turned_down)
                << name_of(kind);
        }
        for (const auto kind : {SharedKind::lows, SharedKind::medicines}) {
            EXPECT_EQ(answer(share_of(all_kinds()), facts, look_at(kind)), ShareAnswer::open)
                << name_of(kind);
        }
    }
}

TEST(ShareAnswer, nothing_can_be_changed_whatever_the_scope) {
    for (const auto kind : every_shared_kind) {
        ShareRequest request = look_at(kind);
        request.act = ShareRequest::Act::change;
        EXPECT_EQ(answer(share_of(all_kinds()), consenting_client(), request),
                  ShareAnswer::nothing_can_be_changed);
    }
}

TEST(ShareAnswer, another_client_is_never_open) {
    for (const std::string_view client : {"c2", "c", "c11", "C1", ""}) {
        ShareRequest request = look_at(SharedKind::lows);
        request.client = client;
        EXPECT_EQ(answer(share_of(all_kinds()), consenting_client(), request),
                  ShareAnswer::another_client);
    }
}

TEST(ShareAnswer, ends_at_its_end_to_the_second_and_is_not_open_before_it_was_given) {
    Share share = share_of(all_kinds());
    share.until = now;
    EXPECT_EQ(answer(share), ShareAnswer::ended);
    share.until = now + 1s;
    EXPECT_EQ(answer(share), ShareAnswer::open);
    share.given_at = now + 1s;
    EXPECT_EQ(answer(share), ShareAnswer::not_given_yet);
}

TEST(ShareAnswer, revoked_it_is_closed_at_the_next_request) {
    Share share = share_of(all_kinds());
    share.revoked_at = now;
    EXPECT_EQ(answer(share), ShareAnswer::revoked);
}

TEST(ShareAnswer, consent_never_given_ended_or_withdrawn_closes_all) {
    std::vector<Consent> closed(4);
    closed[1].given_on = today + day;
    closed[2].given_on = closed[3].given_on = today - 30 * day;
    closed[2].until = today - day;
    closed[3].withdrawn_on = today;
    for (const Consent& consent : closed) {
        ClientFacts facts = consenting_client();
        facts.consent = consent;
        for (const auto kind : every_shared_kind) {
            EXPECT_EQ(answer(share_of(all_kinds()), facts, look_at(kind)), ShareAnswer::no_consent);
        }
    }
    ClientFacts last_day = consenting_client();
    last_day.consent.until = today;
    EXPECT_EQ(answer(share_of(all_kinds()), last_day), ShareAnswer::open);
}

TEST(ShareAnswer, data_from_before_the_window_or_after_now_is_not_seen) {
    for (const Interval data : {Interval{now - 14 * day - 1s, now}, Interval{now - day, now + 1s},
                                Interval{now, now}, Interval{now, now - day}}) {
        ShareRequest request = look_at(SharedKind::lows);
        request.data = data;
        EXPECT_EQ(answer(share_of(all_kinds()), consenting_client(), request),
                  ShareAnswer::outside_window);
    }
}

// T21: what the one sees the other does not.
TEST(ShareAnswer, a_spouse_does_not_see_what_the_practitioner_sees) {
    const Share spouse = share_of(SharedKinds::usual());
    const Share practitioner = share_of(SharedKinds().add(SharedKind::letter));
    EXPECT_EQ(answer(spouse, consenting_client(), look_at(SharedKind::letter)),
              ShareAnswer::not_in_scope);
    EXPECT_EQ(answer(practitioner, consenting_client(), look_at(SharedKind::hours_in_range)),
              ShareAnswer::not_in_scope);
}

TEST(ShareAnswer, a_refused_holder_learns_no_reason) {
    for (unsigned i = 1; i <= static_cast<unsigned>(ShareAnswer::outside_window); ++i) {
        EXPECT_EQ(words_for_holder(static_cast<ShareAnswer>(i)), "Not allowed.");
        EXPECT_STRNE(name_of(static_cast<ShareAnswer>(i)), "");
    }
    EXPECT_EQ(words_for_holder(ShareAnswer::open), "");
}

TEST(Share, tells_what_it_lacks) {
    const Share whole = share_of(SharedKinds::usual());
    EXPECT_FALSE(what_a_share_lacks(whole));
    const auto lacks = [&](auto&& change, const std::string& word) {
        Share share = whole;
        change(share);
        return what_a_share_lacks(share).value_or("").find(word) != std::string::npos;
    };
    EXPECT_TRUE(lacks([](Share& s) { s.client.clear(); }, "without a client"));
    EXPECT_TRUE(lacks([](Share& s) { s.recipient.clear(); }, "without a recipient"));
    EXPECT_TRUE(lacks([](Share& s) { s.purpose.clear(); }, "without a purpose"));
    EXPECT_TRUE(lacks([](Share& s) { s.recipient = " "; }, "without a recipient"));
    EXPECT_TRUE(lacks([](Share& s) { s.purpose = "-"; }, "without a purpose"));
    EXPECT_TRUE(lacks([](Share& s) { s.kinds = SharedKinds(); }, "of nothing"));
    EXPECT_TRUE(lacks([](Share& s) { s.window = std::chrono::days{0}; }, "less than a day"));
    EXPECT_TRUE(lacks([](Share& s) { s.until = s.given_at; }, "before it begins"));
}

}  // namespace
}  // namespace tracewright
