#include "intake/food_table_file.hpp"
#include "source_folder.hpp"

#include <gtest/gtest.h>

using namespace tracewright;

namespace {

FoodTableFile read(const std::string& text, FoodTableOptions options = {}) {
    auto file = food_table_bytes(text, "foods.csv", options);
    EXPECT_TRUE(file) << file.error();
    return file ? std::move(*file) : FoodTableFile{};
}

}  // namespace

// Invented rows, written as European tables are: semicolons, decimal commas, kJ.
TEST(FoodTableFile, reads_another_dialect_with_kilojoules) {
    const FoodTableFile file = read(
        "Lebensmittel;Energie (kJ);Kohlenhydrate, available (g);Ballaststoffe\n"
        "Roggenbrot;920;38,5;8\n"
        "\"Milch; fettarm\";197;4,8;tr\n"
        "Tee;0;-;N\n");
    ASSERT_EQ(file.foods.size(), 3U);
    EXPECT_EQ(file.foods[0].name, "Roggenbrot");
    EXPECT_NEAR(*file.foods[0].energy_kcal, 920 / 4.184, 1e-9);  // 1 kcal = 4.184 kJ
    EXPECT_EQ(file.foods[0].available_carbohydrate_g(), 38.5);   // nothing is taken off again
    EXPECT_EQ(file.foods[1].fibre_g, 0);
    EXPECT_FALSE(file.foods[2].carbohydrate_g);  // not measured is not zero
    EXPECT_EQ(file.foods[0].portion_g, 100);
    EXPECT_TRUE(file.not_read.empty());
    EXPECT_EQ(file.taken_as[2],
              "carbohydrate: column 3, 'Kohlenhydrate, available (g)' (available, without fibre)");
}

TEST(FoodTableFile, takes_declared_columns_by_title_or_number) {
    FoodTableOptions options;
    options.columns = {"food=what", "carbohydrate=3"};
    options.basis = CarbohydrateBasis::total;
    const FoodTableFile file = read("id,what,x,fibre\n7,rye,48.3,5.8\n", options);
    ASSERT_EQ(file.foods.size(), 1U);
    EXPECT_EQ(file.foods[0].name, "rye");
    EXPECT_NEAR(*file.foods[0].available_carbohydrate_g(), 42.5, 1e-9);
    options.columns = {"food=nothing"};
    EXPECT_FALSE(food_table_bytes("a,b\n1,2\n", "t", options));
    options.columns = {"sugar=a"};
    EXPECT_FALSE(food_table_bytes("a,b\n1,2\n", "t", options));
}

TEST(FoodTableFile, does_not_guess_whether_fibre_is_in_the_carbohydrate) {
    const auto file = food_table_bytes("food,carbohydrate\nrye,48\n", "t.csv", {});
    ASSERT_FALSE(file);
    EXPECT_EQ(file.error(),
              "t.csv: found carbohydrate without saying whether its fibre is in it, expected "
              "--total (it is) or --available (it is not)");
}

TEST(FoodTableFile, tells_every_row_and_cell_it_can_not_read) {
    FoodTableOptions options;
    options.basis = CarbohydrateBasis::total;
    const FoodTableFile file =
        read("food,portion_g,carbohydrate\nrice,150,many\n,100,20\nbread,28,149\n\noats,80,67\n",
             options);
    ASSERT_EQ(file.foods.size(), 3U);
    EXPECT_FALSE(file.foods[1].carbohydrate_g);
    ASSERT_EQ(file.not_read.size(), 3U);
    EXPECT_EQ(file.not_read[0], "line 2, column 3: found 'many', expected a number");
    EXPECT_EQ(file.not_read[1], "line 3, column 1: found no food, expected its name");
    EXPECT_EQ(file.not_read[2], "line 4, column 3: found '149', expected 0 to 100.5");
}

TEST(FoodTableFile, refuses_what_is_no_table_of_foods) {
    EXPECT_FALSE(food_table_bytes("", "t", {}));
    EXPECT_FALSE(food_table_bytes("time,glucose\n1,2\n", "t", {}));
    EXPECT_FALSE(food_table_bytes("food,portion\nrice,1 cup\n", "t", {}));
    EXPECT_FALSE(food_table_file("/nowhere.csv", {}));
}

// What the program's own table says comes back by this way too (206 foods).
TEST(FoodTableFile, reads_the_shipped_table_as_the_program_does) {
    FoodTableOptions options;
    options.basis = CarbohydrateBasis::total;
    const auto file =
        food_table_file(std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/data/foods.csv", options);
    ASSERT_TRUE(file) << file.error();
    EXPECT_TRUE(file->not_read.empty());
    ASSERT_EQ(file->foods.size(), shipped_foods().size());
    for (std::size_t i = 0; i < file->foods.size(); ++i) {
        const FoodFacts& a = file->foods[i];
        const FoodFacts& b = shipped_foods()[i];
        EXPECT_EQ(a.name, b.name);
        EXPECT_EQ(a.portion, b.portion);
        EXPECT_EQ(a.portion_g, b.portion_g) << a.name;
        EXPECT_EQ(a.carbohydrate_g, b.carbohydrate_g) << a.name;
        EXPECT_EQ(a.fibre_g, b.fibre_g) << a.name;
        EXPECT_EQ(a.energy_kcal, b.energy_kcal) << a.name;
        EXPECT_EQ(a.glycaemic_index, b.glycaemic_index) << a.name;
    }
}
