import { readFileSync, writeFileSync } from "node:fs";
import { fitFileText } from "./fit";

/**
 * `npm run fit`: fits every tempering curve anew from the printed rows in `tests/fitting/data` and
 * writes what the functions read. Prints what changed; `git diff` shows the curves.
 */
const PATH = "src/core/tempering/fits.json";

const before = readFileSync(PATH, "utf8");
const now = fitFileText();
writeFileSync(PATH, now);

const known = new Set(before.split("\n"));
const changed = now.split("\n").filter((line) => !known.has(line));
console.log(changed.length === 0 ? `${PATH} was current` : `${PATH}: ${changed.length} lines changed`);
for (const line of changed) console.log(line.trim().slice(0, 100));
