#include "meal_model.hpp"

#include <boost/math/tools/toms748_solve.hpp>
#include <boost/numeric/odeint/integrate/integrate_adaptive.hpp>
#include <boost/numeric/odeint/stepper/generation.hpp>
#include <boost/numeric/odeint/stepper/runge_kutta_dopri5.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace tracewright {

namespace {

using P = MealModelParameters;

// Order of the states.
enum : std::size_t { gp, gt, il, ip, i1, id, q1, q2, qg, x, ipo, y };

double excretion(const P& p, double plasma) {
    return std::max(0.0, p.ke1 * (plasma - p.ke2));
}

double uptake(const P& p, double action, double tissue) {
    return (p.vm0 + action) * tissue / (p.km0 + tissue);
}

double tissue_at(const P& p, double plasma, double production) {
    return (p.fcns + excretion(p, plasma) - production + p.k1 * plasma) / p.k2;
}

// Production less use at rest.
double imbalance(const P& p, double plasma, double production) {
    return production - p.fcns - excretion(p, plasma) -
           uptake(p, 0, tissue_at(p, plasma, production));
}

template <class F>
double root(F f, double low, double high) {
    if (f(low) * f(high) > 0) {
        throw std::invalid_argument("the meal model has no such resting state");
    }
    std::uintmax_t most_steps = 200;
    const auto found = boost::math::tools::toms748_solve(
        f, low, high, boost::math::tools::eps_tolerance<double>(50), most_steps);
    return (found.first + found.second) / 2;
}

BasalState insulin_at_rest(const P& p) {
    BasalState rest{};
    rest.secretion = (p.m6 - p.heb) / p.m5;
    rest.ip = rest.secretion / ((p.m2 + p.m4) / (1 - p.heb) - p.m2);
    rest.il = rest.ip * (p.m2 + p.m4) / p.m1;
    rest.ipo = rest.secretion / p.gamma;
    rest.insulin = rest.ip / p.vi;
    return rest;
}

// The share of the stomach's content that leaves it in a minute.
double emptying(const P& p, double content, double dose) {
    if (dose <= 0) {
        return p.kmax;
    }
    const double a = 5 / (2 * dose * (1 - p.b));
    const double b = 5 / (2 * dose * p.d);
    return p.kmin +
           (p.kmax - p.kmin) / 2 *
               (std::tanh(a * (content - p.b * dose)) - std::tanh(b * (content - p.d * dose)) + 2);
}

struct Rates {
    const P& p;
    const BasalState& rest;
    const MealModelFactors& factors;
    double body_mass_kg;
    double dose;

    void operator()(const MealModel::State& s, MealModel::State& rate, double) const {
        const double insulin = s[ip] / p.vi;
        const double production = std::max(0.0, factors.kp1 * p.kp1 - p.kp2 * s[gp] -
                                                    factors.kp3 * p.kp3 * s[id] - p.kp4 * s[ipo]);
        const double empty = emptying(p, s[q1] + s[q2], dose);
        const double appearance = p.f * p.kabs * s[qg] / body_mass_kg;
        rate[gp] =
            production + appearance - p.fcns - excretion(p, s[gp]) - p.k1 * s[gp] + p.k2 * s[gt];
        rate[gt] = -uptake(p, factors.vmx * p.vmx * s[x], s[gt]) + p.k1 * s[gp] - p.k2 * s[gt];

        const double secretion = p.gamma * s[ipo];
        const double liver_share = std::max(0.0, p.m6 - p.m5 * secretion);
        const double m3 = liver_share * p.m1 / (1 - liver_share);
        rate[il] = -(p.m1 + m3) * s[il] + p.m2 * s[ip] + secretion;
        rate[ip] = -(p.m2 + p.m4) * s[ip] + p.m1 * s[il];
        rate[i1] = -p.ki * (s[i1] - insulin);
        rate[id] = -p.ki * (s[id] - s[i1]);

        rate[q1] = -p.kgri * s[q1];
        rate[q2] = -empty * s[q2] + p.kgri * s[q1];
        rate[qg] = -p.kabs * s[qg] + empty * s[q2];
        rate[x] = -p.p2u * (s[x] - (insulin - rest.insulin));

        const double above = s[gp] / p.vg - rest.glucose;
        rate[ipo] =
            -p.gamma * s[ipo] + s[y] + rest.secretion + p.k * std::max(0.0, rate[gp] / p.vg);
        rate[y] = -p.alpha * (s[y] - std::max(p.beta * above, -rest.secretion));
    }
};

}  // namespace

MealModelParameters type_two_parameters() {
    return {.vg = 1.49,
            .k1 = .042,
            .k2 = .071,
            .vi = .04,
            .m1 = .379,
            .m2 = .673,
            .m4 = .269,
            .m5 = .0526,
            .m6 = .8118,
            .heb = .6,
            .kmax = .0465,
            .kmin = .0076,
            .kabs = .023,
            .kgri = .0465,
            .f = .9,
            .b = .68,
            .d = .09,
            .kp1 = 3.09,
            .kp2 = .0007,
            .kp3 = .005,
            .kp4 = .0786,
            .ki = .0066,
            .fcns = 1,
            .vm0 = 4.65,
            .vmx = .034,
            .km0 = 466.21,
            .p2u = .084,
            .k = .99,
            .alpha = .013,
            .beta = .05,
            .gamma = .5,
            .ke1 = .0007,
            .ke2 = 269};
}

MealModelParameters parameters_without_diabetes() {
    return {.vg = 1.88,
            .k1 = .065,
            .k2 = .079,
            .vi = .05,
            .m1 = .19,
            .m2 = .484,
            .m4 = .194,
            .m5 = .0304,
            .m6 = .6471,
            .heb = .6,
            .kmax = .0558,
            .kmin = .008,
            .kabs = .057,
            .kgri = .0558,
            .f = .9,
            .b = .82,
            .d = .01,
            .kp1 = 2.7,
            .kp2 = .0021,
            .kp3 = .009,
            .kp4 = .0618,
            .ki = .0079,
            .fcns = 1,
            .vm0 = 2.5,
            .vmx = .047,
            .km0 = 225.59,
            .p2u = .0331,
            .k = 2.3,
            .alpha = .05,
            .beta = .11,
            .gamma = .5,
            .ke1 = .0005,
            .ke2 = 339};
}

BasalState basal_state(const MealModelParameters& p) {
    BasalState rest = insulin_at_rest(p);
    const auto production = [&](double plasma) {
        return p.kp1 - p.kp2 * plasma - p.kp3 * rest.insulin - p.kp4 * rest.ipo;
    };
    rest.gp = root([&](double plasma) { return imbalance(p, plasma, production(plasma)); },
                   30 * p.vg, 500 * p.vg);
    rest.production = production(rest.gp);
    rest.gt = tissue_at(p, rest.gp, rest.production);
    rest.glucose = rest.gp / p.vg;
    return rest;
}

MealModelParameters with_basal_glucose(MealModelParameters p, double mg_per_dl) {
    const BasalState rest = insulin_at_rest(p);
    const double plasma = mg_per_dl * p.vg;
    const double production =
        root([&](double produced) { return imbalance(p, plasma, produced); }, 0, 10);
    p.kp1 = production + p.kp2 * plasma + p.kp3 * rest.insulin + p.kp4 * rest.ipo;
    return p;
}

MealModel::MealModel(const MealModelParameters& parameters, double body_mass_kg)
    : parameters_(parameters), basal_(basal_state(parameters)), body_mass_kg_(body_mass_kg) {
    state_[gp] = basal_.gp;
    state_[gt] = basal_.gt;
    state_[il] = basal_.il;
    state_[ip] = basal_.ip;
    state_[i1] = basal_.insulin;
    state_[id] = basal_.insulin;
    state_[ipo] = basal_.ipo;
}

void MealModel::eat(double grams) {
    dose_mg_ = 1000 * (grams + in_stomach_g());
    state_[q1] += 1000 * grams;
}

void MealModel::pass(double minutes, const MealModelFactors& factors) {
    namespace odeint = boost::numeric::odeint;
    const Rates rates{parameters_, basal_, factors, body_mass_kg_, dose_mg_};
    // The secretion's switch makes the rates jump: short stretches keep a step from leaping over.
    for (double left = minutes; left > 0;) {
        const double stretch = std::min(left, 1.0);
        odeint::integrate_adaptive(
            odeint::make_controlled<odeint::runge_kutta_dopri5<State>>(1e-8, 1e-8), rates, state_,
            0.0, stretch, stretch);
        left -= stretch;
    }
}

double MealModel::glucose() const {
    return state_[gp] / parameters_.vg;
}

double MealModel::insulin() const {
    return state_[ip] / parameters_.vi;
}

double MealModel::in_stomach_g() const {
    return (state_[q1] + state_[q2]) / 1000;
}

}  // namespace tracewright
