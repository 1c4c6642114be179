import { ofClient, Problem, sendFile } from "./ask_server";
import type { FileReply } from "./bring_in_replies";
import { bringInWords } from "./bring_in_words";
import { words } from "./words";

/** A file that is being looked at, and what the coach said of it. */
export interface FileInHand {
  key: number;
  file: File;
  answers: Record<string, string>;
  stage: "sending" | "seen" | "keeping" | "kept";
  /** Bytes that have gone, of the file's size. */
  sent: number;
  reply: FileReply | null;
  problem: Problem | null;
}

export const longestFile = 32 * 1024 * 1024;
let lastKey = 0;

export const inHand = (file: File): FileInHand => ({
  key: ++lastKey,
  file,
  answers: {},
  stage: "sending",
  sent: 0,
  reply: null,
  problem: null,
});

/** Whether keeping it would store something. */
export const keepable = (one: FileInHand): boolean =>
  one.stage === "seen" && one.reply !== null && one.problem === null && one.reply.questions.length === 0 && !one.reply.nothing_new;

/** Sends the file to be looked at, or to be kept; gives it back as it stands then. */
export async function sent(client: string, one: FileInHand, keep: boolean, onSent: (bytes: number) => void): Promise<FileInHand> {
  if (one.file.size > longestFile) return { ...one, stage: "seen", problem: new Problem(413, "body_too_long", bringInWords.tooLong) };
  const query = new URLSearchParams({ name: one.file.name, ...one.answers });
  const path = ofClient(client, `/imports${keep ? "" : "/preview"}?${query.toString()}`);
  try {
    const reply = await sendFile<FileReply>(path, one.file, onSent);
    // What changed meanwhile may have raised a question: then it is not kept.
    const kept = keep && reply.questions.length === 0;
    return { ...one, reply, problem: null, sent: one.file.size, stage: kept ? "kept" : "seen" };
  } catch (failure) {
    const problem = failure instanceof Problem ? failure : new Problem(0, "", words.problem.unknown);
    return { ...one, reply: null, problem, sent: 0, stage: "seen" };
  }
}
