import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { dataFiles } from "../accuracy/data-files";
import { ceilingsOf } from "../accuracy/frozen";
import { MEASURED } from "../accuracy/measured";
import { gradeCounts } from "../functions/grade-counts";
import { FROZEN_NAMES, namesNow } from "../robustness/frozen-names";
import { frozenStillEnds, STILL_ENDS, stillEnds } from "../robustness/still-ends";

type Lines = Readonly<Record<string, unknown>>;

function stillEndsWithReasons(): Lines {
  const known = frozenStillEnds();
  return Object.fromEntries(stillEnds().map((name) => [name, known[name] ?? ""]));
}

/** Every file that holds the present state as a limit: one line a key. */
const FROZEN: Readonly<Record<string, () => Lines>> = {
  "tests/accuracy/frozen/checks.json": () => ({ ...ceilingsOf(MEASURED) }),
  "tests/accuracy/frozen/data-files.json": () => ({ ...dataFiles() }),
  "tests/functions/grade-counts.json": gradeCounts,
  [FROZEN_NAMES]: namesNow,
  [STILL_ENDS]: stillEndsWithReasons,
};

const asText = (lines: Lines) =>
  `{\n${Object.entries(lines)
    .map(([key, value]) => `  ${JSON.stringify(key)}: ${JSON.stringify(value)}`)
    .join(",\n")}\n}\n`;

/** What differs, a line a key. */
function changes(before: Lines, after: Lines): string[] {
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])].sort();
  return keys.flatMap((key) => {
    const [was, is] = [before[key], after[key]].map((value) => JSON.stringify(value) ?? "nothing");
    return was === is ? [] : [`  ${key}: ${was} → ${is}`];
  });
}

/**
 * `npm run freeze`: takes the present state as the new limit wherever one is kept, and prints what changed. Only after
 * a change that is meant; `-- --check` prints the same and writes nothing.
 */
for (const [path, now] of Object.entries(FROZEN)) {
  const after = now();
  const found = changes(JSON.parse(readFileSync(path, "utf8")) as Lines, after);
  console.log(found.length === 0 ? `${path}: as it was` : `${path}:\n${found.join("\n")}`);
  if (!process.argv.includes("--check")) writeFileSync(path, asText(after));
}
// The style check reads these files too.
if (!process.argv.includes("--check"))
  execFileSync("npx", ["biome", "format", "--write", "--log-level=error", ...Object.keys(FROZEN)]);
