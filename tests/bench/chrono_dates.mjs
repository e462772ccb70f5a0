// The other side of dates_bench: reads a file, lets chrono-node parse it line by line, prints the seconds spent parsing (the
// best of RUNS) and the number of dates found. Usage: node chrono_dates.mjs FILE RUNS
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const require = createRequire(new URL("../reference/package.json", import.meta.url));
const chrono = require("chrono-node");
const lines = readFileSync(process.argv[2], "utf8").split("\n");
const reference = new Date(1998, 5, 15);

let best = Infinity;
let found = 0;
for (let run = 0; run < Number(process.argv[3]); ++run) {
  const start = process.hrtime.bigint();
  found = 0;
  for (const line of lines) found += chrono.parse(line, reference).length;
  best = Math.min(best, Number(process.hrtime.bigint() - start) / 1e9);
}
console.log(`${best} ${found}`);
