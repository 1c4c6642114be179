import { useState } from "preact/hooks";
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
  const keep = async (section: string, changes: Facts, name?: string): Promise<boolean> => {
    if (!client) return false;
    try {
      const body = { revision: client.revision, name: name ?? client.name, changes };
      await send(ofClient(client.handle, "/facts"), body);
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
