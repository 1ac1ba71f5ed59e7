import { readOptions, WrongArguments } from "../../src/cli/options";
import { catalogue } from "../../src/functions/catalogue";
import type { WorksheetFunction } from "../../src/functions/declare";
import { Answers, bladesFrom } from "./blades/blade";
import { BLADE_RULES, heldAgainst } from "./blades/rules";
import { fuzzFiles } from "./fuzz-files";
import { fuzzFunction, type Outcome } from "./fuzz-function";
import { openMutated } from "./mutated-files";
import { tried as askedOften, RELATIONS } from "./relations/all";

/**
 * `npm run fuzz -- --seconds 30 --seed 1 --only CUT_PLAN`: every function with arguments of every kind.
 *
 * `npm run fuzz -- --files=1500`: so many workbooks of damaged structure instead.
 *
 * `npm run fuzz -- --relations=1000`: every relation between answers as often.
 *
 * `npm run fuzz -- --blades=1000`: so many blades, of which no two functions may tell otherwise.
 *
 * Without `--seconds`, 10 000 calls where a call costs under 0.1 ms and 30 s a function elsewhere.
 */
const USUAL_SECONDS = 30;
const USUAL_CALLS = 10_000;
const TRIAL_CALLS = 200;
/** A call of the loop asks twice, to compare the two answers. */
const CHEAP_MS = 0.2;

const OPTIONS = ["seconds", "seed", "only", "files", "files-from", "relations", "blades"] as const;

/** What was asked for. An option that does nothing must not pass for one that was followed. */
function asked(): Readonly<Partial<Record<(typeof OPTIONS)[number], string>>> {
  const { files, values } = readOptions(process.argv.slice(2), { flags: [], values: OPTIONS });
  if (files.length > 0) throw new WrongArguments(`"${files[0]}" is no option`);
  return values;
}

/** A command that cannot be understood ends here, before anything is tried. */
function askedOrEnd() {
  try {
    return asked();
  } catch (problem) {
    if (!(problem instanceof WrongArguments)) throw problem;
    console.error(
      `fuzz: ${problem.message}. It takes --${OPTIONS.join(", --")}; names are frozen by npm run freeze.`,
    );
    process.exit(2);
  }
}

const { seconds, files, relations, blades, ...others } = askedOrEnd();
const seed = Number(others.seed ?? Date.now() % 1_000_000);
const only = others.only?.toUpperCase();
const from = others["files-from"];

function effortFor(trial: Outcome): number {
  if (seconds !== undefined) return Number.MAX_SAFE_INTEGER;
  return trial.milliseconds / Math.max(1, trial.calls) < CHEAP_MS ? USUAL_CALLS : Number.MAX_SAFE_INTEGER;
}

const limit = Number(seconds ?? USUAL_SECONDS) * 1000;

function tried(fn: WorksheetFunction): Outcome {
  const trial = fuzzFunction(fn, { calls: TRIAL_CALLS, limit, seed });
  return trial.fault === "" ? fuzzFunction(fn, { calls: effortFor(trial), limit, seed: seed + 1 }) : trial;
}

function line({ name, calls, cells, refused, milliseconds, fault }: Outcome): string {
  const cost = (milliseconds / Math.max(1, calls)).toFixed(3);
  return `${name.padEnd(20)} ${String(calls).padStart(7)} calls ${cost.padStart(8)} ms each, ${Math.round((100 * refused) / Math.max(1, cells))} % refusals  ${fault}`;
}

function fuzzAll(): void {
  console.log(`seed ${seed}`);
  const outcomes: Outcome[] = [];
  for (const fn of catalogue.filter(({ name }) => only === undefined || name === only)) {
    const outcome = tried(fn);
    outcomes.push(outcome);
    console.log(line(outcome));
  }
  const total = (of: (outcome: Outcome) => number) => outcomes.reduce((sum, one) => sum + of(one), 0);
  const broken = total(({ fault }) => (fault === "" ? 0 : 1));
  console.log(
    `${total(({ calls }) => calls)} calls, ${total(({ cells }) => cells)} cells, ` +
      `${total(({ refused }) => refused)} of them refusals, ${broken} functions broke a rule`,
  );
  if (broken > 0) process.exitCode = 1;
}

/** Opens files from a seed on, one line of outcome a file, until it is stopped: the other end of `fuzzFiles`. */
async function openOneByOne(from: number, count: number): Promise<void> {
  for (let file = from; file < from + count; file += 1) {
    const outcome = await openMutated(file);
    console.log(JSON.stringify({ file, outcome, kilobytes: process.resourceUsage().maxRSS }));
  }
}

function fuzzRelations(runs: number): void {
  let broken = 0;
  for (const relation of RELATIONS) {
    const { asked: answered, contradictions } = askedOften(relation, runs, seed);
    const share = `${Math.round((100 * answered) / runs)} % answered`;
    console.log(
      `${relation.kind.padEnd(9)} ${relation.says}: ${share}, ${contradictions.length} contradictions`,
    );
    for (const told of contradictions.slice(0, 3)) console.log(`  ${told}`);
    if (contradictions.length > 0 || answered === 0) broken += 1;
  }
  console.log(`seed ${seed}: ${RELATIONS.length} relations, ${broken} broken or never answered`);
  if (broken > 0) process.exitCode = 1;
}

function fuzzBlades(count: number): void {
  const blades = bladesFrom(seed, count).map((blade) => new Answers(blade));
  let broken = 0;
  for (const rule of BLADE_RULES) {
    const { asked: held, contradictions } = heldAgainst(rule, blades);
    console.log(`${rule.says}: ${held} of ${count} blades, ${contradictions.length} contradictions`);
    for (const told of contradictions.slice(0, 3)) console.log(`  ${told}`);
    if (contradictions.length > 0 || held < rule.share * count) broken += 1;
  }
  console.log(`seed ${seed}: ${BLADE_RULES.length} rules, ${broken} broken or hardly ever asked`);
  if (broken > 0) process.exitCode = 1;
}

if (blades !== undefined) fuzzBlades(Number(blades));
else if (relations !== undefined) fuzzRelations(Number(relations));
else if (files === undefined) fuzzAll();
else if (from !== undefined) void openOneByOne(Number(from), Number(files));
else void fuzzFiles(Number(files), seed);
