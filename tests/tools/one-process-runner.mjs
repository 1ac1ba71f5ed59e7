import { mkdtempSync, rmSync } from "node:fs";
import { isBuiltin } from "node:module";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { INSTRUMENTER_CONSTANTS } from "@stryker-mutator/api/core";
import { commonTokens, declareClassPlugin, PluginKind, tokens } from "@stryker-mutator/api/plugin";
import {
  DryRunStatus,
  determineHitLimitReached,
  TestStatus,
  toMutantRunResult,
} from "@stryker-mutator/api/test-runner";
import { rolldown } from "rolldown";
import { TESTS } from "./mutation-tests.mjs";
import { state } from "./one-process-words.mjs";

const WORDS = resolve(import.meta.dirname, "one-process-words.mjs");

/** Where a bundled file stood tells its tests where their samples are. */
const inItsPlace = {
  name: "in-its-place",
  transform(code, id) {
    if (!code.includes("import.meta") || id.includes("node_modules") || id === WORDS) return null;
    const href = JSON.stringify(pathToFileURL(id).href);
    return code
      .replaceAll("import.meta.url", href)
      .replaceAll("import.meta.dirname", JSON.stringify(resolve(id, "..")));
  },
};

const isOfNode = (name) => isBuiltin(name) || resolve(name) === WORDS;

/** Bundles files so that what they share is one module; each becomes `0.mjs`, `1.mjs` and so on. */
async function bundled(files, folder) {
  const bundle = await rolldown({
    input: Object.fromEntries(files.map((file, at) => [String(at), resolve(file)])),
    platform: "node",
    external: isOfNode,
    resolve: { alias: { vitest: WORDS } },
    plugins: [inItsPlace],
    logLevel: "silent",
  });
  await bundle.write({
    dir: folder,
    format: "esm",
    entryFileNames: "[name].mjs",
    chunkFileNames: "part-[hash].mjs",
  });
  await bundle.close();
}

/** Where the planted faults are switched on and tell that they were met. */
const space = () => (globalThis[INSTRUMENTER_CONSTANTS.NAMESPACE] ??= {});

/** What a test meets while it runs is tried while it runs, whether or not it was met while the tests were loaded too. */
function runtimeCoverage() {
  const { static: atLoad, perTest } = space().mutantCoverage;
  const met = new Set(Object.values(perTest).flatMap((mutants) => Object.keys(mutants)));
  const only = Object.entries(atLoad).filter(([mutant]) => !met.has(mutant));
  return { static: Object.fromEntries(only), perTest };
}

/**
 * Runs the tests of a part in this very process: bundled once, loaded once, each asked again for each fault. Right for
 * code that remembers nothing between two calls. A test that never ends is ended by Stryker with the process.
 */
class OneProcessRunner {
  static inject = tokens(commonTokens.logger);

  constructor(log) {
    this.log = log;
  }

  capabilities() {
    return { reloadEnvironment: false };
  }

  async init() {
    this.folder = mkdtempSync(resolve(".one-process-"));
    const files = TESTS[process.env.MUTATE ?? ""] ?? [];
    await bundled(["tests/seed.ts", ...files], this.folder);
    space();
    for (const [at, file] of ["tests/seed.ts", ...files].entries()) {
      state.file = file;
      await import(pathToFileURL(join(this.folder, `${at}.mjs`)).href);
    }
    this.log.info("%d tests loaded", state.tests.length);
  }

  async dryRun() {
    space().activeMutant = undefined;
    const results = await this.asked(state.tests, true);
    return { status: DryRunStatus.Complete, tests: results, mutantCoverage: runtimeCoverage() };
  }

  async mutantRun({ activeMutant, testFilter, hitLimit, disableBail }) {
    const wanted = testFilter && new Set(testFilter);
    const chosen = state.tests.filter(({ id }) => wanted === undefined || wanted.has(id));
    // What tests begin with is made without the fault: others begin with it too.
    for (const { file } of chosen) await this.prepare(file);
    Object.assign(space(), {
      activeMutant: activeMutant.id,
      hitLimit,
      hitCount: hitLimit === undefined ? undefined : 0,
    });
    const results = await this.asked(chosen, disableBail);
    const reached = determineHitLimitReached(space().hitCount, hitLimit);
    Object.assign(space(), { activeMutant: undefined, hitLimit: undefined, hitCount: undefined });
    return toMutantRunResult(reached ?? { status: DryRunStatus.Complete, tests: results });
  }

  async asked(tests, goesOn) {
    const results = [];
    for (const one of tests) {
      results.push(await this.outcome(one));
      if (!goesOn && results.at(-1).status === TestStatus.Failed) break;
    }
    return results;
  }

  async outcome({ id, name, file, body }) {
    const began = Date.now();
    const common = { id, name, fileName: resolve(file) };
    try {
      await this.prepare(file);
      space().currentTestId = id;
      await body();
      return { ...common, status: TestStatus.Success, timeSpentMs: Date.now() - began };
    } catch (fault) {
      const failureMessage = fault instanceof Error ? fault.message : String(fault);
      return { ...common, status: TestStatus.Failed, failureMessage, timeSpentMs: Date.now() - began };
    } finally {
      space().currentTestId = undefined;
    }
  }

  async prepare(file) {
    for (const one of state.before.filter((each) => each.file === file && !each.isDone)) {
      one.isDone = true;
      await one.body();
    }
  }

  async dispose() {
    rmSync(this.folder, { recursive: true, force: true });
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, "one-process", OneProcessRunner)];
