// The same core in SQL by a general-purpose columnar engine. Prints milliseconds for all clients.
import { DuckDBInstance } from "@duckdb/node-api";

const clients = Number(process.argv[2]);
const connection = await (await DuckDBInstance.create(":memory:")).connect();
await connection.run("SET threads TO 1");
await connection.run(`CREATE TABLE r AS SELECT c, i, (45 + (random() * 345)::INT)::DOUBLE AS g
  FROM range(${clients}) t(c), range(4032) u(i)`);
const f = "1.509 * (pow(ln(g), 1.084) - 5.381)";
const sql = `SELECT c, count(*), avg(g), stddev_samp(g), 100 * stddev_samp(g) / avg(g), 3.31 + 0.02392 * avg(g),
  count(*) FILTER (g < 54), count(*) FILTER (g >= 54 AND g < 70), count(*) FILTER (g BETWEEN 70 AND 180),
  count(*) FILTER (g > 180 AND g <= 250), count(*) FILTER (g > 250),
  avg(CASE WHEN ${f} < 0 THEN 10 * pow(${f}, 2) ELSE 0 END), avg(CASE WHEN ${f} > 0 THEN 10 * pow(${f}, 2) ELSE 0 END)
  FROM r GROUP BY c`;
const profile = `SELECT c, (i // 3) % 96 AS bin, quantile_cont(g, [0.05, 0.25, 0.5, 0.75, 0.95]) FROM r GROUP BY c, bin`;
let best = Infinity;
for (let round = 0; round < 3; round++) {
  const start = performance.now();
  await connection.runAndReadAll(sql);
  await connection.runAndReadAll(profile);
  best = Math.min(best, performance.now() - start);
}
console.log(`DuckDB, core of a client: ${((1000 * best) / clients).toFixed(1)} us`);
