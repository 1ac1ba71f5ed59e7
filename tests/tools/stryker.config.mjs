/**
 * `npm run mutation`: changes the core on purpose, one small fault at a time, and counts how many the tests see.
 * `MUTATE=run` takes one of the parts below; all take hours on two cores.
 *
 * Left out: texts (the tests of sentences compare parts of them) and what is worked out once on loading
 * (records of relations, tables read from data), whose faults the accuracy tables and data guards see.
 */
import { tmpdir } from "node:os";
import { join } from "node:path";

const PARTS = {
  tempering: ["src/core/tempering/*.ts"],
  quench: [
    "src/core/hardening/{quenched,retained,martensite,max-section,critical,critical-points,dissolved,high-chromium,ideal-diameter,jominy,soak,decarb}.ts",
    "src/core/run/{furnace,heat-content,loads,oil}.ts",
  ],
  section: ["src/core/hardening/{section-*,heat-transfer}.ts"],
  shape: ["src/core/shape/*.ts"],
  mechanics: ["src/core/mechanics/*.ts"],
  blade: ["src/core/blade/*.ts"],
  run: ["src/core/run/*.ts"],
  hardness: ["src/core/hardness/*.ts"],
  steel: ["src/core/steel/*.ts"],
  share: ["src/workbook/share/**/*.ts"],
};

const part = process.env.MUTATE ?? "";
if (part !== "" && !(part in PARTS))
  throw new Error(`MUTATE=${part}: give one of ${Object.keys(PARTS).join(", ")}`);

/** @type {import("@stryker-mutator/api/core").PartialStrykerOptions} */
export default {
  // Workbooks take long to load and remember nothing of what is shared: their tests stay loaded from fault to fault.
  testRunner: part === "share" ? "one-process" : "vitest",
  plugins: ["@stryker-mutator/vitest-runner", new URL("one-process-runner.mjs", import.meta.url).pathname],
  vitest: { configFile: "tests/tools/stryker.vitest.mjs", related: false },
  coverageAnalysis: "perTest",
  mutate: part === "" ? Object.values(PARTS).flat() : PARTS[part],
  mutator: { excludedMutations: ["StringLiteral"] },
  ignoreStatic: true,
  // What the tests of workbooks read is copied only where they are asked.
  ignorePatterns: [
    "dist",
    "tests/workbench",
    "tests/pane",
    ...(part === "share" ? [] : ["assets", "tests/workbook"]),
  ],
  tempDirName: join(tmpdir(), "blade-metallurgy-mutation"),
  reporters: ["clear-text"],
  clearTextReporter: { allowEmojis: false, logTests: false, reportTests: false, reportScoreTable: true },
  allowConsoleColors: false,
  concurrency: Number(process.env.MUTATE_AT_ONCE ?? 2),
  timeoutMS: 20_000,
  thresholds: { high: 90, low: 80, break: 80 },
};
