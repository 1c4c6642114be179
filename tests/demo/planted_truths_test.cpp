// Each truth that demo/README.md tells of, found again in the simulated lives by plain means. All
// sizes are ours (invented) and are measured in two ways: what the sensor's readings show, and what
// the same life without the effect would have been.
#include "life_measures.hpp"

#include "client_files.hpp"
#include "clients/clients.hpp"
#include "clients/story_clock.hpp"
#include "practice_manifest.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;

namespace {

constexpr std::uint64_t seeds[] = {1, 2, 3};

struct TwoGroups {
    Mean yes;
    Mean no;
    double difference() const { return yes.value() - no.value(); }
};

// Fasting by the sensor, nights parted by a question on the day and the evening before.
template <class Question>
TwoGroups fasting_by(const ClientLife& life, Question question) {
    TwoGroups groups;
    for (const LivedWear& wear : life.wears) {
        for (int number = 0; number < story_days; ++number) {
            if (const auto level = fasting_read(life, wear, life.day(number))) {
                const bool yes = question(life.day(number), life.day(number - 1));
                (yes ? groups.yes : groups.no).add(*level);
            }
        }
    }
    return groups;
}

bool short_night(const StoryDay& day, const StoryDay&) {
    return day.hours_short() > 0.5;
}

bool late_dinner(const StoryDay&, const StoryDay& before) {
    return before.dinner_hour > 20.33;
}

// The area above the level at the first bite over three hours, and the mean of the third hour.
struct AfterDinner {
    double area = 0;
    double third_hour = 0;
};

std::optional<AfterDinner> after_dinner(const ClientLife& life, const LivedWear& wear,
                                        const StoryDay& day) {
    const Instant bite = life.zones.resolve(day.meals.back().at).first;
    const auto start = blood_at(wear, bite);
    if (!start || !blood_at(wear, bite + 3h)) {
        return std::nullopt;
    }
    AfterDinner result;
    for (int minute = 0; minute < 180; ++minute) {
        const double level = *blood_at(wear, bite + std::chrono::minutes{minute});
        result.area += std::max(0.0, level - *start);
        result.third_hour += minute >= 120 ? level / 60 : 0;
    }
    return result;
}

int minutes_below(const LivedWear& wear, double level, Interval during) {
    int minutes = 0;
    for (const SensorReading& reading : wear.readings) {
        if (during.contains(reading.at) && reading.mg_per_dl < level) {
            minutes += static_cast<int>(wear.plan.kind.interval.count());
        }
    }
    return minutes;
}

Interval night_of(const ClientLife& life, const StoryDay& day) {
    const Instant midnight = life.zones.resolve(day.date + 0h).first;
    return {midnight, midnight + 6h};
}

}  // namespace

TEST(PlantedTruths, linden_wakes_higher_after_short_nights) {
    for (const std::uint64_t seed : seeds) {
        const ClientLife life = client_life(client_linden(), seed);
        ClientStory unmoved = client_linden();
        unmoved.effects = {};
        const ClientLife other = client_life(unmoved, seed);
        Mean per_hour;
        for (std::size_t i = 0; i < life.wears.size(); ++i) {
            for (const StoryDay& day : life.days) {
                const auto with = fasting_true(life, life.wears[i], day);
                const auto without = fasting_true(other, other.wears[i], day);
                if (with && without && day.hours_short() > 0.5) {
                    per_hour.add((*with - *without) / day.hours_short());
                }
            }
        }
        EXPECT_NEAR(per_hour.value(), 9, 1.5) << seed;
        const TwoGroups read = fasting_by(life, short_night);
        EXPECT_GT(read.yes.n, 8) << seed;
        EXPECT_NEAR(read.difference(), 14, 7) << seed;  // about 1.6 h short on such nights
    }
}

TEST(PlantedTruths, linden_lay_on_the_sensor_twice_where_no_medicine_can_cause_lows) {
    const ClientLife life = client_life(client_linden(), 1);
    ClientStory unpressed = client_linden();
    unpressed.wears[1].dips.clear();
    const ClientLife other = client_life(unpressed, 1);
    ASSERT_EQ(life.wears[1].readings.size(), other.wears[1].readings.size());
    EXPECT_EQ(life.wears[1].course, other.wears[1].course);  // the blood knows nothing of it
    int moved = 0;
    for (std::size_t i = 0; i < life.wears[1].readings.size(); ++i) {
        const double fall =
            other.wears[1].readings[i].mg_per_dl - life.wears[1].readings[i].mg_per_dl;
        moved += fall > 30 ? 1 : 0;
    }
    EXPECT_GE(moved, 6);
    EXPECT_LE(moved, 14);
}

TEST(PlantedTruths, alder_wakes_higher_after_late_dinners_and_not_after_short_nights) {
    for (const std::uint64_t seed : seeds) {
        const ClientLife life = client_life(client_alder(), seed);
        ClientStory early = client_alder();
        early.routine.late_dinner_hour = early.routine.dinner_hour;
        const ClientLife other = client_life(early, seed);
        Mean net;
        for (std::size_t i = 0; i < life.wears.size(); ++i) {
            for (int number = 0; number < story_days; ++number) {
                const auto with = fasting_true(life, life.wears[i], life.day(number));
                const auto without = fasting_true(other, other.wears[i], other.day(number));
                if (with && without && late_dinner(life.day(number), life.day(number - 1))) {
                    net.add(*with - *without);
                }
            }
        }
        EXPECT_NEAR(net.value(), 18, 3) << seed;
        const TwoGroups read = fasting_by(life, late_dinner);
        EXPECT_GT(read.yes.n, 5) << seed;
        EXPECT_NEAR(read.difference(), 18, 9) << seed;
    }
}

TEST(PlantedTruths, rowan_wakes_higher_after_late_dinners_and_seems_to_after_short_nights) {
    Mean late;
    Mean brief;
    for (const std::uint64_t seed : seeds) {
        const ClientLife life = client_life(client_rowan(), seed);
        late.add(fasting_by(life, late_dinner).difference());
        brief.add(fasting_by(life, short_night).difference());
        // What sleep itself does is nothing at all.
        ClientStory rested = client_rowan();
        rested.effects.production_per_hour_short = 0;
        rested.effects.uptake_per_hour_short = 0;
        EXPECT_EQ(client_life(rested, seed).wears[0].course, life.wears[0].course);
    }
    EXPECT_NEAR(late.value(), 11, 5);
    EXPECT_GT(brief.value(), 3);
}

// A walk after the evening meal against one at any time: ratio of the three hours' area 0.78 (0.67
// to 0.91), Reynolds et al. 2016, 10.1007/s00125-016-4085-2 (author from memory). The planted
// walk is held to that range.
TEST(PlantedTruths, hazels_walk_after_dinner_lowers_the_hours_after_it) {
    for (const std::uint64_t seed : seeds) {
        const ClientLife life = client_life(client_hazel(), seed);
        ClientStory seated = client_hazel();
        seated.effects = {};
        const ClientLife other = client_life(seated, seed);
        Mean lower, with_area, without_area;
        TwoGroups seen;
        for (std::size_t i = 0; i < life.wears.size(); ++i) {
            for (const StoryDay& day : life.days) {
                const auto with = after_dinner(life, life.wears[i], day);
                const auto without = after_dinner(other, other.wears[i], day);
                if (with && without && day.walk) {
                    lower.add(without->third_hour - with->third_hour);
                    with_area.add(with->area);
                    without_area.add(without->area);
                }
                if (with) {
                    (day.walk ? seen.yes : seen.no).add(with->third_hour);
                }
            }
        }
        EXPECT_NEAR(lower.value(), 20, 5) << seed;
        EXPECT_GT(with_area.value() / without_area.value(), 0.67) << seed;
        EXPECT_LT(with_area.value() / without_area.value(), 0.91) << seed;
        EXPECT_GE(seen.yes.n, 8) << seed;
        EXPECT_GE(seen.no.n, 8) << seed;
        EXPECT_LT(seen.difference(), 0) << seed;
    }
}

TEST(PlantedTruths, birchs_white_rice_is_followed_by_a_high_rise_and_mango_came_once) {
    for (const std::uint64_t seed : seeds) {
        const ClientLife life = client_life(client_birch(), seed);
        ClientStory plain = client_birch();
        for (Food& food : plain.lunches) {
            food.rise = 1;
        }
        const ClientLife other = client_life(plain, seed);
        Mean higher;
        TwoGroups per_gram;
        int mangoes = 0;
        for (std::size_t i = 0; i < life.wears.size(); ++i) {
            for (const StoryDay& day : life.days) {
                for (const EatenMeal& meal : day.meals) {
                    const Instant bite = life.zones.resolve(meal.at).first;
                    const auto start = blood_at(life.wears[i], bite);
                    const auto later = blood_at(life.wears[i], bite + 2h);
                    if (!start || !later) {
                        continue;
                    }
                    mangoes += meal.food.name == "mango" ? 1 : 0;
                    const bool rice = meal.food.rise > 1;
                    if (rice) {
                        higher.add(*later - *blood_at(other.wears[i], bite + 2h));
                    }
                    if (meal.slot == Slot::lunch) {
                        (rice ? per_gram.yes : per_gram.no)
                            .add((*later - *start) / meal.carbohydrate_g);
                    }
                }
            }
        }
        EXPECT_GE(higher.n, 5) << seed;
        EXPECT_NEAR(higher.value(), 45, 10) << seed;
        EXPECT_GT(per_gram.difference(), 0.4) << seed;
        EXPECT_EQ(mangoes, 1) << seed;
    }
}

TEST(PlantedTruths, maple_is_very_low_on_seven_nights_and_on_no_other) {
    const int planned_days[] = {day_number(3, 5),  day_number(3, 9),  day_number(3, 12),
                                day_number(3, 15), day_number(4, 10), day_number(4, 14),
                                day_number(4, 18)};
    for (const std::uint64_t seed : seeds) {
        const ClientLife life = client_life(client_maple(), seed);
        int nights = 0;
        for (const LivedWear& wear : life.wears) {
            for (const StoryDay& day : life.days) {
                const Interval night = night_of(life, day);
                if (!wear.worn.contains(night.from) || !wear.worn.contains(night.to)) {
                    continue;
                }
                const bool planned = std::find(std::begin(planned_days), std::end(planned_days),
                                               day.number) != std::end(planned_days);
                const bool pressed = day.number == day_number(3, 7);
                if (planned) {
                    ++nights;
                    EXPECT_GE(minutes_below(wear, 54, night), 15) << seed << " " << day.number;
                } else if (!pressed) {
                    EXPECT_EQ(minutes_below(wear, 54, night), 0) << seed << " " << day.number;
                }
            }
        }
        EXPECT_EQ(nights, 7) << seed;
    }
}

TEST(PlantedTruths, maple_alone_is_really_very_low) {
    for (const ClientStory& story : client_stories()) {
        const ClientLife life = client_life(story, 1);
        double lowest = 1000;
        for (const LivedWear& wear : life.wears) {
            lowest = std::min(lowest, *std::min_element(wear.course.begin(), wear.course.end()));
        }
        if (story.key == "maple") {
            EXPECT_LT(lowest, 54);
            EXPECT_GT(lowest, 40);
        } else {
            EXPECT_GE(lowest, 60) << story.key;
        }
    }
}

TEST(PlantedTruths, willows_29th_of_march_has_twenty_three_hours) {
    const ClientLife life = client_life(client_willow(), 1);
    const CivilDay day = life.zones.day_of(first_story_day + std::chrono::days{day_number(3, 29)});
    EXPECT_EQ(day.length(), 23h);
    const LivedWear& wear = life.wears.at(1);
    const auto seen = std::count_if(wear.readings.begin(), wear.readings.end(),
                                    [&](const auto& r) { return day.interval().contains(r.at); });
    EXPECT_LE(seen, 276);
    EXPECT_GE(seen, 230);
    for (const ClientFile& file : client_files(life)) {
        for (const auto& row : file.table.rows) {
            EXPECT_FALSE(row[0].starts_with("29.03.2026 02:")) << file.name;
        }
    }
}

TEST(PlantedTruths, cedars_days_of_travel_have_thirty_and_eighteen_hours) {
    const ClientLife life = client_life(client_cedar(), 1);
    const auto date = [](unsigned month, unsigned day) {
        return first_story_day + std::chrono::days{day_number(month, day)};
    };
    EXPECT_EQ(life.zones.day_of(date(2, 10)).length(), 30h);
    EXPECT_EQ(life.zones.day_of(date(2, 17)).length(), 18h);
    EXPECT_TRUE(life.wears[0].worn.contains(life.zones.day_of(date(2, 10)).from));
    EXPECT_TRUE(life.wears[0].worn.contains(life.zones.day_of(date(2, 17)).to));
}

TEST(PlantedTruths, larchs_sensor_fell_off_and_the_next_came_late) {
    const ClientLife life = client_life(client_larch(), 1);
    const LivedWear& first = life.wears.at(0);
    const LivedWear& second = life.wears.at(1);
    const auto lasted = first.readings.back().at - first.worn.from;
    EXPECT_LE(lasted, 61h + 10min);
    EXPECT_GT(lasted, 61h + 10min - 15min);
    EXPECT_EQ(second.worn.from - (first.worn.from + 61h + 10min), 20h + 50min);
    EXPECT_EQ(first.plan.end, "fell off");
}

TEST(PlantedTruths, larch_leaves_out_large_meals_and_the_juice) {
    for (const std::uint64_t seed : seeds) {
        const ClientLife life = client_life(client_larch(), seed);
        const LivedWear& wear = life.wears.at(1);
        int eaten = 0;
        for (const StoryDay& day : life.days) {
            for (const EatenMeal& meal : day.meals) {
                eaten += wear.worn.contains(life.zones.resolve(meal.at).first) ? 1 : 0;
            }
        }
        const auto written = std::count_if(wear.diary.begin(), wear.diary.end(),
                                           [](const auto& line) { return !line.eaten.empty(); });
        EXPECT_GT(written, eaten / 3) << seed;
        EXPECT_LT(written, eaten * 2 / 3) << seed;
        int rises = 0;
        for (const PlannedMeal& juice : life.story.planned_meals) {
            const Instant from = life.zones.resolve(life.day(juice.day).date + 16h).first;
            double most = 0;
            for (int minute = 0; minute < 60; ++minute) {
                const Instant at = from + std::chrono::minutes{minute};
                most = std::max(most, *blood_at(wear, at + 1h) - *blood_at(wear, at));
            }
            rises += most > 2.5 * mg_per_dl_in_mmol_per_l ? 1 : 0;
        }
        EXPECT_GE(rises, 4) << seed;
        for (const DiaryLine& line : wear.diary) {
            EXPECT_NE(line.eaten, "fruit juice") << seed;
        }
    }
}

TEST(PlantedTruths, larch_writes_small_meals_more_often_than_large_ones) {
    TwoGroups written;  // large and small main meals: the share that is written
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        const ClientLife life = client_life(client_larch(), seed);
        const LivedWear& wear = life.wears.at(1);
        for (const StoryDay& day : life.days) {
            for (const EatenMeal& meal : day.meals) {
                const Instant at = life.zones.resolve(meal.at).first;
                if (meal.slot == Slot::snack || !wear.worn.contains(at)) {
                    continue;
                }
                const bool found =
                    std::any_of(wear.diary.begin(), wear.diary.end(), [&](const DiaryLine& line) {
                        return line.eaten == meal.food.name &&
                               std::chrono::abs(life.zones.resolve(line.at).first - at) <= 40min;
                    });
                (meal.carbohydrate_g > 60 ? written.yes : written.no).add(found ? 1 : 0);
            }
        }
    }
    EXPECT_GT(written.yes.n, 60);
    EXPECT_NEAR(written.difference(), -0.3, 0.12);
}

TEST(PlantedTruths, aspens_wears_differ_by_the_sensors_as_much_as_by_the_medicine) {
    const ClientLife life = client_life(client_aspen(), 1);
    Mean read[3], blood[3];
    for (std::size_t i = 0; i < 3; ++i) {
        for (const SensorReading& reading : life.wears[i].readings) {
            read[i].add(reading.mg_per_dl);
        }
        for (const double level : life.wears[i].course) {
            blood[i].add(level);
        }
    }
    const double seen = read[0].value() - read[1].value();
    const double really = blood[0].value() - blood[1].value();
    EXPECT_NEAR(seen - really, 12.8,
                1.5);  // (1.049 - 1) of the first and (1 - 0.969) of the second
    EXPECT_GT(really, 4);
    EXPECT_LT(really, 14);
    // Both at once: the one reads 7 % above the other.
    EXPECT_NEAR(life.wears[2].bias / life.wears[1].bias, 1.07, 0.005);
    const Interval both = intersection(life.wears[1].worn, life.wears[2].worn);
    EXPECT_EQ(both.length(), 10 * 24h);
}

// Riddle et al. 2021, 10.2337/dci21-0034: below 6.5 % at least three months
// after the last glucose-lowering medicine; three months taken as 90 days (ours).
TEST(PlantedTruths, elder_meets_the_numbers_of_the_remission_criteria_on_16_april_only) {
    const auto facts = nlohmann::json::parse(client_elder().facts);
    EXPECT_EQ(facts["medicines"][0]["until"], "2026-01-15");
    EXPECT_EQ(facts["labs"].back()["on"], "2026-04-16");
    EXPECT_LT(facts["labs"].back()["value"].get<double>(), 6.5);
    EXPECT_EQ(day_number(4, 15) - day_number(1, 15), 90);
    EXPECT_LT(day_number(3, 2) - day_number(1, 15),
              90);  // the laboratory's second result: too soon
    const ClientLife life = client_life(client_elder(), 1);
    for (const LivedWear& wear : life.wears) {
        for (const DiaryLine& line : wear.diary) {
            EXPECT_TRUE(line.medicine.empty() || line.at < in_2026(1, 16, 0));
        }
    }
}

TEST(PlantedTruths, cedars_medicine_is_unknown_and_willows_screen_unanswered) {
    const auto cedar = nlohmann::json::parse(client_cedar().facts);
    EXPECT_NE(cedar["medicines"][0]["as_written"].get<std::string>().find("Quorvilan"),
              std::string::npos);
    EXPECT_TRUE(nlohmann::json::parse(client_willow().facts)["eating_screen"]["result"].is_null());
}

TEST(PlantedTruths, yarrow_is_moved_by_nothing) {
    for (const std::uint64_t seed : seeds) {
        const ClientLife life = client_life(client_yarrow(), seed);
        ClientStory bare = client_yarrow();
        bare.effects = {};
        EXPECT_EQ(client_life(bare, seed).wears[0].course, life.wears[0].course);
        EXPECT_NEAR(fasting_by(life, short_night).difference(), 0, 6) << seed;
        for (const StoryDay& day : life.days) {
            EXPECT_LT(day.hours_late(), 1) << seed;
        }
    }
}
