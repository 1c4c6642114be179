#include "corpus.hpp"

#include "draws.hpp"
#include "number_words.hpp"
#include "practice_folder.hpp"
#include "time/instant.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <filesystem>

namespace tracewright {

namespace {

constexpr int minutes_a_day = 1440;

// How far a meal of rise 1 still lifts, so many minutes after it.
double lift(double minutes) {
    constexpr double peak = 60;
    return minutes <= 0 ? 0 : minutes / peak * std::exp(1 - minutes / peak);
}

void add_two_digits(std::string& text, int value) {
    text += static_cast<char>('0' + value / 10);
    text += static_cast<char>('0' + value % 10);
}

void add_day(std::string& text, const std::string& date, const CorpusPlan& plan, double& wander,
             Draws& draws) {
    const double meals[] = {450 + draws.normal(0, 20), 760 + draws.normal(0, 25),
                            1130 + draws.normal(0, 30)};
    const double rises[] = {draws.uniform(30, 90), draws.uniform(20, 80), draws.uniform(30, 100)};
    const double memory = std::pow(0.9, plan.interval_minutes / 5.0);
    for (int minute = 0; minute < minutes_a_day; minute += plan.interval_minutes) {
        wander = memory * wander + draws.normal(0, 10 * std::sqrt(1 - memory * memory));
        double level = 125 + wander;
        for (int meal = 0; meal < 3; ++meal) {
            level += rises[meal] * lift(minute - meals[meal]);
        }
        text += date;
        add_two_digits(text, minute / 60);
        text += ':';
        add_two_digits(text, minute % 60);
        text += ',';
        text += std::to_string(std::lround(std::clamp(level, 40.0, 400.0)));
        text += '\n';
    }
}

}  // namespace

std::string corpus_wear(const CorpusPlan& plan, int number) {
    Draws draws(plan.seed, "corpus " + std::to_string(number));
    std::string text = "time,glucose mg/dL\n";
    text.reserve(static_cast<std::size_t>(plan.days) *
                 static_cast<std::size_t>(minutes_a_day / plan.interval_minutes) * 21);
    double wander = 0;
    for (int day = 0; day < plan.days; ++day) {
        const std::chrono::year_month_day date{
            CivilDate{std::chrono::year{2025} / std::chrono::January / std::chrono::day{1}} +
            std::chrono::days{day}};
        const std::string words = padded(static_cast<int>(date.year()), 4) + "-" +
                                  padded(static_cast<unsigned>(date.month()), 2) + "-" +
                                  padded(static_cast<unsigned>(date.day()), 2) + " ";
        add_day(text, words, plan, wander, draws);
    }
    return text;
}

tl::expected<int, std::string> write_corpus(const CorpusPlan& plan, const std::string& folder) {
    std::error_code failure;
    std::filesystem::create_directories(folder, failure);
    if (failure) {
        return tl::unexpected(folder + ": " + failure.message());
    }
    for (int number = 0; number < plan.files; ++number) {
        const std::string path = folder + "/" + padded(number, 4) + ".csv";
        if (!write_file(path, corpus_wear(plan, number))) {
            return tl::unexpected(path + ": can't be written");
        }
    }
    return plan.files;
}

}  // namespace tracewright
