import { words } from "./words";

/** The caution that every view carries once. */
export function Bottom() {
  return (
    <footer class="bottom">
      <p>{words.notAnAlarm}</p>
      <p>{words.supportsCoaching}</p>
    </footer>
  );
}
