// A review of 14 days as PDF and HTML, and the papers made from it, warm.
#include "coaching/handout.hpp"
#include "coaching/prescriber_letter.hpp"
#include "findings/first_review.hpp"
#include "render/handout_figure.hpp"
#include "render/paper_pages.hpp"
#include "render/review_pages.hpp"

#include <benchmark/benchmark.h>

#include <cmath>

using namespace tracewright;

namespace {

FirstReview fortnight() {
    std::vector<Reading> readings;
    const Instant start = std::chrono::sys_days{std::chrono::year{2026} / 3 / 2};
    for (int i = 0; i < 4032; ++i) {
        const double level = 140 + 50 * std::sin(i / 45.8) + 20 * std::sin(i / 7.0);
        readings.emplace_back(start + std::chrono::minutes{5 * i},
                              Glucose{100 * static_cast<int>(level), GlucoseUnit::mg_per_dl},
                              std::chrono::minutes{5});
    }
    ReviewInput input;
    input.as_of = readings.back().at + std::chrono::hours{1};
    input.wears = wears_of(std::move(readings), "bench");
    return first_review(std::move(input));
}

}  // namespace

static void first_review_of_a_fortnight(benchmark::State& state) {
    for (auto unused : state) {
        benchmark::DoNotOptimize(fortnight());
    }
}
BENCHMARK(first_review_of_a_fortnight)->Unit(benchmark::kMillisecond);

static void pdf_of_a_fortnight(benchmark::State& state) {
    const FirstReview review = fortnight();
    int pages = 0;
    for (auto unused : state) {
        const std::string pdf = review_pdf(review);
        pages = 0;
        for (std::size_t at = pdf.find("/Type /Page %"); at != std::string::npos;
             at = pdf.find("/Type /Page %", at + 1)) {
            ++pages;
        }
    }
    state.counters["pages"] = pages;
}
BENCHMARK(pdf_of_a_fortnight)->Unit(benchmark::kMillisecond);

static void html_of_a_fortnight(benchmark::State& state) {
    const FirstReview review = fortnight();
    for (auto unused : state) {
        benchmark::DoNotOptimize(review_html(review));
    }
}
BENCHMARK(html_of_a_fortnight)->Unit(benchmark::kMillisecond);

// From the review at hand to the finished sheet: its words, the fitting to one page, the file.
static void handout_of_a_fortnight(benchmark::State& state) {
    const FirstReview review = fortnight();
    const ClientFacts facts;
    const PaperClient client(review, facts, {});
    for (auto unused : state) {
        const Handout made = handout(client);
        const std::vector<Figure> figures{handout_figure(made.picture, review)};
        benchmark::DoNotOptimize(paper_pdf(made.paper, figures));
    }
}
BENCHMARK(handout_of_a_fortnight)->Unit(benchmark::kMillisecond);

static void letter_of_a_fortnight(benchmark::State& state) {
    const FirstReview review = fortnight();
    const ClientFacts facts;
    const PaperClient client(review, facts, {});
    for (auto unused : state) {
        benchmark::DoNotOptimize(
            paper_pdf(prescriber_letter(client, {}, {review.input.wears, review.input.diary})));
    }
}
BENCHMARK(letter_of_a_fortnight)->Unit(benchmark::kMillisecond);
