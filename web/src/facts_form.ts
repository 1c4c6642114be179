// The facts as the page asks for them: sections of single fields, and lists of lines.
import type { Fact, Facts } from "./facts_replies";

export type FieldKind = "text" | "area" | "date" | "moment" | "number" | "choice" | "yes-no" | "telephone";

export interface Field {
  /** Where it stands among the facts: "cautions.pregnancy". */
  path: string;
  label: string;
  kind: FieldKind;
  choices?: [string, string][];
  hint?: string;
  /** Asked only where another field says so. */
  onlyWith?: { path: string; value: string };
}

export interface Section {
  title: string;
  fields: Field[];
}

export interface ListSection {
  title: string;
  path: string;
  columns: Field[];
}

const answers: [string, string][] = [
  ["not asked", "not asked"],
  ["no", "no"],
  ["yes", "yes"],
];
const asked = (key: string, label: string): Field => ({ path: `cautions.${key}`, label, kind: "choice", choices: answers });

export const why: Section = {
  title: "Why they came",
  fields: [{ path: "why_they_came", label: "In their own words", kind: "area", hint: "It stands atop every review." }],
};

export const person: Section = {
  title: "About them",
  fields: [
    { path: "born_year", label: "Born in the year", kind: "number" },
    { path: "told_type", label: "Type of diabetes they were told", kind: "text" },
    { path: "diagnosed_on", label: "Told so on", kind: "date" },
    {
      path: "unit",
      label: "Unit they think in",
      kind: "choice",
      choices: [
        ["mmol/L", "mmol/L"],
        ["mg/dL", "mg/dL"],
      ],
    },
    { path: "language", label: "Language of their papers", kind: "text", hint: "A tag such as en; empty is the practice's own." },
  ],
};

export const contacts: ListSection = {
  title: "Whom to ring",
  path: "contacts",
  columns: [
    {
      path: "kind",
      label: "Who",
      kind: "choice",
      choices: [
        ["emergency", "in an emergency"],
        ["prescriber", "prescriber"],
        ["clinic", "clinic"],
        ["other", "another"],
      ],
    },
    { path: "name", label: "Name", kind: "text" },
    { path: "telephone", label: "Telephone", kind: "telephone" },
  ],
};

export const medicines: ListSection = {
  title: "Medicines",
  path: "medicines",
  columns: [
    { path: "written", label: "Medicine, as told", kind: "text" },
    { path: "from", label: "Since", kind: "date" },
    { path: "until", label: "Until", kind: "date" },
  ],
};

export const careful: Section = {
  title: "What to be careful about",
  fields: [
    {
      path: "cautions.pregnancy",
      label: "Pregnant or planning",
      kind: "choice",
      choices: [...answers.slice(0, 2), ["pregnant", "pregnant"], ["planning", "planning"], ["unsure", "unsure"]],
    },
    asked("severe_low_before", "A low that needed another's help, ever"),
    asked("kidney_disease", "Kidney disease"),
    asked("liver_disease", "Liver disease"),
    asked("heart_disease", "Heart disease"),
    asked("chest_symptoms", "Chest pain or tightness"),
    asked("eye_disease", "Eye disease"),
    asked("numb_feet_or_wound", "Numb feet or a wound on a foot"),
    asked("stomach_surgery", "Stomach surgery"),
    asked("frail", "Frail"),
    asked("another_autoimmune_disease", "Another autoimmune disease"),
    { path: "cautions.last_eye_check", label: "Last eye check", kind: "date" },
    { path: "cautions.others", label: "What else", kind: "area" },
  ],
};

export const eating: Section = {
  title: "Screen on eating",
  fields: [
    { path: "cautions.eating_screen.asked_on", label: "Done on", kind: "date" },
    { path: "cautions.eating_screen.by", label: "By whom", kind: "text" },
    {
      ...asked("eating_screen.positive", "Signs of disordered eating"),
      hint: "Until this is answered no, foods, grams and hours in range stay off the client's papers.",
    },
  ],
};

const share = (key: string, label: string, hint?: string): Field => ({
  path: `goals.${key}`,
  label,
  kind: "number",
  ...(hint ? { hint } : {}),
  onlyWith: { path: "goals.kind", value: "own" },
});

export const goals: Section = {
  title: "Agreed goals",
  fields: [
    {
      path: "goals.kind",
      label: "Which goals hold",
      kind: "choice",
      choices: [
        ["adults", "for adults (consensus)"],
        ["older", "looser ones, for the older or frail"],
        ["own", "their own"],
        ["pregnancy", "none of ours: pregnancy"],
      ],
    },
    share("in_range_above", "In range: more than this share of the day, %", "Empty: no goal for it."),
    share("below_range_below", "Low or very low: less than, %", "At most 4, the consensus for adults."),
    share("very_low_below", "Very low: less than, %", "At most 1, the consensus for adults."),
    share("above_range_below", "High or very high: less than, %"),
    share("very_high_below", "Very high: less than, %"),
    { path: "goals.agreed_with", label: "Agreed with", kind: "text" },
    { path: "goals.agreed_on", label: "Agreed on", kind: "date" },
  ],
};

export const consent: Section = {
  title: "Consent",
  fields: [
    { path: "consent.given_on", label: "Given on", kind: "date" },
    { path: "consent.what_is_kept", label: "What is kept", kind: "area" },
    { path: "consent.who_sees", label: "Who sees it", kind: "area" },
    { path: "consent.until", label: "Until", kind: "date" },
    { path: "consent.withdrawn_on", label: "Withdrawn on", kind: "date" },
  ],
};

export const supplies: Section = {
  title: "Sessions and sensors",
  fields: [
    { path: "sessions.bought", label: "Sessions bought", kind: "number" },
    { path: "sessions.used", label: "Sessions used", kind: "number" },
    { path: "sensors.bought", label: "Sensors bought", kind: "number" },
    { path: "sensors.used", label: "Sensors used", kind: "number" },
  ],
};

export const clock: ListSection = {
  title: "Their clock",
  path: "zones",
  columns: [
    { path: "zone", label: "Time zone", kind: "text", hint: "The first is home; a journey is a line with the time it began, by the clock they left." },
    { path: "from", label: "From", kind: "moment" },
  ],
};

export const labs: ListSection = {
  title: "Laboratory",
  path: "labs",
  columns: [
    { path: "on", label: "Taken on", kind: "date" },
    { path: "what", label: "What", kind: "text", hint: "For example HbA1c." },
    { path: "value", label: "Value", kind: "number" },
    { path: "unit", label: "Unit", kind: "text", hint: "% or mmol/mol." },
  ],
};

export const prescriberAnswers: ListSection = {
  title: "What the prescriber answered",
  path: "prescriber_answers",
  columns: [
    {
      path: "about",
      label: "About",
      kind: "choice",
      choices: ["low carbohydrate", "fasting", "weight loss", "walking", "diabetes type"].map((one) => [one, one]),
    },
    { path: "agreed", label: "Agreed", kind: "yes-no" },
    { path: "by", label: "Who answered", kind: "text" },
    { path: "on", label: "On", kind: "date" },
    { path: "valid_until", label: "Holds until", kind: "date" },
  ],
};

/** The fact at a path of the facts; null where there is none. */
export function factAt(facts: Facts, path: string): Fact {
  let here: Fact = facts;
  for (const key of path.split(".")) {
    if (here === null || typeof here !== "object" || Array.isArray(here)) return null;
    here = here[key] ?? null;
  }
  return here;
}

/** A fact as a field shows it. */
export const written = (fact: Fact): string => (fact === null || typeof fact === "object" ? "" : String(fact));

/** What was written in a field as a fact; an empty date or number is none. */
export function factOf(kind: FieldKind, text: string): Fact {
  const plain = text.trim();
  if (kind === "yes-no") return plain === "true";
  if (kind === "number") return plain === "" ? null : Number(plain.replace(",", "."));
  if (kind === "date" || kind === "moment") return plain === "" ? null : plain;
  return plain;
}

/** The change that sets one fact and leaves all others (RFC 7396). */
export function changeAt(changes: Facts, path: string, fact: Fact): void {
  const keys = path.split(".");
  let here = changes;
  for (const key of keys.slice(0, -1)) here = (here[key] ??= {}) as Facts;
  here[keys[keys.length - 1] ?? ""] = fact;
}
