import { ofClient } from "./ask_server";
import { LastReadingLine } from "./last_reading_line";
import { useReading } from "./reading";
import type { Client } from "./replies";

/** When the client's last reading was, on places that read nothing else of the trace (docs/safety.md, 6). */
export function ClientAge({ client }: { client: string }) {
  const known = useReading<Client>(ofClient(client), client).value;
  return known ? <LastReadingLine last={known.last_reading} /> : null;
}
