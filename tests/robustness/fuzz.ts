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

function option(name: string): string | undefined {
  const place = process.argv.indexOf(`--${name}`);
  return place < 0 ? undefined : process.argv[place + 1];
}

const seconds = option("seconds");
const seed = Number(option("seed") ?? Date.now() % 1_000_000);
const only = option("only")?.toUpperCase();

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
    const { asked, contradictions } = askedOften(relation, runs, seed);
    const share = `${Math.round((100 * asked) / runs)} % answered`;
    console.log(
      `${relation.kind.padEnd(9)} ${relation.says}: ${share}, ${contradictions.length} contradictions`,
    );
    for (const told of contradictions.slice(0, 3)) console.log(`  ${told}`);
    if (contradictions.length > 0 || asked === 0) broken += 1;
  }
  console.log(`seed ${seed}: ${RELATIONS.length} relations, ${broken} broken or never answered`);
  if (broken > 0) process.exitCode = 1;
}

function fuzzBlades(count: number): void {
  const blades = bladesFrom(seed, count).map((blade) => new Answers(blade));
  let broken = 0;
  for (const rule of BLADE_RULES) {
    const { asked, contradictions } = heldAgainst(rule, blades);
    console.log(`${rule.says}: ${asked} of ${count} blades, ${contradictions.length} contradictions`);
    for (const told of contradictions.slice(0, 3)) console.log(`  ${told}`);
    if (contradictions.length > 0 || asked < rule.share * count) broken += 1;
  }
  console.log(`seed ${seed}: ${BLADE_RULES.length} rules, ${broken} broken or hardly ever asked`);
  if (broken > 0) process.exitCode = 1;
}

const optionOf = (name: string) =>
  process.argv.find((argument) => argument.startsWith(`--${name}=`))?.slice(name.length + 3);
const files = optionOf("files");
const from = optionOf("files-from");
const relations = optionOf("relations");
const blades = optionOf("blades");
if (blades !== undefined) fuzzBlades(Number(blades));
else if (relations !== undefined) fuzzRelations(Number(relations));
else if (files === undefined) fuzzAll();
else if (from !== undefined) void openOneByOne(Number(from), Number(files));
else void fuzzFiles(Number(files), seed);
