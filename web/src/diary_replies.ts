// The diary as the server tells it (docs/api/openapi.json).

export interface EntryForm {
  kind: string;
  date: string;
  time: string;
  text: string;
  carbohydrate_g: string;
}

export interface DiaryEntry {
  id: number;
  kind: string;
  time: string;
  time_uncertain: boolean;
  words: string;
  corrected: boolean;
  /** Numbers of its photos; a meal alone is given some. */
  photos: number[];
  form: EntryForm;
}

export interface DiaryDay {
  date: string;
  label: string;
  before: string;
  after: string | null;
  eating_note: string | null;
  /** How many photos a meal may have. */
  most_photos: number;
  entries: DiaryEntry[];
}

/** The photos of meals that stand in the diary. */
export interface MealPhotos {
  photos: { id: number; entry: number; meal_at: string }[];
}

export interface Doubt {
  about: string;
  sentence: string;
}

export interface MessageFood {
  written: string;
  said: string;
  eaten: boolean;
  food: string | null;
  grams: string | null;
  sure: boolean;
  others: string[];
  doubts: Doubt[];
}

export interface MessageEntry {
  written: string;
  kind: string;
  at: string;
  time_uncertain: boolean;
  words: string;
  sure: boolean;
  doubts: Doubt[];
  foods: MessageFood[];
  sum: string | null;
}

/** What the coach told that words stand for. */
export interface FoodChoice {
  said: string;
  food: string;
}

export interface FoodFound {
  food: string;
  portion: string;
  grams: string;
  own: boolean;
}
