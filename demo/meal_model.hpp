#pragma once

#include <array>
#include <cstddef>

namespace tracewright {

/// Parameters of the published meal model, per kg of body mass: mg, pmol, minutes.
struct MealModelParameters {
    double vg, k1, k2;                       // glucose: dL/kg, 1/min
    double vi, m1, m2, m4, m5, m6, heb;      // insulin: L/kg, 1/min; heb is the liver's basal share
    double kmax, kmin, kabs, kgri, f, b, d;  // stomach and gut
    double kp1, kp2, kp3, kp4, ki;           // the liver's production
    double fcns, vm0, vmx, km0, p2u;         // use
    double k, alpha, beta, gamma;            // secretion
    double ke1, ke2;                         // kidney
};

/// The two columns of table I: people with type 2 diabetes, and without.
MealModelParameters type_two_parameters();
MealModelParameters parameters_without_diabetes();

/// The state that lasts when nothing is eaten.
struct BasalState {
    double glucose;      ///< mg/dL
    double insulin;      ///< pmol/L
    double production;   ///< of glucose by the liver, mg/kg/min
    double gp, gt;       ///< glucose mass in plasma and tissue, mg/kg
    double il, ip, ipo;  ///< insulin in liver and plasma, and in the portal vein, pmol/kg
    double secretion;    ///< pmol/kg/min
};
BasalState basal_state(const MealModelParameters& parameters);

/// The same person with another production `kp1`, such that the basal glucose is `mg_per_dl`.
/// Ours: a plain way to have clients of different fasting levels. 60 to 350 mg/dL.
MealModelParameters with_basal_glucose(MealModelParameters parameters, double mg_per_dl);

/// What hours and habits do to three of the parameters. 1 each: the published model.
struct MealModelFactors {
    double kp1 = 1;  ///< the liver's production
    double kp3 = 1;  ///< how much insulin holds it back
    double vmx = 1;  ///< how much insulin makes the tissues take up
};

/// One body, from its basal state on, eating whenever it is told to. For the invented practice and
/// for tests only: it is no model of any real person, and nothing that is said to a client rests
/// on it.
///
/// Source: Dalla Man, Rizza & Cobelli 2007, IEEE Trans Biomed Eng 54(10):1740,
/// 10.1109/TBME.2007.893506. Several meals: the dose that sets the stomach's emptying is the last
/// one and what was still in the stomach. Ours: the liver's share of insulin is kept from going
/// below 0 in meals larger than the paper's.
class MealModel {
  public:
    MealModel(const MealModelParameters& parameters, double body_mass_kg);

    /// Glucose is swallowed at this moment; grams, 0 or more.
    void eat(double grams);
    /// Lets time pass, a minute or less at a time within, at a relative error of 1e-8 a step.
    void pass(double minutes, const MealModelFactors& factors = {});

    double glucose() const;       ///< plasma, mg/dL
    double insulin() const;       ///< plasma, pmol/L
    double in_stomach_g() const;  ///< eaten and not yet in the gut
    const BasalState& basal() const { return basal_; }

    static constexpr std::size_t states = 12;
    using State = std::array<double, states>;

  private:
    MealModelParameters parameters_;
    BasalState basal_;
    double body_mass_kg_;
    double dose_mg_ = 0;
    State state_{};
};

}  // namespace tracewright
