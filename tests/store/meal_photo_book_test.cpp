// Photos of meals in the practice: beside the meal whatever is corrected, sealed, bounded, gone for
// good when removed. Everybody is invented; own rules, no source.
#include "store/meal_photo_book.hpp"

#include "store/client_export.hpp"
#include "store/diary_book.hpp"
#include "store/practice_for_tests.hpp"

#include <gmock/gmock.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <sstream>

namespace tracewright {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

// The store keeps bytes; what a photo is, is intake's to say.
const MealPhoto photo{"invented photo bytes of Tansy"};

class MealPhotoBookTest : public ::testing::Test {
  protected:
    MealPhotoBookTest() : practice(new_practice(folder.file("practice"))) {
        client = *practice->add_client("c1", "Tansy (invented)", {}, acting());
        EXPECT_TRUE(practice->bring_in(client, with_meals(file_of(0, 288), 3), WhoseFile::not_asked,
                                       acting(10)));
    }
    std::vector<DiaryRecord> meals() {
        return *DiaryBook(*practice).entries(client, {at_second(0), at_second(86'400)});
    }
    std::vector<MealPhotoLine> lines() { return *MealPhotoBook(*practice).lines(client); }
    std::int64_t added(std::int64_t meal) {
        return *MealPhotoBook(*practice).add(client, meal, photo, acting(20));
    }
    std::map<std::string, std::string> exported() {
        std::map<std::string, std::string> files;
        for (ExportedFile& file : client_export(*practice->holdings(client, acting()), lines())) {
            files[file.name] = std::move(file.bytes);
        }
        return files;
    }

    Folder folder;
    std::unique_ptr<SqlitePractice> practice;
    std::int64_t client = 0;
};

TEST_F(MealPhotoBookTest, a_photo_is_kept_with_its_meal_and_audited) {
    const auto meal = meals()[1];
    const auto number = added(meal.id);
    ASSERT_EQ(lines().size(), 1U);
    EXPECT_EQ(lines()[0].entry, meal.id);
    EXPECT_EQ(lines()[0].meal_at, meal.entry.at);
    EXPECT_EQ(lines()[0].at, at_second(20));
    EXPECT_EQ(lines()[0].coach, the_owner);
    EXPECT_EQ(MealPhotoBook(*practice).photo(client, number)->jpeg, photo.jpeg);
    EXPECT_EQ(practice->audit(client)->back().deed, "meal_photo_added");
}

TEST_F(MealPhotoBookTest, is_changed_by_nobody_who_may_only_look) {
    const auto reader =
        practice->add_coach({"r1", "Sedge (invented)", CoachRole::reader}, acting());
    ASSERT_TRUE(reader);
    const Acting looking{*reader, at_second(30)};
    const auto meal = meals()[1].id;
    const auto number = added(meal);
    MealPhotoBook book(*practice);
    EXPECT_EQ(book.add(client, meal, photo, looking).error().kind, StoreErrorKind::refused);
    EXPECT_EQ(book.remove(client, number, looking).error().kind, StoreErrorKind::refused);
    EXPECT_EQ(lines().size(), 1U);
}

TEST_F(MealPhotoBookTest, goes_with_the_meal_through_corrections_and_their_undoing) {
    const auto first = meals()[1];
    added(first.id);
    DiaryEntry told = first.entry;
    told.text = "lentils";
    ASSERT_TRUE(DiaryBook(*practice).correct(client, first.id, told, acting(30)));
    const auto corrected = lines().at(0).entry;
    EXPECT_NE(corrected, first.id);
    added(corrected);  // to the corrected one: it stays when the correction is undone
    told.text = "lentils and rice";
    ASSERT_TRUE(DiaryBook(*practice).correct(client, corrected, told, acting(40)));
    EXPECT_EQ(lines().size(), 2U);
    ASSERT_TRUE(practice->undo(client, acting(50)));
    ASSERT_TRUE(practice->undo(client, acting(51)));
    ASSERT_EQ(lines().size(), 2U);
    EXPECT_EQ(lines()[0].entry, first.id);
    EXPECT_EQ(lines()[1].entry, first.id);
}

TEST_F(MealPhotoBookTest, of_a_meal_struck_out_is_seen_nowhere_until_it_comes_back) {
    const auto meal = meals()[1];
    const auto number = added(meal.id);
    ASSERT_TRUE(DiaryBook(*practice).correct(client, meal.id, std::nullopt, acting(30)));
    EXPECT_TRUE(lines().empty());
    EXPECT_FALSE(MealPhotoBook(*practice).photo(client, number));
    ASSERT_TRUE(practice->undo(client, acting(40)));
    EXPECT_EQ(lines().size(), 1U);
    EXPECT_TRUE(MealPhotoBook(*practice).photo(client, number));
}

TEST_F(MealPhotoBookTest, holds_back_the_undoing_of_the_import_that_brought_its_meal) {
    const auto number = added(meals()[0].id);
    const auto undone = practice->undo(client, acting(30));
    ASSERT_FALSE(undone);
    EXPECT_EQ(undone.error().kind, StoreErrorKind::refused);
    EXPECT_THAT(undone.error().sentence, HasSubstr("1 photo(s)"));
    ASSERT_TRUE(MealPhotoBook(*practice).remove(client, number, acting(40)));
    EXPECT_TRUE(practice->undo(client, acting(50)));
}

TEST_F(MealPhotoBookTest, belongs_to_a_meal_of_this_client_and_few_to_each) {
    MealPhotoBook book(*practice);
    const auto other = *practice->add_client("c2", "Yarrow (invented)", {}, acting());
    const auto meal = meals()[0].id;
    const auto kind = [](const auto& outcome) { return outcome.error().kind; };
    EXPECT_EQ(kind(book.add(other, meal, photo, acting())), StoreErrorKind::not_found);
    EXPECT_EQ(kind(book.add(client, 999, photo, acting())), StoreErrorKind::not_found);
    EXPECT_EQ(kind(book.add(client, meal, {}, acting())), StoreErrorKind::refused);
    EXPECT_EQ(kind(book.add(client, meal, {std::string(longest_meal_photo + 1, 'j')}, acting())),
              StoreErrorKind::refused);
    DiaryEntry walk = meals()[1].entry;
    walk.kind = DiaryKind::movement;
    ASSERT_TRUE(DiaryBook(*practice).correct(client, meals()[1].id, walk, acting()));
    for (const DiaryRecord& record : meals()) {
        if (record.entry.kind != DiaryKind::meal) {
            EXPECT_EQ(kind(book.add(client, record.id, photo, acting())), StoreErrorKind::refused);
        }
    }
    for (std::size_t i = 0; i < most_photos_of_a_meal; ++i) {
        ASSERT_TRUE(book.add(client, meal, photo, acting()));
    }
    EXPECT_EQ(kind(book.add(client, meal, photo, acting())), StoreErrorKind::refused);
    EXPECT_EQ(lines().size(), most_photos_of_a_meal);
    const auto number = lines()[0].id;
    EXPECT_EQ(kind(book.photo(other, number)), StoreErrorKind::not_found);
    EXPECT_EQ(kind(book.remove(other, number, acting())), StoreErrorKind::not_found);
}

TEST_F(MealPhotoBookTest, stands_in_the_clients_export_and_not_once_removed) {
    const auto number = added(meals()[2].id);
    const std::string name = "photo-" + std::to_string(number) + ".jpg";
    EXPECT_EQ(exported_file_of(lines().at(0)), name);
    const auto told = nlohmann::json::parse(exported()["client.json"])["photos"];
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told[0]["file"], name);
    ASSERT_TRUE(MealPhotoBook(*practice).remove(client, number, acting(30)));
    EXPECT_EQ(practice->audit(client)->at(practice->audit(client)->size() - 2).deed,
              "client_exported");
    EXPECT_EQ(practice->audit(client)->back().deed, "meal_photo_removed");
    EXPECT_TRUE(nlohmann::json::parse(exported()["client.json"])["photos"].empty());
    EXPECT_FALSE(MealPhotoBook(*practice).photo(client, number));
}

TEST_F(MealPhotoBookTest, is_sealed_comes_back_from_a_backup_and_goes_with_the_client) {
    const auto number = added(meals()[0].id);
    ASSERT_TRUE(write_backup(*practice, folder.file("backup"), acting()));
    {
        Database database(practice->path(), Database::Mode::read_only);
        Statement sealed(database, "SELECT sealed_photo FROM meal_photo");
        ASSERT_TRUE(sealed.step());
        const auto bytes = sealed.blob(0);
        EXPECT_THAT(std::string(bytes.begin(), bytes.end()), Not(HasSubstr("Tansy")));
    }
    EXPECT_TRUE(practice->faults()->empty());
    ASSERT_TRUE(practice->erase_client(client, acting(60)));
    {
        Database database(practice->path(), Database::Mode::read_only);
        EXPECT_EQ(database.integer("SELECT count(*) FROM meal_photo"), 0);
    }
    ASSERT_TRUE(restore_backup(folder.file("backup"), folder.file("restored"), unlock_for_tests));
    const auto restored = opened_practice(folder.file("restored"));
    EXPECT_EQ(MealPhotoBook(*restored).photo(client, number)->jpeg, photo.jpeg);
}

TEST_F(MealPhotoBookTest, one_that_was_altered_on_disk_is_a_fault_that_is_told) {
    const auto number = added(meals()[0].id);
    {
        Database database(practice->path(), Database::Mode::existing);
        database.run("UPDATE meal_photo SET sealed_photo = zeroblob(90)");
    }
    EXPECT_FALSE(MealPhotoBook(*practice).photo(client, number));
    EXPECT_EQ(practice->faults()->size(), 1U);
}

}  // namespace
}  // namespace tracewright
