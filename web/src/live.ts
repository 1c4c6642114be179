import { signal } from "@preact/signals";
import { askWhetherSignedIn } from "./ask_server";
import type { Change } from "./replies";

// One event stream for each browser, however many tabs: a browser opens six connections to one host at
// most. The tab that holds the lock listens and tells the others; when it closes, the next one takes over.

const name = "tracewright-changes";
type Listener = (change: Change) => void;
const listeners = new Set<Listener>();

/** Whether some tab is connected to the server. */
export const connected = signal(true);

/** Calls `listener` at each change; gives back how to stop. */
export function changes(listener: Listener): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Whether a change concerns what is shown of `client`; null is the whole practice. */
export function concerns(change: Change, client: string | null): boolean {
  return client === null || change.client === null || change.client === client;
}

/** The change that an event's data holds; anything unreadable is taken as a change of everything. */
export function changeOf(data: string): Change {
  try {
    const read = JSON.parse(data) as Partial<Change>;
    return { client: typeof read.client === "string" ? read.client : null, what: read.what ?? "" };
  } catch {
    return { client: null, what: "" };
  }
}

type Told = { change: Change } | { connected: boolean };

function hear(told: Told): void {
  if ("connected" in told) {
    connected.value = told.connected;
  } else {
    for (const listener of [...listeners]) listener(told.change);
  }
}

/** Has everything that is shown read again: what changed while nobody listened is unknown. */
export function readAllAgain(): void {
  hear({ change: { client: null, what: "" } });
}

let stop: (() => void) | null = null;

/** Begins to listen; calling it twice changes nothing. */
export function listen(): void {
  if (stop) return;
  const others = new BroadcastChannel(name);
  others.onmessage = (event: MessageEvent<Told>) => hear(event.data);
  const tell = (told: Told) => {
    hear(told);
    others.postMessage(told);
  };
  const ended = new AbortController();
  let source: EventSource | null = null;

  const open = (): Promise<void> =>
    new Promise((resolve) => {
      let lost = false;
      source = new EventSource("/api/events");
      source.onopen = () => {
        // What happened while the stream was away is unknown: everything is read again.
        if (lost) tell({ change: { client: null, what: "" } });
        lost = false;
        tell({ connected: true });
      };
      source.onerror = () => {
        lost = true;
        tell({ connected: false });
        if (source?.readyState === EventSource.CLOSED && !ended.signal.aborted) {
          // A refusal, not a lost line: the session may be over.
          void askWhetherSignedIn();
          setTimeout(() => resolve(), 3000);
        }
      };
      source.addEventListener("changed", (event) => tell({ change: changeOf((event as MessageEvent<string>).data) }));
      ended.signal.addEventListener("abort", () => {
        source?.close();
        resolve();
      });
    });

  const holdOn = async () => {
    while (!ended.signal.aborted) await open();
  };
  if ("locks" in navigator) {
    navigator.locks.request(name, { signal: ended.signal }, holdOn).catch(() => {});
  } else {
    void holdOn();
  }
  stop = () => {
    ended.abort();
    others.close();
    stop = null;
  };
}

/** Stops listening, as when the coach signs out. */
export function stopListening(): void {
  stop?.();
}
