import { ofClient } from "./ask_server";
import { useReading } from "./reading";
import type { Client } from "./replies";

/** The client's name; the handle until it is read. */
export function useClientName(handle: string): string {
  return useReading<Client>(ofClient(handle), handle).value?.name ?? handle;
}
