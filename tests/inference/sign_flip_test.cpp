#include "inference/sign_flip.hpp"

#include "inference/statistics_row.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <boost/random/mersenne_twister.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

struct Plain {
    std::uint64_t at_least = 0;
    std::uint64_t upper = 0;
};

double sum_of(const std::vector<double>& d, std::uint64_t pattern) {
    double sum = 0;
    for (std::size_t i = 0; i < d.size(); ++i) {
        sum += (pattern >> i & 1U) != 0 ? d[i] : -d[i];
    }
    return sum;
}

// The plain way: every pattern summed anew.
Plain plain_way(const std::vector<double>& d) {
    const double observed = std::accumulate(d.begin(), d.end(), 0.0);
    Plain plain;
    for (std::uint64_t pattern = 0; pattern < std::uint64_t{1} << d.size(); ++pattern) {
        const double sum = sum_of(d, pattern);
        plain.at_least += std::abs(sum) >= std::abs(observed) - 1e-9 ? 1U : 0U;
        plain.upper += sum >= observed - 1e-9 ? 1U : 0U;
    }
    return plain;
}

std::vector<double> arbitrary_differences(std::size_t least, std::size_t most) {
    const auto size = *rc::gen::inRange<std::size_t>(least, most + 1);
    return *rc::gen::container<std::vector<double>>(
        size, rc::gen::map(rc::gen::inRange(-50, 51), [](int i) { return i / 4.0; }));
}

}  // namespace

// rand-01. Source: Fisher 1935, The Design of Experiments, sec. 21 (maize).
TEST(SignFlip, rand_01_fishers_maize) {
    const auto row = statistics_row("rand-01");
    const SignFlip found = sign_flip(row.inputs());
    EXPECT_EQ(found.patterns, 32768U);
    EXPECT_EQ(found.upper, 863U);
    EXPECT_NEAR(found.p, row.after("two-sided p")[0], 1e-10);
}

// n1-02. Source: Guyatt et al. 1990, 10.1016/0197-2456(90)90003-K, pairs as in Senn 2002.
TEST(SignFlip, n1_02_three_pairs_cannot_go_below_a_quarter) {
    const SignFlip found = sign_flip(std::vector<double>{0.55, 0.925, 0.875});
    EXPECT_NEAR(found.mean, statistics_row("n1-02").after("mean")[0], 1e-6);
    EXPECT_EQ(found.p, 0.25);
    EXPECT_FALSE(sign_flip_interval(std::vector<double>{0.55, 0.925, 0.875}));
}

// n1-03. Invented; enumerated twice elsewhere.
TEST(SignFlip, n1_03_eight_blocks_with_the_interval_by_inversion) {
    const double a[] = {58, 71, 64, 49, 77, 62, 55, 68};
    const double b[] = {47, 60, 66, 40, 61, 55, 50, 57};
    std::vector<double> d;
    for (std::size_t i = 0; i < 8; ++i) {
        d.push_back(a[i] - b[i]);
    }
    const auto row = statistics_row("n1-03");
    const SignFlip found = sign_flip(d);
    EXPECT_EQ(found.mean, 8.5);
    EXPECT_EQ(found.at_least, 4U);
    EXPECT_EQ(found.p, 0.015625);
    const auto interval = sign_flip_interval(d);
    ASSERT_TRUE(interval);
    EXPECT_NEAR((*interval)[0], row.after("inverted 95% set")[0], 0.011);
    EXPECT_NEAR((*interval)[1], row.after("inverted 95% set")[1], 0.011);
}

// n1-04. Arithmetic: 2 / 2^K.
TEST(SignFlip, n1_04_smallest_p_by_number_of_pairs) {
    const int pairs[] = {4, 5, 6, 8, 10};
    const auto expected = statistics_row("n1-04").numbers();
    for (std::size_t i = 0; i < 5; ++i) {
        EXPECT_EQ(smallest_sign_flip_p(pairs[i]), expected[i]);
        EXPECT_EQ(sign_flip(std::vector<double>(static_cast<std::size_t>(pairs[i]), 1.5)).p,
                  expected[i]);
    }
}

TEST(SignFlip, beyond_twenty_pairs_is_drawn_with_the_seed_and_agrees) {
    std::vector<double> d;
    for (int i = 0; i < 20; ++i) {
        d.push_back(std::sin(i * 1.7) + 0.25);
    }
    const double enumerated = sign_flip(d).p;
    d.push_back(0);  // a pair without a difference changes no p
    const SignFlip found = sign_flip(d, 7);
    EXPECT_FALSE(found.enumerated);
    EXPECT_NEAR(found.p, enumerated, 0.006);
    EXPECT_EQ(found.p, sign_flip(d, 7).p);
}

// Quarters, so that ties are common and exact.
RC_GTEST_PROP(SignFlip, agrees_with_the_plain_way, ()) {
    const auto d = arbitrary_differences(1, 11);
    const SignFlip found = sign_flip(d);
    const Plain plain = plain_way(d);
    RC_ASSERT(found.at_least == plain.at_least);
    RC_ASSERT(found.upper == plain.upper);
    RC_ASSERT(found.patterns == std::uint64_t{1} << d.size());
    RC_ASSERT(found.p == static_cast<double>(plain.at_least) / static_cast<double>(found.patterns));
}

TEST(SignFlip, sixteen_thirds_and_sevenths_agree_with_the_plain_way) {
    std::vector<double> d;
    for (int i = 1; i <= 16; ++i) {
        d.push_back(i % 3 == 0 ? i / -7.0 : i / 3.0);
    }
    EXPECT_EQ(sign_flip(d).at_least, plain_way(d).at_least);
    EXPECT_EQ(sign_flip(d).upper, plain_way(d).upper);
}

// Bit i of the engine's next word is the sign of difference i.
TEST(SignFlip, drawn_patterns_agree_with_the_plain_way) {
    for (const std::size_t size : {21U, 24U, 29U, 64U, 71U}) {
        std::vector<double> d;
        double observed = 0;
        for (std::size_t i = 0; i < size; ++i) {
            d.push_back(std::sin(static_cast<double>(i) * 1.7) + 0.2);
            observed += d.back();
        }
        boost::random::mt19937_64 engine(5);
        std::uint64_t count = 1;
        for (int draw = 0; draw < 99'999; ++draw) {
            double sum = 0;
            for (std::size_t from = 0; from < size; from += 64) {
                const std::vector<double> part(
                    d.begin() + static_cast<std::ptrdiff_t>(from),
                    d.begin() + static_cast<std::ptrdiff_t>(std::min(size, from + 64)));
                sum += sum_of(part, engine());
            }
            count += std::abs(sum) >= std::abs(observed) - 1e-9 ? 1U : 0U;
        }
        EXPECT_EQ(sign_flip(d, 5).at_least, count) << size;
    }
}
