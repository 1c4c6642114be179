// Single diary entries corrected and struck out; what was there before comes back when that is
// undone. Everybody is invented; own rule, no source.
#include "store/diary_book.hpp"
#include "store/client_export.hpp"
#include "store/practice_for_tests.hpp"

#include <gmock/gmock.h>

#include <algorithm>

namespace tracewright {
namespace {

class DiaryBookTest : public ::testing::Test {
  protected:
    DiaryBookTest() : practice(new_practice(folder.file("practice"))) {
        client = *practice->add_client("c1", "Tansy (invented)", {}, acting());
        EXPECT_TRUE(practice->bring_in(client, with_meals(file_of(0, 288), 4), WhoseFile::not_asked,
                                       acting(10)));
    }

    std::vector<DiaryRecord> standing() {
        return *DiaryBook(*practice).entries(client, {at_second(0), at_second(86'400)});
    }
    std::string exported() {
        std::string all;
        for (const ExportedFile& file : client_export(*practice->holdings(client, acting()))) {
            all += file.bytes;
        }
        return all;
    }

    Folder folder;
    std::unique_ptr<SqlitePractice> practice;
    std::int64_t client = 0;
};

TEST_F(DiaryBookTest, lists_what_the_diary_holds_with_what_it_is_called_by) {
    const auto records = standing();
    ASSERT_EQ(records.size(), 4U);
    const Diary diary = *practice->diary(client);
    for (std::size_t i = 0; i < records.size(); ++i) {
        EXPECT_EQ(records[i].entry.text, diary[i].text);
        EXPECT_GT(records[i].id, 0);
        EXPECT_EQ(records[i].import, 1);
        EXPECT_FALSE(records[i].corrected);
    }
}

TEST_F(DiaryBookTest, a_correction_stands_instead_and_undone_the_earlier_stands_again) {
    const std::string before = exported();
    const DiaryRecord old = standing()[1];
    DiaryEntry told = old.entry;
    told.text = "lentils";
    told.at += std::chrono::hours{40};  // out of a window that the earlier one lies in
    const auto import = DiaryBook(*practice).correct(client, old.id, told, acting(20));
    ASSERT_TRUE(import) << import.error().sentence;
    EXPECT_EQ(standing().size(), 3U);
    const Diary diary = *practice->diary(client);
    ASSERT_EQ(diary.size(), 4U);
    EXPECT_EQ(diary.back().text, "lentils");
    EXPECT_EQ(practice->diary(client, Interval{at_second(0), at_second(86'400)})->size(), 3U);
    EXPECT_TRUE(practice->faults()->empty());
    ASSERT_EQ(practice->undo(client, acting(30))->id, *import);
    EXPECT_EQ(exported(), before);
}

TEST_F(DiaryBookTest, what_is_struck_out_is_seen_nowhere_and_known_when_it_is_brought_again) {
    const std::string before = exported();
    const DiaryRecord old = standing()[2];
    ASSERT_TRUE(DiaryBook(*practice).correct(client, old.id, std::nullopt, acting(20)));
    EXPECT_EQ(standing().size(), 3U);
    EXPECT_THAT(exported(), ::testing::Not(::testing::HasSubstr(old.entry.text)));
    const auto again = practice->bring_in(client, with_meals(file_of(0, 288), 4),
                                          WhoseFile::not_asked, acting(25));
    EXPECT_EQ(again->plan.rows_stored, 0U);
    EXPECT_EQ(standing().size(), 3U);
    // Struck out twice, or corrected after, there is no such entry.
    EXPECT_EQ(DiaryBook(*practice).correct(client, old.id, old.entry, acting(26)).error().kind,
              StoreErrorKind::not_found);
    ASSERT_TRUE(practice->undo(client, acting(30)));
    EXPECT_EQ(exported(), before);
}

TEST_F(DiaryBookTest, corrected_there_and_back_is_the_same_entry_again) {
    const DiaryRecord old = standing()[0];
    DiaryEntry told = old.entry;
    told.text = "toast";
    ASSERT_TRUE(DiaryBook(*practice).correct(client, old.id, told, acting(20)));
    const DiaryRecord corrected = standing()[0];
    EXPECT_TRUE(corrected.corrected);
    ASSERT_TRUE(DiaryBook(*practice).correct(client, corrected.id, old.entry, acting(21)));
    EXPECT_EQ(standing()[0].entry.text, old.entry.text);
    EXPECT_EQ(standing().size(), 4U);
}

TEST_F(DiaryBookTest, refuses_an_entry_that_stands_already_and_another_clients) {
    const auto records = standing();
    EXPECT_EQ(DiaryBook(*practice)
                  .correct(client, records[0].id, records[1].entry, acting(20))
                  .error()
                  .kind,
              StoreErrorKind::exists);
    const auto other = practice->add_client("c2", "Bracken (invented)", {}, acting());
    EXPECT_EQ(
        DiaryBook(*practice).correct(*other, records[0].id, std::nullopt, acting(20)).error().kind,
        StoreErrorKind::not_found);
    EXPECT_EQ(standing().size(), 4U);
}

TEST_F(DiaryBookTest, is_changed_by_nobody_who_may_only_look) {
    const auto reader =
        practice->add_coach({"r1", "Sedge (invented)", CoachRole::reader}, acting());
    ASSERT_TRUE(reader);
    for (const std::int64_t who : {*reader, std::int64_t{99}}) {
        const auto struck = DiaryBook(*practice).correct(client, standing()[0].id, std::nullopt,
                                                         {who, at_second(20)});
        ASSERT_FALSE(struck);
        EXPECT_EQ(struck.error().kind, StoreErrorKind::refused);
    }
    EXPECT_EQ(standing().size(), 4U);
}

TEST_F(DiaryBookTest, nothing_of_it_stands_plainly_in_the_file_and_erasing_takes_it) {
    DiaryEntry told = standing()[0].entry;
    told.text = "a word found nowhere else";
    ASSERT_TRUE(DiaryBook(*practice).correct(client, standing()[0].id, told, acting(20)));
    const auto image = *practice->image();
    const std::string bytes(image.begin(), image.end());
    EXPECT_EQ(bytes.find("found nowhere else"), std::string::npos);
    ASSERT_TRUE(practice->erase_client(client, acting(30)));
    Database database(practice->path(), Database::Mode::read_only);
    EXPECT_EQ(database.integer("SELECT count(*) FROM diary_entry"), 0);
}

}  // namespace
}  // namespace tracewright
