// What the practice knows of a client besides readings and diary (docs/formats/client-facts.schema.json).

export type Fact = string | number | boolean | null | Fact[] | { [key: string]: Fact };
export type Facts = { [key: string]: Fact };

export interface Care {
  /** For each medicine of the facts, as what it was recognised. */
  medicines: string[];
  /** The day on which they were asked about, in words. */
  medicines_asked_on: string | null;
  to_ask: string[];
  closed: { sentence: string; not_asked: boolean; closes: string[] }[];
}

export interface ClientWithFacts {
  handle: string;
  name: string;
  revision: number;
  facts: Facts;
  care: Care;
}
