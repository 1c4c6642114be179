import { words } from "./words";

const count = (days: boolean[]): number => days.filter(Boolean).length;

function Row({ name, days }: { name: string; days: boolean[] }) {
  return (
    <span class="strip-row">
      <span class="strip-name">{name}</span>
      {days.map((there, day) => (
        <span key={day} class={there ? "mark there" : "mark"} />
      ))}
    </span>
  );
}

/** Which of the last seven days were seen by the sensor, and on which something was written. */
export function SeenStrip({ seen, written }: { seen: boolean[]; written: boolean[] }) {
  return (
    <p class="strip">
      <span class="unseen">{words.caseload.stripTold(count(seen), count(written))}</span>
      <span aria-hidden="true">
        <Row name={words.caseload.seen} days={seen} />
        <Row name={words.caseload.written} days={written} />
      </span>
    </p>
  );
}
