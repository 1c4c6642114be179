// Lives in which nothing goes with anything: nights, meals and movement vary by themselves.
#include "calibration/cells.hpp"

#include "findings/first_review.hpp"
#include "responses/days_for_tests.hpp"

#include <fmt/format.h>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>

#include <algorithm>
#include <cmath>
#include <iostream>

namespace tracewright {

namespace {

using namespace testing;

ReviewInput aimless(int days, double day_to_day, std::uint64_t seed) {
    boost::random::mt19937_64 engine(seed);
    boost::random::normal_distribution<double> normal;
    const auto minutes = [&](double deviation) {
        return std::chrono::minutes{std::lround(deviation * normal(engine))};
    };
    ReviewInput input;
    std::vector<double> level;
    double u = normal(engine);
    for (int day = 0; day <= days; ++day) {
        level.push_back(170 + 12 * u);
        u = day_to_day * u + std::sqrt(1 - day_to_day * day_to_day) * normal(engine);
        for (const int hour : {8, 13, 19}) {
            const Instant at = moment(day, hour) + minutes(30);
            input.diary.push_back(meal(at, "plate", std::max(10.0, 60 + 20 * normal(engine))));
            if (normal(engine) > 0.5) {
                DiaryEntry walk = entry(DiaryKind::movement, at + 40min, "walk");
                walk.until = walk.at + 20min;
                input.diary.push_back(walk);
            }
        }
        input.diary.push_back(
            slept(moment(day, 23) + minutes(60), moment(day + 1, 6, 45) + minutes(20)));
    }
    std::stable_sort(input.diary.begin(), input.diary.end(),
                     [](const DiaryEntry& a, const DiaryEntry& b) { return a.at < b.at; });
    std::vector<double> wiggle;
    double w = 0;
    for (int i = 0; i < (days + 1) * 96; ++i) {
        w = 0.9 * w + 5 * normal(engine);
        wiggle.push_back(w);
    }
    input.wears = {drawn_wear(moment(0, 0), moment(days + 1, 0), 15min, [&](Instant at) {
        const auto step = static_cast<std::size_t>((at - day_zero()) / 15min);
        return level[step / 96] + wiggle[step];
    })};
    input.as_of = moment(days + 2, 12);
    return input;
}

}  // namespace

void print_standing_cells(int draws) {
    std::cout << "\nLives in which nothing goes with anything\n\n"
              << "| days | day to day | lives | questions asked | any answered 'yes' | a scan of "
                 "fasting offers a trial | a day stands apart |\n|---|---|---|---|---|---|---|\n";
    for (const int days : {14, 28}) {
        for (const double day_to_day : {0.0, 0.3}) {
            int any = 0;
            int offered = 0;
            int apart = 0;
            double asked = 0;
            for (int draw = 1; draw <= draws; ++draw) {
                ReviewInput input = aimless(days, day_to_day, static_cast<std::uint64_t>(draw));
                const QuestionAnswers scan = scan_causes(input, Outcome::fasting);
                offered += std::ranges::any_of(scan.findings, [](const QuestionFinding& told) {
                    return told.finding.next.step == NextStep::run_trial;
                });
                const FirstReview review = first_review(std::move(input));
                asked += static_cast<double>(review.goes_with.questions.size()) / draws;
                any += std::ranges::any_of(review.goes_with.questions,
                                           [](const StandingQuestion& question) {
                                               return question.told.finding.answer == Answer::yes;
                                           });
                apart += std::ranges::any_of(review.findings, [](const Finding& finding) {
                    return finding.code == "single_day";
                });
                progress(draw, draws);
            }
            const auto share = [&](int part) { return 100.0 * part / draws; };
            std::cout << fmt::format("| {} | {} | {} | {:.1f} | {:.1f} % | {:.1f} % | {:.1f} % |\n",
                                     days, day_to_day, draws, asked, share(any), share(offered),
                                     share(apart));
            std::cout.flush();
        }
    }
}

}  // namespace tracewright
