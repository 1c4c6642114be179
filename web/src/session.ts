import { signal } from "@preact/signals";
import { Problem, read, send, useToken, whenSignedOut } from "./ask_server";
import { forgetDrafts } from "./drafts";
import { listen, readAllAgain, stopListening } from "./live";
import type { SignedIn } from "./replies";

/** undefined: not asked yet; null: nobody is signed in. */
export const session = signal<SignedIn | null | undefined>(undefined);
/** Whose session ended by itself: the page stands behind the sign-in with what was being written, for nobody else. */
export const endedFor = signal<SignedIn | null>(null);
/** Why the first question was not answered. */
export const sessionProblem = signal<Problem | null>(null);

function enter(signedIn: SignedIn): void {
  useToken(signedIn.token);
  const goesOn = endedFor.value?.coach === signedIn.coach;
  if (!goesOn) forgetDrafts();
  endedFor.value = null;
  session.value = signedIn;
  listen();
  if (goesOn) readAllAgain();
}

function leave(): void {
  stopListening();
  useToken("");
  session.value = null;
}

whenSignedOut(() => {
  endedFor.value = session.value ?? endedFor.value;
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
    endedFor.value = null;
    forgetDrafts();
    leave();
  }
}
