import { mkdtempSync, rmSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** Tests of what the build makes; they wait for it, the others do not. */
const OF_PAGES = [
  "tests/host/**/*.test.ts",
  "tests/pane/**/*.test.ts",
  "tests/manifest/**/*.test.ts",
  "tests/security/pages.test.ts",
  "tests/security/old-browsers.test.ts",
  "tests/robustness/same-everywhere.test.ts",
];

/** Tests that work the page of `npm start`; they share its server. */
const OF_WORKBENCH = [
  "answers",
  "at-rest",
  "autosave",
  "cell-page",
  "curves",
  "editing",
  "drawn-rows",
  "files",
  "offline",
  "typing",
  "workbench",
].map((name) => `tests/workbench/${name}.test.ts`);

/** A browser on a machine with other work takes its time; what is asked of it is not how fast it is. */
const PATIENCE = { testTimeout: 180_000, hookTimeout: 180_000, expect: { poll: { timeout: 30_000 } } };

/** Files of a browser wait much; those of the sources are short enough to fill the cores to the end. */
const IN_ORDER = ["pages", "workbench", "sources"];

/** Topics whose tests calculate whole plans: short files that take long, which must not be the last to begin. */
const OF_WHOLE_PLANS = /\/tests\/(cli|workbook|interchange)\//;

const rank = ({ project, moduleId }: TestSpecification) =>
  2 * IN_ORDER.indexOf(project.name) + (OF_WHOLE_PLANS.test(moduleId) ? 0 : 1);

/** Projects in our order instead of that of their names, and in each one first what takes long. */
class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).sort((one, other) => rank(one) - rank(other));
  }
}

/** What is made once for all processes of this run (tests/kept.ts). */
if (process.env.TESTS_KEPT === undefined) {
  const folder = mkdtempSync(join(tmpdir(), "tests-kept-"));
  process.env.TESTS_KEPT = folder;
  process.once("exit", () => rmSync(folder, { recursive: true, force: true }));
}

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    testTimeout: 30_000,
    setupFiles: ["tests/seed.ts"],
    // One more than there are cores: much of the time of the browser's tests is waiting.
    maxWorkers: availableParallelism() + 1,
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        extends: true,
        test: {
          ...PATIENCE,
          name: "workbench",
          include: OF_WORKBENCH,
          globalSetup: "tests/workbench/setup.ts",
        },
      },
      {
        extends: true,
        test: { ...PATIENCE, name: "pages", include: OF_PAGES, globalSetup: "tests/setup.ts" },
      },
      {
        extends: true,
        test: {
          name: "sources",
          include: ["tests/**/*.test.ts"],
          exclude: [...OF_PAGES, ...OF_WORKBENCH],
          // Files share what they import: reading core and the engine anew for each took a third of all the time.
          isolate: false,
        },
      },
    ],
  },
});
