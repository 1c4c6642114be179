import { writeFileSync } from "node:fs";
import { join } from "node:path";

/**
 * The file of task T1, invented: four title rows, decimal commas, dates that fit day and month first, LOW and HIGH, three
 * repeated rows, a row with 'abc', a footer.
 */
export function messyFile(folder) {
  const lines = ["Invented sensor;", "Client: nobody;", "Made for a test;", ";", "Zeit;Glukose mmol/L"];
  for (let i = 0; i < 288; i += 1) {
    const clock = `${String(Math.floor(i / 12)).padStart(2, "0")}:${String((i % 12) * 5).padStart(2, "0")}`;
    const level = i === 50 ? "LOW" : i === 60 ? "HIGH" : i === 100 ? "abc" : `7,${i % 10}`;
    lines.push(`03.02.2026 ${clock};${level}`);
    if (i < 3) lines.push(lines.at(-1));
  }
  lines.push("End of the file;");
  const file = join(folder, "messy.csv");
  writeFileSync(file, lines.join("\r\n"));
  return file;
}
