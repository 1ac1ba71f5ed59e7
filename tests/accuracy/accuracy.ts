import { readFileSync, writeFileSync } from "node:fs";
import { dataFiles } from "./data-files";
import { ceilingsOf, faults } from "./frozen";
import { MEASURED } from "./measured";
import { ACCURACY_PAGES, printedLines, withAccuracy } from "./report";

/**
 * `npm run accuracy`: every published table against the library, line by line; fails where one got worse.
 * `-- --write` brings the tables in README and on the accuracy page up to date. `-- --freeze` takes the present state as the new
 * limit: only after a change that is meant, and to be seen in the diff.
 */
function asLines(record: object): string {
  const lines = Object.entries(record).map(
    ([key, value]) => `  ${JSON.stringify(key)}: ${JSON.stringify(value)}`,
  );
  return `{\n${lines.join(",\n")}\n}\n`;
}

if (process.argv.includes("--freeze")) {
  writeFileSync("tests/accuracy/frozen/checks.json", asLines(ceilingsOf(MEASURED)));
  writeFileSync("tests/accuracy/frozen/data-files.json", asLines(dataFiles()));
}

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
