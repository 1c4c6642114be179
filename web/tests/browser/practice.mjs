import { execFile, spawn } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";

const run = promisify(execFile);
const root = fileURLToPath(new URL("../../..", import.meta.url));
/** The demo practice's own today: 09:00 in Berlin. */
export const today = "2026-04-20T07:00Z";

/** The demo practice in a folder of its own, served; `stop` ends the server and takes the folder away. */
export async function servedPractice(build = process.env.TRACEWRIGHT_BUILD) {
  const folder = mkdtempSync(join(tmpdir(), "tracewright-page-"));
  const practice = join(folder, "practice", "practice");
  const passphraseFile = join(folder, "practice", "passphrase");
  // Making it takes long: several test files start from one, each changing a copy of its own.
  const made = process.env.TRACEWRIGHT_DEMO;
  if (made) cpSync(made, join(folder, "practice"), { recursive: true });
  else await run(join(root, "scripts/demo-practice"), [build, join(folder, "practice"), "without-reviews"]);
  // A passphrase is slow to try on purpose, the recovery key isn't: pages sign in by the one, commands by the other.
  const key = join(folder, "practice", "recovery-key");
  const opening = ["--practice", practice, "--recovery-key-file", key, "--as-of", today];
  let server;
  let port = "0";
  // Again on the same port after a halt, so that open pages find it.
  const serve = async () => {
    server = spawn(join(build, "tracewright"), [...opening, "serve", "--port", port], { stdio: ["ignore", "pipe", "pipe"] });
    let said = "";
    const address = await new Promise((resolve, reject) => {
      const hear = (bytes) => {
        said += bytes;
        const found = /(http:\/\/\S+?)\/?\s/.exec(said);
        if (found) resolve(found[1]);
      };
      server.stdout.on("data", hear);
      server.stderr.on("data", hear);
      server.on("exit", (code) => reject(new Error(`the server ended with ${code}: ${said}`)));
    });
    port = new URL(address).port;
    return address;
  };
  const halt = async () => {
    server.removeAllListeners("exit");
    if (server.exitCode !== null) return;
    const ended = new Promise((resolve) => server.on("exit", resolve));
    server.kill("SIGTERM");
    await ended;
  };
  const address = await serve();
  return {
    address,
    folder,
    files: join(folder, "practice", "files"),
    passphrase: readFileSync(passphraseFile, "utf8").trim(),
    /** Runs the command on the same practice, as a coach at a terminal would. */
    command: async (...words) => (await run(join(build, "tracewright"), [...opening, ...words])).stdout,
    /** The same on another day, such as before a trial that has ended since. */
    commandOn: async (asOf, ...words) =>
      (await run(join(build, "tracewright"), [...opening.slice(0, -1), asOf, ...words])).stdout,
    halt,
    serve,
    stop: async () => {
      await halt();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
