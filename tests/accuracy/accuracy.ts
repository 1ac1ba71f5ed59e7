import { readFileSync, writeFileSync } from "node:fs";
import { faults } from "./frozen";
import { MEASURED } from "./measured";
import { ACCURACY_PAGES, printedLines, withAccuracy } from "./report";

/**
 * `npm run accuracy`: every published table against the library, line by line; fails where one got worse.
 * `-- --write` brings the tables in README and on the accuracy page up to date. `npm run freeze` takes
 * the present state as the new limit.
 */
console.log(printedLines().join("\n"));

const wrong = faults(MEASURED);
for (const path of Object.keys(ACCURACY_PAGES)) {
  const now = readFileSync(path, "utf8");
  const due = withAccuracy(path, now);
  if (now === due) continue;
  if (process.argv.includes("--write")) writeFileSync(path, due);
  else wrong.push(`${path}: its accuracy table is out of date, run npm run accuracy -- --write`);
}
for (const fault of wrong) console.error(fault);
if (wrong.length > 0) process.exitCode = 1;
