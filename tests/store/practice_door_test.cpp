#include "store/practice_door.hpp"

#include "store/practice_for_tests.hpp"

namespace tracewright {
namespace {

TEST(PracticeDoor, opens_to_each_coach_by_their_own_words) {
    const Folder folder;
    const std::string path = folder.file("practice");
    const auto practice = new_practice(path);
    const auto coach = practice->add_coach({"k1", "Yarrow (invented)"}, acting());
    ASSERT_TRUE(coach);
    const auto opens = [&](const char* handle, const char* passphrase) {
        const auto door = PracticeDoor::of_coach(path, handle);
        return door && door->opened(passphrase).has_value();
    };
    EXPECT_TRUE(opens("o1", "invented passphrase"));
    EXPECT_FALSE(opens("k1", "invented passphrase")) << "no owner, and none of their own yet";
    EXPECT_FALSE(opens("nobody", "invented passphrase"));

    // A coach may set their own and nobody else's; an owner anyone's.
    const Acting themselves{*coach, at_second(1)};
    EXPECT_TRUE(practice->set_coach_passphrase(*coach, "words of their own", themselves));
    EXPECT_EQ(
        practice->set_coach_passphrase(the_owner, "words of another", themselves).error().kind,
        StoreErrorKind::refused);
    EXPECT_EQ(practice->set_coach_passphrase(*coach, "short", acting()).error().kind,
              StoreErrorKind::refused);
    EXPECT_EQ(practice->set_coach_passphrase(99, "words of nobody", acting()).error().kind,
              StoreErrorKind::not_found);
    EXPECT_TRUE(opens("k1", "words of their own"));
    EXPECT_FALSE(opens("k1", "invented passphrase"));
    EXPECT_FALSE(opens("o1", "words of their own"));

    EXPECT_TRUE(practice->set_coach_passphrase(the_owner, "the owner's words", acting()));
    EXPECT_TRUE(opens("o1", "the owner's words"));
    EXPECT_FALSE(opens("o1", "invented passphrase"));
    // The practice's own passphrase still opens it for the command.
    EXPECT_TRUE(SqlitePractice::open(path, unlock_for_tests));

    ASSERT_TRUE(practice->change_coach(
        *coach, {"k1", "Yarrow (invented)", CoachRole::coach, Licence::none, true}, acting()));
    EXPECT_FALSE(opens("k1", "words of their own"));
    EXPECT_EQ(PracticeDoor::of_coach(folder.file("none"), "o1").error().kind,
              StoreErrorKind::not_found);
}

TEST(AuditSince, tells_what_was_done_after_a_line) {
    const Folder folder;
    const auto practice = new_practice(folder.file("practice"));
    const auto before = practice->audit_since(0)->back().id;
    ASSERT_TRUE(practice->add_client("c1", "Tansy (invented)", {}, acting()));
    ASSERT_TRUE(practice->note_deed("signed_in", acting()));
    const auto since = practice->audit_since(before);
    const auto& lines = *since;
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_EQ(lines[0].deed, "client_added");
    EXPECT_EQ(lines[0].client, 1);
    EXPECT_EQ(lines[1].deed, "signed_in");
    EXPECT_FALSE(lines[1].client);
}

}  // namespace
}  // namespace tracewright
