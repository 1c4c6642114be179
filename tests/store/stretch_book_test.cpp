// What a coach tells of stretches of a trace. Everybody is invented.
#include "store/stretch_book.hpp"

#include "store/practice_for_tests.hpp"

namespace tracewright {
namespace {

TEST(StretchBook, is_changed_by_nobody_who_may_only_look) {
    const Folder folder;
    const auto practice = new_practice(folder.file("practice"));
    const auto client = *practice->add_client("c1", "Tansy (invented)", {}, acting());
    const auto reader =
        practice->add_coach({"r1", "Sedge (invented)", CoachRole::reader}, acting());
    ASSERT_TRUE(reader);
    const Acting looking{*reader, at_second(30)};
    StretchBook book(*practice);
    const Interval hour{at_second(0), at_second(3600)};
    EXPECT_EQ(book.tell(client, hour, true, "slept on it", looking).error().kind,
              StoreErrorKind::refused);
    const auto told = book.tell(client, hour, true, "slept on it", acting(31));
    ASSERT_TRUE(told);
    EXPECT_EQ(book.take_back(client, *told, looking).error().kind, StoreErrorKind::refused);
    EXPECT_EQ(book.told(client)->size(), 1U);
}

}  // namespace
}  // namespace tracewright
