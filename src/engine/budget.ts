import { tokensOf } from "../formula/tokens";

/** What a calculation may take. A workbook made to hang a program is answered with a sentence at the end of it. */
export const BUDGET = {
  /** Letters of a formula: as many as Excel takes. */
  letters: 8192,
  /** Brackets one inside the other, and operators in front of one value. */
  depth: 200,
  /** Pieces of a formula once its names are written out. */
  pieces: 20_000,
  /** Cells that one formula reads, and that all of a workbook read in one calculation. */
  cellsRead: 4_000_000,
  allCellsRead: 100_000_000,
  /** Cells of ranges that are remembered while they are read again and again. */
  cellsKept: 500_000,
  /** Cells of a list that a function or an operator gives. */
  cellsMade: 4_000_000,
  /** Multiplications of one product of matrices. */
  products: 50_000_000,
  /** Seconds of a calculation, and milliseconds of each formula where these come to more: see {@link secondsFor}. */
  seconds: 60,
  millisecondsEach: 0.5,
} as const;

/**
 * Seconds that the calculation of so many formulas may take. Formulas of a filled plan take a fifth of a millisecond
 * each on a machine that does nothing else.
 */
export const secondsFor = (formulas: number): number =>
  Math.max(BUDGET.seconds, Math.ceil((formulas * BUDGET.millisecondsEach) / 1000));

/** A calculation that came to the end of its budget; the message is a sentence for the smith. */
export class BudgetEnd extends Error {
  override readonly name = "BudgetEnd";
}

const count = (value: number) => value.toLocaleString("en-GB");

export const SENTENCES = {
  read: `the formula reads more than ${count(BUDGET.cellsRead)} cells: name a smaller range`,
  made: `the formula gives more than ${count(BUDGET.cellsMade)} cells on the way: name smaller ranges`,
  all: `The calculation was stopped: the formulas read more than ${count(BUDGET.allCellsRead)} cells. Let them read smaller ranges.`,
  time: (seconds: number) =>
    `The calculation was stopped after ${seconds} seconds. Delete sheets that are not needed, or let formulas read smaller ranges.`,
} as const;

const STEPS: Readonly<Partial<Record<string, number>>> = { open: 1, openArray: 1, close: -1, closeArray: -1 };

/** How deep the brackets of a formula stand one inside the other, runs of signs counted as well. */
function depthOf(formula: string): number {
  let [open, signs] = [0, 0];
  const depths = tokensOf(formula).map(({ kind }) => {
    open += STEPS[kind] ?? 0;
    signs = kind === "operator" ? signs + 1 : 0;
    return Math.max(open, signs);
  });
  return depths.reduce((deepest, depth) => Math.max(deepest, depth), 0);
}

/** Counts what formulas come to once the names in them are written out; each name is looked at once. */
export class NameSizes {
  private readonly sizes = new Map<string, number>();

  /** @param names - What names stand for, by the name in small letters. */
  constructor(private readonly names: ReadonlyMap<string, string>) {}

  /** Why a formula is beyond the budget; `undefined` where it is not. */
  refusal(formula: string): string | undefined {
    if (formula.length > BUDGET.letters)
      return `the formula has ${count(formula.length)} letters; at most ${count(BUDGET.letters)} are read`;
    if (depthOf(formula) > BUDGET.depth)
      return `the formula has more than ${BUDGET.depth} brackets or signs one inside the other: use cells between`;
    const size = this.sizeOf(formula, new Set());
    if (size === Number.POSITIVE_INFINITY)
      return "a name in the formula stands for itself, directly or by others";
    if (size > BUDGET.pieces)
      return `the names in the formula come to more than ${count(BUDGET.pieces)} pieces once written out`;
    return undefined;
  }

  private sizeOf(formula: string, within: ReadonlySet<string>): number {
    const tokens = tokensOf(formula);
    return tokens.reduce(
      (sum, { kind, text }) => sum + (kind === "name" || kind === "call" ? this.nameSize(text, within) : 1),
      0,
    );
  }

  private nameSize(name: string, within: ReadonlySet<string>): number {
    const key = name.toLowerCase();
    const meaning = this.names.get(key);
    if (meaning === undefined) return 1;
    if (within.has(key)) return Number.POSITIVE_INFINITY;
    const known = this.sizes.get(key);
    if (known !== undefined) return known;
    const size =
      meaning.length > BUDGET.letters || within.size > BUDGET.depth
        ? BUDGET.pieces + 1
        : this.sizeOf(meaning, new Set([...within, key]));
    this.sizes.set(key, size);
    return size;
  }
}

/**
 * Seconds of the processor that this process has taken; nothing in a browser. On a machine busy with other work an
 * honest file would be stopped by the clock on the wall.
 */
function processorSeconds(): number | undefined {
  const { process } = globalThis as { process?: { cpuUsage?(): { user: number; system: number } } };
  const taken = process?.cpuUsage?.();
  return taken && (taken.user + taken.system) / 1e6;
}

/** Tells when so many seconds are over, of the clock and of the processor where that is known. */
class Timer {
  private readonly began = performance.now();
  private readonly before = processorSeconds() ?? 0;

  constructor(readonly seconds: number) {}

  get isOver(): boolean {
    if (performance.now() - this.began < this.seconds * 1000) return false;
    const taken = processorSeconds();
    return taken === undefined || taken - this.before >= this.seconds;
  }
}

/** Counts what a calculation takes while it runs. */
class Meter {
  private read = 0;
  private all = 0;
  private forgotten = 0;
  private timer: Timer | undefined;
  /** Why the formula in hand was stopped. */
  stopped: string | undefined;
  /** Why the whole calculation is to be stopped. */
  end: string | undefined;

  /** True once so many cells were read that what is remembered of them is to be forgotten. */
  get isFull(): boolean {
    if (this.all - this.forgotten < BUDGET.cellsKept) return false;
    this.forgotten = this.all;
    return true;
  }

  /** Cells that were read since the calculation began. */
  get cellsRead(): number {
    return this.all;
  }

  /** Begins a calculation. @param seconds - After which it ends; without them it goes on until it is done. */
  begin(seconds?: number): void {
    this.all = 0;
    this.forgotten = 0;
    this.end = undefined;
    this.timer = seconds === undefined ? undefined : new Timer(seconds);
    this.beginFormula();
  }

  beginFormula(): void {
    this.read = 0;
    this.stopped = undefined;
  }

  /** @throws BudgetEnd where the calculation must not go on. */
  check(): void {
    if (this.timer?.isOver) this.end ??= SENTENCES.time(this.timer.seconds);
    if (this.end !== undefined) throw new BudgetEnd(this.end);
  }

  /** Counts a cell that is read. @throws BudgetEnd beyond what a formula or a workbook may read. */
  countRead(): void {
    this.read += 1;
    this.all += 1;
    if (this.read > BUDGET.cellsRead) this.stop(SENTENCES.read);
    if (this.all > BUDGET.allCellsRead) this.end ??= SENTENCES.all;
    if ((this.read & 0xffff) === 0xffff || this.end !== undefined) this.check();
  }

  /** @throws BudgetEnd always. */
  stop(sentence: string): never {
    this.stopped ??= sentence;
    throw new BudgetEnd(sentence);
  }
}

/** One calculation runs at a time: the engine reads cells from places that know of no other. */
export const meter = new Meter();

/** What is known of the arguments of a function before it is worked out. */
interface Sized {
  isArray(): boolean;
  isReferenceObject(): boolean;
}
type Rows = Sized & { getRowCount(): number; getColumnCount(): number };

const isSized = (value: Sized): value is Rows => value.isArray() || value.isReferenceObject();

/** Refuses a function that would make more cells than fit into memory. @throws BudgetEnd where it would. */
export function refuseVastLists(name: string, values: readonly Sized[]): void {
  const lists = values.filter((value): value is Rows => Boolean(value) && isSized(value));
  const [rows, columns] = [
    Math.max(1, ...lists.map((list) => list.getRowCount() || 1)),
    Math.max(1, ...lists.map((list) => list.getColumnCount() || 1)),
  ];
  if (rows * columns > BUDGET.cellsMade) meter.stop(SENTENCES.made);
  const [left, right] = lists;
  if (name !== "MMULT" || left === undefined || right === undefined) return;
  if (left.getRowCount() * left.getColumnCount() * right.getColumnCount() > BUDGET.products)
    meter.stop(SENTENCES.made);
}
