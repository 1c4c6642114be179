import type { Finding } from "./replies";

export interface CauseToAsk {
  code: string;
  words: string;
  /** The change whose effect is told: 'two hours less sleep'. */
  change: string;
  means: string;
  to_note: string;
}

export interface OutcomeToAsk {
  code: string;
  words: string;
  means: string;
  causes: CauseToAsk[];
}

/** One cause asked of one outcome, with what was found in others, apart. */
export interface AnsweredQuestion extends Finding {
  cause: string;
  others_words: string[];
  both_words: string | null;
}

export interface Answers {
  about: { code: string; words: string; means: string };
  scan: boolean;
  used: number;
  rows_called: string;
  left_out: { date: string; why: string }[];
  findings: AnsweredQuestion[];
}
