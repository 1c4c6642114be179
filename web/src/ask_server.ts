import { words } from "./words";

/** What went wrong, in words for the coach and with the server's stable code. */
export class Problem extends Error {
  constructor(
    readonly status: number,
    readonly code: string,
    sentence: string,
  ) {
    super(sentence);
  }
}

let token = "";
let onSignedOut: () => void = () => {};

/** State-changing requests carry this, so that no other page can make them. */
export function useToken(value: string): void {
  token = value;
}

/** Called when the server says that there is no session any more. */
export function whenSignedOut(call: () => void): void {
  onSignedOut = call;
}

/** The sentence for a reply that is not what was asked for. `detail` is the server's own, where it has one. */
export function sentenceOf(status: number, detail: string): string {
  if (detail) return detail;
  if (status === 404) return words.problem.notFound;
  if (status === 403) return words.problem.notAllowed;
  return words.problem.unknown;
}

async function problemOf(reply: Response): Promise<Problem> {
  let code = "";
  let detail = "";
  try {
    const body = (await reply.json()) as { code?: string; detail?: string; title?: string };
    code = body.code ?? "";
    detail = body.detail || body.title || "";
  } catch {
    // A reply without problem details still has its status.
  }
  return new Problem(reply.status, code, sentenceOf(reply.status, detail));
}

async function asked(method: string, path: string, body?: unknown): Promise<Response> {
  const headers: Record<string, string> = { Accept: "application/json" };
  if (method !== "GET") headers["X-Tracewright-Token"] = token;
  if (body !== undefined) headers["Content-Type"] = "application/json";
  let reply: Response;
  try {
    reply = await fetch(path, {
      method,
      headers,
      credentials: "same-origin",
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
  } catch {
    throw new Problem(0, "offline", words.problem.offline);
  }
  if (!reply.ok) {
    const problem = await problemOf(reply);
    if (reply.status === 401 && path !== "/api/sign-in" && path !== "/api/session") onSignedOut();
    throw problem;
  }
  return reply;
}

async function ask<T>(method: string, path: string, body?: unknown): Promise<T> {
  const text = await (await asked(method, path, body)).text();
  return (text ? JSON.parse(text) : undefined) as T;
}

export const read = <T>(path: string): Promise<T> => ask<T>("GET", path);
export const send = <T>(path: string, body: unknown): Promise<T> => ask<T>("POST", path, body);
/** Where the reply is a file, such as a paper; with the name that the server gave it, or none. */
export async function sendForFile(path: string, body: unknown): Promise<File> {
  const reply = await asked("POST", path, body);
  const name = /filename="([^"]*)"/.exec(reply.headers.get("Content-Disposition") ?? "")?.[1] ?? "";
  return new File([await reply.blob()], name, { type: reply.headers.get("Content-Type") ?? "" });
}

/** Sends a file's bytes as they are; `onSent` hears how many have gone. */
export function sendFile<T>(path: string, file: Blob, onSent: (bytes: number) => void): Promise<T> {
  return new Promise((resolve, reject) => {
    // Only this kind of request tells how far it is.
    const request = new XMLHttpRequest();
    request.open("POST", path);
    request.setRequestHeader("Accept", "application/json");
    request.setRequestHeader("Content-Type", "application/octet-stream");
    request.setRequestHeader("X-Tracewright-Token", token);
    request.upload.onprogress = (event) => onSent(event.loaded);
    request.onerror = () => reject(new Problem(0, "offline", words.problem.offline));
    request.onload = () => {
      const reply = new Response(request.responseText || null, { status: request.status });
      if (reply.ok) reply.json().then((value) => resolve(value as T), reject);
      else void problemOf(reply).then(reject);
      if (request.status === 401) onSignedOut();
    };
    request.send(file);
  });
}

/** Asks whether the session still lasts, and tells where it doesn't. */
export async function askWhetherSignedIn(): Promise<void> {
  try {
    const reply = await fetch("/api/session", { credentials: "same-origin" });
    if (reply.status === 401) onSignedOut();
  } catch {
    // Nobody answers: that is told by the stream already.
  }
}

/** The path of something of one client; handles are the practice's own, but nothing is taken on trust. */
export function ofClient(handle: string, rest = ""): string {
  return `/api/clients/${encodeURIComponent(handle)}${rest}`;
}
