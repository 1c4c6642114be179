#pragma once

namespace tracewright {

/// How A1c remembers, by red cells of one lifespan and of all ages alike: a day `s` days ago weighs
/// 2 (L - s) / L^2. Sources: the uniform-age model; Tahara & Shima 1995, 10.2337/diacare.18.4.440
/// saw a half-time of 34.6 +- 10.1 days, which 120 days give within a day.
class RedCellMemory {
  public:
    explicit RedCellMemory(double lifespan_days = 120) : lifespan_(lifespan_days) {}

    double lifespan() const { return lifespan_; }
    /// Share of the days from `from` to `to` ago, 0 <= from <= to; days beyond the lifespan weigh
    /// nothing.
    double share(double from, double to) const;
    /// Days after a lasting step until half of it shows: L (1 - 1 / sqrt 2).
    double half_time() const;

  private:
    double lifespan_;
};

/// The rule of thumb beside it: half from the last 30 days, a quarter from the 30 before, a quarter
/// from the 60 before those (Tahara & Shima 1995 as restated in Diabetes Care 2006 29:466).
double mean_by_rule_of_thumb(double last_30, double before_30, double before_60);

}  // namespace tracewright
