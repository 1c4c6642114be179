// What every backend must keep of shares and of the looks through them. The backends stand at the
// end of store_contract_test.cpp.
#include "store/store_contract.hpp"

#include <gmock/gmock.h>

namespace tracewright {
namespace {

Share for_the_spouse() {
    Share share;
    share.recipient = "Reed, the spouse (invented)";
    share.purpose = "to help at night";
    share.kinds.add(SharedKind::medicines);
    share.until = at_second(30 * 86'400);
    return share;
}

const std::string told_once = drawn_share_token();

ShareTokenHash token(const std::string& text = told_once) {
    return *hash_of_share_token(text);
}

TEST_P(StoreContract, a_share_comes_back_as_it_was_given_and_by_its_token) {
    const auto number = store->give_share(client, for_the_spouse(), token(), acting(10));
    ASSERT_TRUE(number) << number.error().sentence;
    const auto shares = store->shares(client);
    ASSERT_EQ(shares->size(), 1U);
    const Share& share = shares->at(0).share;
    EXPECT_EQ(share.client, "c1");
    EXPECT_EQ(share.recipient, for_the_spouse().recipient);
    EXPECT_EQ(share.purpose, "to help at night");
    EXPECT_EQ(share.kinds, for_the_spouse().kinds);
    EXPECT_EQ(share.window, std::chrono::days{14});
    EXPECT_EQ(share.given_at, at_second(10));
    EXPECT_EQ(share.until, at_second(30 * 86'400));
    EXPECT_FALSE(share.revoked_at);
    EXPECT_EQ(shares->at(0).coach, the_owner);

    const auto opened = store->share_opened_by(token());
    ASSERT_TRUE(opened);
    EXPECT_EQ(opened->client, client);
    EXPECT_EQ(opened->record.id, *number);
    EXPECT_EQ(opened->record.share.kinds, for_the_spouse().kinds);
    EXPECT_EQ(store->share_opened_by(token(drawn_share_token())).error().kind,
              StoreErrorKind::not_found);
    EXPECT_EQ(store->audit(client)->back().deed, "share_given");
}

TEST_P(StoreContract, what_lacks_something_is_no_share_and_a_token_opens_one_alone) {
    Share ended = for_the_spouse();
    ended.until = at_second(10);
    Share for_nobody = for_the_spouse();
    for_nobody.recipient.clear();
    for (const Share& share : {ended, for_nobody}) {
        EXPECT_EQ(store->give_share(client, share, token(), acting(10)).error().kind,
                  StoreErrorKind::refused);
    }
    EXPECT_EQ(store->give_share(client + 1, for_the_spouse(), token(), acting()).error().kind,
              StoreErrorKind::not_found);
    ASSERT_TRUE(store->give_share(client, for_the_spouse(), token(), acting()));
    EXPECT_FALSE(store->give_share(client, for_the_spouse(), token(), acting()));
    EXPECT_EQ(store->shares(client)->size(), 1U);
}

TEST_P(StoreContract, a_revoked_share_stays_listed_and_is_another_clients_to_revoke_for_nobody) {
    const auto number = store->give_share(client, for_the_spouse(), token(), acting());
    const auto other = *store->add_client("c2", "Birch (invented)", facts(), acting());
    EXPECT_EQ(store->revoke_share(other, *number, acting(20)).error().kind,
              StoreErrorKind::not_found);
    EXPECT_FALSE(store->share_opened_by(token())->record.share.revoked_at);
    ASSERT_TRUE(store->revoke_share(client, *number, acting(20)));
    EXPECT_EQ(store->share_opened_by(token())->record.share.revoked_at, at_second(20));
    EXPECT_EQ(store->revoke_share(client, *number, acting(30)).error().kind,
              StoreErrorKind::not_found);
    EXPECT_EQ(store->shares(client)->at(0).share.revoked_at, at_second(20));
    EXPECT_EQ(store->audit(client)->back().deed, "share_revoked");
}

TEST_P(StoreContract, every_look_is_listed_in_order_and_exported) {
    const auto number = store->give_share(client, for_the_spouse(), token(), acting());
    ASSERT_TRUE(store->note_share_look(*number, {at_second(50), "lows", "open"}));
    ASSERT_TRUE(store->note_share_look(*number, {at_second(50), "diary", "not in scope"}));
    EXPECT_EQ(store->note_share_look(*number + 1, {at_second(50), "lows", "open"}).error().kind,
              StoreErrorKind::not_found);
    const auto looks = store->shares(client)->at(0).looks;
    ASSERT_EQ(looks.size(), 2U);
    EXPECT_EQ(looks[0].at, at_second(50));
    EXPECT_EQ(looks[1].asked, "diary");
    EXPECT_EQ(looks[1].answer, "not in scope");
    const std::string all = exported();
    EXPECT_NE(all.find("Reed, the spouse (invented)"), std::string::npos);
    EXPECT_NE(all.find("not in scope"), std::string::npos);
    EXPECT_EQ(all.find(told_once), std::string::npos);
}

TEST_P(StoreContract, a_handle_changed_later_is_the_shares_too) {
    ASSERT_TRUE(store->give_share(client, for_the_spouse(), token(), acting()));
    auto record = *store->client(client);
    record.handle = "c9";
    ASSERT_TRUE(store->change_client(record, acting()));
    EXPECT_EQ(store->share_opened_by(token())->record.share.client, "c9");
    EXPECT_EQ(store->shares(client)->at(0).share.client, "c9");
}

TEST_P(StoreContract, an_erased_clients_shares_open_nothing_and_are_gone) {
    const auto number = store->give_share(client, for_the_spouse(), token(), acting());
    ASSERT_TRUE(store->note_share_look(*number, {at_second(50), "lows", "open"}));
    ASSERT_TRUE(store->erase_client(client, acting()));
    EXPECT_EQ(store->share_opened_by(token()).error().kind, StoreErrorKind::not_found);
    EXPECT_FALSE(store->shares(client));
    EXPECT_TRUE(store->faults()->empty());
}

}  // namespace
}  // namespace tracewright
