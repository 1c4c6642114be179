export interface FoodCompared {
  group: number;
  food: string;
  times: number;
  rise: string;
  interval: string;
  ranks: string;
}

export interface PricksOfMeal {
  label: string;
  before: string | null;
  after: string | null;
  after_minutes: number | null;
  left_out_because: string | null;
}

/** Foods compared over all wears, in words. */
export interface Meals {
  meals: number;
  none_because: string | null;
  foods: FoodCompared[];
  seen_once: string[];
  sentences: string[];
  adjusted_for: string[];
  ask_about: { label: string; rise: string }[];
  pairs: PricksOfMeal[];
  /** Of the pairs used; empty: none. */
  mean_rise: string;
}
