import { useRef, useState } from "preact/hooks";
import { ofClient, Problem, send } from "./ask_server";
import type { ClientWithFacts, Facts } from "./facts_replies";
import { factsWords as texts } from "./facts_words";
import { words } from "./words";

export interface Told {
  told: string;
  wrong: string;
}

export interface FactKeeping {
  keep: (section: string, changes: Facts, name?: string) => Promise<boolean>;
  /** How keeping that section went last. */
  told: (section: string) => Told | undefined;
}

/** Keeps changes of facts on the client as it was read; who was faster is told, not overwritten. */
export function useFactKeeping(client: ClientWithFacts | null, again: () => void): FactKeeping {
  const [told, setTold] = useState<Record<string, Told>>({});
  // What was kept a moment ago may not be read again yet, and what is being kept has its turn first.
  const kept = useRef({ revision: 0, name: "" });
  const turn = useRef<Promise<unknown>>(Promise.resolve());
  const keepNow = async (section: string, changes: Facts, name?: string): Promise<boolean> => {
    if (!client) return false;
    try {
      const known = kept.current.revision > client.revision ? kept.current : client;
      const body = { revision: known.revision, name: name ?? known.name, changes };
      const { revision } = await send<{ revision: number }>(ofClient(client.handle, "/facts"), body);
      kept.current = { revision, name: body.name };
      setTold({ [section]: { told: texts.kept, wrong: "" } });
      again();
      return true;
    } catch (failure) {
      const why = failure instanceof Problem ? failure.message : words.problem.unknown;
      setTold({ [section]: { told: "", wrong: `${words.problem.notKept} ${why}` } });
      return false;
    }
  };
  const keep: FactKeeping["keep"] = (...what) => {
    const mine = turn.current.then(() => keepNow(...what));
    turn.current = mine;
    return mine;
  };
  return { keep, told: (section) => told[section] };
}
