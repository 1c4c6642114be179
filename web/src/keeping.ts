import { useState } from "preact/hooks";
import { Problem, send } from "./ask_server";
import { words } from "./words";

/** Sends something to be kept and tells how it went, in words for a status line; `heard` is given the reply. */
export function useKeeping<Reply = unknown>(): {
  busy: boolean;
  told: string;
  wrong: string;
  keep: (path: string, body: unknown, done: string, heard?: (reply: Reply) => void) => Promise<boolean>;
} {
  const [busy, setBusy] = useState(false);
  const [told, setTold] = useState("");
  const [wrong, setWrong] = useState("");
  const keep = async (path: string, body: unknown, done: string, heard?: (reply: Reply) => void): Promise<boolean> => {
    if (busy) return false;
    setBusy(true);
    setTold("");
    setWrong("");
    try {
      const reply = await send<Reply>(path, body);
      setTold(done);
      heard?.(reply);
      return true;
    } catch (failure) {
      const why = failure instanceof Problem ? failure.message : words.problem.unknown;
      setWrong(`${words.problem.notKept} ${why}`);
      return false;
    } finally {
      setBusy(false);
    }
  };
  return { busy, told, wrong, keep };
}
