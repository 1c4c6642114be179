// What a coach tells of stretches of a trace. Everybody is invented.
#include "store/stretch_book.hpp"

#include "store/client_export.hpp"
#include "store/practice_for_tests.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

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

TEST(StretchBook, what_was_told_stands_in_the_export) {
    const Folder folder;
    const auto practice = new_practice(folder.file("practice"));
    const auto client = *practice->add_client("c1", "Tansy (invented)", {}, acting());
    ASSERT_TRUE(StretchBook(*practice).tell(client, {at_second(0), at_second(3600)}, true,
                                            "slept on it", acting(31)));
    const auto holdings = practice->holdings(client, acting(32));
    ASSERT_TRUE(holdings);
    const auto files = client_export(*holdings);
    const auto document = std::ranges::find(files, std::string("client.json"), &ExportedFile::name);
    ASSERT_NE(document, files.end());
    const auto told = nlohmann::json::parse(document->bytes).at("stretches");
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told[0].at("why"), "slept on it");
    EXPECT_EQ(told[0].at("suspect"), true);
    EXPECT_EQ(told[0].at("to"), "2026-02-25T07:13:20Z");
}

}  // namespace
}  // namespace tracewright
