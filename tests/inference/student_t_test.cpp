#include "inference/student_t.hpp"

#include <gtest/gtest.h>
#include <boost/math/distributions/students_t.hpp>

using namespace tracewright;

// The library is the second way; Abramowitz & Stegun 1964, 26.7, the first.
TEST(StudentT, the_series_agrees_with_the_library) {
    for (int dof = 1; dof <= 400; dof += dof < 40 ? 1 : 37) {
        for (double t = -12; t <= 12; t += 0.37) {
            EXPECT_NEAR(student_t_cdf(t, dof), boost::math::cdf(boost::math::students_t(dof), t),
                        1e-12)
                << dof << " " << t;
        }
    }
}

// Table values of the 97.5 % point: Fisher & Yates, as in any handbook (from memory).
TEST(StudentT, quantiles_are_those_of_the_tables) {
    EXPECT_NEAR(student_t_quantile(0.975, 1), 12.706, 5e-4);
    EXPECT_NEAR(student_t_quantile(0.975, 13), 2.160, 5e-4);
    EXPECT_NEAR(student_t_quantile(0.975, 27), 2.052, 5e-4);
}
