// To whom a client's data are shown, as the server tells it (docs/api/openapi.json, Shares).

export interface Look {
  at: string;
  label: string;
  asked: string;
  answer: string;
}

export interface Share {
  id: number;
  recipient: string;
  purpose: string;
  kinds: string[];
  days: number;
  given: string;
  last_day: string;
  revoked: string | null;
  state: "open" | "ended" | "revoked";
  looks: Look[];
}

export interface Shares {
  shares: Share[];
  /** False: nobody sees anything, whatever was given. */
  consent_holds: boolean;
  /** Closed by the eating screen, whatever was given. */
  closed_kinds: string[];
  /** A last day to begin with, 2026-03-02. */
  usual_until: string;
}

export interface ShareGiven {
  id: number;
  token: string;
  /** Below the service's own address. */
  address: string;
  /** From where it can be opened. */
  reach: string;
}
