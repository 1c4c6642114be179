import { signal } from "@preact/signals";
import { Problem, read, send, useToken, whenSignedOut } from "./ask_server";
import { listen, stopListening } from "./live";
import type { SignedIn } from "./replies";

/** undefined: not asked yet; null: nobody is signed in. */
export const session = signal<SignedIn | null | undefined>(undefined);
/** The session ended by itself, which the sign-in page says. */
export const sessionEnded = signal(false);
/** Why the first question was not answered. */
export const sessionProblem = signal<Problem | null>(null);

function enter(signedIn: SignedIn): void {
  useToken(signedIn.token);
  sessionEnded.value = false;
  session.value = signedIn;
  listen();
}

function leave(): void {
  stopListening();
  useToken("");
  session.value = null;
}

whenSignedOut(() => {
  sessionEnded.value = true;
  leave();
});

export async function findSession(): Promise<void> {
  sessionProblem.value = null;
  try {
    enter(await read<SignedIn>("/api/session"));
  } catch (failure) {
    if (failure instanceof Problem && failure.status !== 401) sessionProblem.value = failure;
    else session.value = null;
  }
}

export async function signIn(coach: string, passphrase: string): Promise<void> {
  enter(await send<SignedIn>("/api/sign-in", { coach, passphrase }));
}

export async function signOut(): Promise<void> {
  try {
    await send("/api/sign-out", {});
  } finally {
    leave();
  }
}
