import { useState } from "preact/hooks";
import { Problem, send } from "./ask_server";
import { words } from "./words";

/** Sends something to be kept and tells how it went, in words for a status line. */
export function useKeeping(): {
  busy: boolean;
  told: string;
  wrong: string;
  keep: (path: string, body: unknown, done: string) => Promise<boolean>;
} {
  const [busy, setBusy] = useState(false);
  const [told, setTold] = useState("");
  const [wrong, setWrong] = useState("");
  const keep = async (path: string, body: unknown, done: string): Promise<boolean> => {
    if (busy) return false;
    setBusy(true);
    setTold("");
    setWrong("");
    try {
      await send(path, body);
      setTold(done);
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
