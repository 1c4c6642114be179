// Writes the invented, messy example of data/: one wear of 14 days with its diary, as a client
// might send it. Deterministic. Usage: invented_wear > data/invented-wear.csv
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <boost/random/uniform_int_distribution.hpp>

#include <cmath>
#include <cstdio>
#include <numbers>
#include <string>
#include <vector>

namespace {

constexpr int minutes_a_day = 1440;
constexpr int days = 14;
constexpr int step = 15;

struct Meal {
    int at;  // minutes from the start's midnight
    double rise;
    double peak_after;
    const char* text;
    int carbohydrate;
};

struct Row {
    std::string glucose, finger_prick, eaten, carbohydrate, moved, minutes, slept, mood, medicine,
        note;
};

std::string comma(double value, int decimals = 1) {
    char text[32];
    std::snprintf(text, sizeof text, "%.*f", decimals, value);
    std::string result = text;
    if (const auto point = result.find('.'); point != std::string::npos) {
        result[point] = ',';
    }
    return result;
}

std::vector<Meal> meals_of(boost::random::mt19937_64& engine) {
    constexpr const char* breakfasts[] = {"Porridge with apple", "Two slices rye bread, cheese",
                                          "Yoghurt with oats", "White rolls with jam"};
    constexpr int breakfast_carbohydrate[] = {48, 32, 40, 62};
    constexpr const char* lunches[] = {"Lentil soup, bread", "Salad with chicken",
                                       "Pasta with tomato sauce", "Rice with vegetables"};
    constexpr int lunch_carbohydrate[] = {45, 18, 80, 75};
    constexpr const char* dinners[] = {"Fish, potatoes, beans", "Bread, cold meat, gherkins",
                                       "Pizza", "Vegetable omelette"};
    constexpr int dinner_carbohydrate[] = {42, 38, 95, 14};
    boost::random::uniform_int_distribution<int> which(0, 3);
    boost::random::uniform_int_distribution<int> jitter(-30, 30);
    boost::random::normal_distribution<double> size(1.0, 0.18);
    std::vector<Meal> meals;
    for (int day = 0; day < days; ++day) {
        const int base = day * minutes_a_day;
        const int b = which(engine);
        const int l = which(engine);
        const int d = which(engine);
        const bool late = day % 4 == 2;
        meals.push_back({base + 435 + jitter(engine),
                         breakfast_carbohydrate[b] * 0.085 * size(engine), 50, breakfasts[b],
                         breakfast_carbohydrate[b]});
        meals.push_back({base + 750 + jitter(engine), lunch_carbohydrate[l] * 0.055 * size(engine),
                         55, lunches[l], lunch_carbohydrate[l]});
        meals.push_back({base + (late ? 1260 : 1110) + jitter(engine),
                         dinner_carbohydrate[d] * 0.06 * size(engine), 60, dinners[d],
                         dinner_carbohydrate[d]});
    }
    return meals;
}

double level_at(int minute, const std::vector<Meal>& meals) {
    const double hour = minute % minutes_a_day / 60.0;
    double level = 6.9 + 0.7 * std::cos((hour - 7) / 24 * 2 * std::numbers::pi);
    for (const Meal& meal : meals) {
        const double t = minute - meal.at;
        if (t > 0 && t < 420) {
            level += meal.rise * t / meal.peak_after * std::exp(1 - t / meal.peak_after);
        }
    }
    return level;
}

}  // namespace

int main() {
    boost::random::mt19937_64 engine(20260302);
    const std::vector<Meal> meals = meals_of(engine);
    boost::random::normal_distribution<double> noise(0, 0.22);
    std::vector<Row> rows(days * minutes_a_day / step);
    double wander = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const int minute = static_cast<int>(i) * step;
        wander = 0.8 * wander + noise(engine);
        const int day = minute / minutes_a_day;
        const int of_day = minute % minutes_a_day;
        double level = level_at(minute, meals) + wander;
        if (day == 5 && of_day >= 150 && of_day < 210) {
            level = 3.4 - 0.1 * (of_day - 150) / 15.0;  // a low in the night
        }
        if (day == 5 && (of_day == 180 || of_day == 195)) {
            rows[i].glucose = "LOW";
        } else if (level > 16.6) {
            rows[i].glucose = "HIGH";
        } else {
            rows[i].glucose = comma(level);
        }
        if (day == 9 && of_day >= 120 && of_day < 420) {
            rows[i].glucose.clear();  // out of reach of the reader
        }
        if (of_day == 405) {
            rows[i].slept = comma(day % 3 == 1 ? 5.5 : 7.25, 2);
        }
        if (of_day == 420 && day % 3 == 0) {
            rows[i].finger_prick = comma(level + 0.3);
        }
        if (of_day == 450) {
            rows[i].medicine = "metformin 500 mg";
        }
        if (of_day == 1170 && day % 2 == 1) {
            rows[i].moved = "walk after dinner";
            rows[i].minutes = "20";
        }
        if (of_day == 1320 && day % 5 == 2) {
            rows[i].mood = "tense day";
        }
    }
    for (const Meal& meal : meals) {
        Row& row = rows[static_cast<std::size_t>(meal.at / step)];
        const bool forgotten = meal.at / minutes_a_day == 11 && meal.at % minutes_a_day > 900;
        if (!forgotten) {
            row.eaten = meal.text;
            row.carbohydrate = (meal.at % 7 == 0 ? "~" : "") + std::to_string(meal.carbohydrate);
        }
    }
    rows[10 * 96 + 60].glucose = "abc";
    rows[7 * 96 + 88].note = "felt shaky; ate two sweets";

    std::printf("Invented example for the programme, no real person\r\n");
    std::printf("Glucose diary;;;;;;;;;;;\r\n");
    std::printf("Client: Linden (invented)\r\n\r\n");
    std::printf(
        "Date;Time;Glucose (mmol/L);Finger-prick (mmol/L);Eaten;Carbohydrate "
        "(g);Moved;Minutes;Slept "
        "(h);Mood;Medicine;Note\r\n");
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const int minute = static_cast<int>(i) * step + 7;
        const int date = 2 + minute / minutes_a_day;
        const Row& r = rows[i];
        char line[512];
        std::snprintf(line, sizeof line, "%02d.03.2026;%02d:%02d;%s;%s;%s;%s;%s;%s;%s;%s;%s;%s\r\n",
                      date, minute % minutes_a_day / 60, minute % 60, r.glucose.c_str(),
                      r.finger_prick.c_str(), r.eaten.c_str(), r.carbohydrate.c_str(),
                      r.moved.c_str(), r.minutes.c_str(), r.slept.c_str(), r.mood.c_str(),
                      r.medicine.c_str(), r.note.empty() ? "" : ("\"" + r.note + "\"").c_str());
        std::printf("%s", line);
        if (i == 200 || i == 700 || i == 1100) {
            std::printf("%s", line);  // repeated rows
        }
    }
    std::printf("-----;;;;;;;;;;;\r\nEnd of diary;;;;;;;;;;;\r\n");
    return 0;
}
