import { useEffect, useRef, useState } from "preact/hooks";
import { ofClient, Problem, send } from "./ask_server";
import type { ClientWithFacts, Facts } from "./facts_replies";
import { factsWords as texts } from "./facts_words";
import { words } from "./words";

/** How long keeping waits for the reading before it, ms: then it is told as any collision is. */
const longestWait = 3000;

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
  const latest = useRef(client);
  latest.current = client;
  // What was kept a moment ago is not yet read again: the next section waits for it, or would collide with ourselves.
  const keptOf = useRef<number | null>(null);
  const waiting = useRef<(() => void)[]>([]);
  useEffect(() => {
    for (const go of waiting.current.splice(0)) go();
  }, [client]);
  const keep = async (section: string, changes: Facts, name?: string): Promise<boolean> => {
    if (latest.current && latest.current.revision === keptOf.current) {
      await new Promise<void>((resolve) => {
        waiting.current.push(resolve);
        setTimeout(resolve, longestWait);
      });
    }
    const known = latest.current;
    if (!known) return false;
    try {
      const body = { revision: known.revision, name: name ?? known.name, changes };
      await send(ofClient(known.handle, "/facts"), body);
      keptOf.current = known.revision;
      setTold({ [section]: { told: texts.kept, wrong: "" } });
      again();
      return true;
    } catch (failure) {
      const why = failure instanceof Problem ? failure.message : words.problem.unknown;
      setTold({ [section]: { told: "", wrong: `${words.problem.notKept} ${why}` } });
      return false;
    }
  };
  return { keep, told: (section) => told[section] };
}
