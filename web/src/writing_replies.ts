// How the practice writes, as the server tells it (docs/api/openapi.json, Writing).

export interface WayOfWriting {
  dates: string;
  hours: string;
  glucose: string;
}

export interface Writing extends WayOfWriting {
  /** One day and one time of day in each way there is. */
  samples: { dates: Record<string, string>; hours: Record<string, string> };
}
