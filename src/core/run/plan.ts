import { benchHours, type PlannedCost, plannedCost } from "../money/cost";
import { type PriceDay, priceCaution, priceDay } from "../money/price-age";
import { type InParts, toTheEnd } from "../parts";
import { asSentence } from "../quantity-text";
import { attempt, NotAvailable, Refusal } from "../refusal";
import { carbonOf } from "../steel/carbon";
import { bladeMass, checkBlank, type PlannedStock, plannedStock } from "./blank";
import { edgeCaution } from "./edge-caution";
import { furnaceLine, type PlannedEnergy, plannedEnergy } from "./energy";
import { type Faults, faultSentences, type PlanPart, planFault } from "./faulty-cells";
import { type Figure, type PlanLine, type ReadLine, readLine } from "./line";
import { type LineRecipe, recipeBesideFaults } from "./line-recipe";
import { checkPiece, type LoadShare } from "./load-packing";
import { type FurnaceLine, loadShares } from "./loads";
import { startsNeeded } from "./starts";

/** One line planned. */
export interface LinePlan {
  /** As it was read. */
  readonly line: ReadLine;
  /** Cells that could not be read or contradict each other; `planFault` tells which parts they leave unknown. */
  readonly faults: Faults;
  /** Of the steel [mass %]. */
  readonly carbon: Figure;
  /** How it is hardened and tempered. */
  readonly recipe: LineRecipe;
  /** Blades to start [-]. */
  readonly starts: number;
  /** Bench hours of all starts and the set-up [h]. */
  readonly hours: number | undefined;
  /** Of one finished blade without its tang [g]. */
  readonly massG: number | undefined;
  readonly stock: PlannedStock;
  readonly energy: PlannedEnergy;
  readonly cost: PlannedCost;
  /** Sentences, the most pressing first. */
  readonly cautions: readonly string[];
}

/** What a line comes to before the loads of the run are known; all that may be refused is settled by then. */
type Begun = Omit<LinePlan, "energy" | "cost" | "cautions"> & {
  readonly furnace: FurnaceLine | undefined;
};

/** A line of the table: planned, refused with its sentence, or blank. */
export type PlanRow<T> = T | Refusal | undefined;

/** Asks one part of a line after the other; a refusal is kept under the cell that it speaks of. */
class Asked {
  readonly faults: { -readonly [K in keyof Faults]: Faults[K] };

  constructor(given: Faults) {
    this.faults = { ...given };
  }

  or<T>(cell: keyof ReadLine, question: () => T, otherwise: () => T): T {
    const found = attempt(question);
    if (!(found instanceof Refusal)) return found;
    this.faults[cell] ??= found;
    return otherwise();
  }
}

const NO_STOCK: PlannedStock = { hardenKg: undefined, bars: undefined, kilograms: undefined, cautions: [] };

function stockOf(line: ReadLine, starts: number, asked: Asked): PlannedStock {
  const inBars = () => plannedStock(line, starts);
  const isBlank = asked.or(
    "blankLength",
    () => checkBlank(line) === undefined,
    () => false,
  );
  if (!isBlank) return NO_STOCK;
  return asked.or("barLength", inBars, () => plannedStock({ ...line, barLength: undefined }, starts));
}

/** The pieces of a line for the furnace; a line whose loads cannot be told takes no place in those of others. */
function furnaceOf(
  line: ReadLine,
  starts: number,
  { stock, recipe }: Pick<Begun, "stock" | "recipe">,
  asked: Asked,
): FurnaceLine | undefined {
  if (planFault(line, asked.faults, "loads") !== undefined) return undefined;
  const furnace = furnaceLine(line, starts, stock.hardenKg, recipe.text);
  if (furnace === undefined) return undefined;
  const fits = () => checkPiece(furnace, furnace.limits) === undefined;
  return asked.or("massALoad", fits, () => false) ? furnace : undefined;
}

function begin(given: ReadLine, unread: Faults): Begun {
  const { recipe, line, faults } = recipeBesideFaults(given, unread);
  const asked = new Asked(faults);
  const starts = startsNeeded(line.good, line.yieldShare, line.confidence);
  const nothing = () => undefined;
  const massG = asked.or("grind", () => bladeMass(line), nothing);
  const stock = stockOf(line, starts, asked);
  const hours = asked.or("model", () => benchHours(line, starts), nothing);
  const furnace = furnaceOf(line, starts, { stock, recipe }, asked);
  const carbon = attempt(() => carbonOf(line.steel), NotAvailable);
  return { line, faults: asked.faults, carbon, recipe, starts, hours, massG, stock, furnace };
}

function isPlanned<T>(row: PlanRow<T>): row is T {
  return row !== undefined && !(row instanceof Refusal);
}

/** Sentences of a part, unless a faulty cell keeps it from being told. */
function unless(fault: Refusal | undefined, cautions: readonly string[]): readonly string[] {
  return fault === undefined ? cautions : [];
}

function finish(begun: Begun, share: LoadShare | undefined, today: PriceDay | undefined): LinePlan {
  const { line, faults, starts, hours, stock, recipe } = begun;
  const hot = stock.hardenKg === undefined ? undefined : stock.hardenKg * starts;
  const energy = plannedEnergy(line, hot, share);
  const { kilograms } = stock;
  const cost = plannedCost(line, { starts, hours, kilograms, kilowattHours: energy.kilowattHours });
  const faultIn = (part: PlanPart) => planFault(line, faults, part);
  const cautions = [
    ...faultSentences(faults).map(asSentence),
    ...unless(
      faultIn("temper"),
      recipe.temper.cautions.map(({ full }) => full),
    ),
    ...unless(faultIn("through"), [recipe.hardening.caution]),
    edgeCaution(line),
    ...stock.cautions,
    ...unless(faultIn("energy"), energy.cautions),
    ...unless(faultIn("margin"), cost.cautions),
    ...unless(faults.priceDate, [priceCaution(line, today)]),
  ].filter((caution) => caution !== "");
  return { ...begun, energy, cost, cautions: [...new Set(cautions)] };
}

/** Says of a line whose name another bears too. */
function named(plan: LinePlan, repeated: ReadonlySet<string>): LinePlan {
  const { name } = plan.line;
  if (!repeated.has(name.toLowerCase())) return plan;
  return { ...plan, cautions: [...plan.cautions, `Line ${name} stands in the table twice.`] };
}

/** Names that stand on more than one line. */
function repeatedNames(rows: readonly PlanRow<ReadLine>[]): Set<string> {
  const seen = new Set<string>();
  const repeated = new Set<string>();
  for (const row of rows) {
    if (!isPlanned(row) || row.name === "") continue;
    const key = row.name.toLowerCase();
    if (seen.has(key)) repeated.add(key);
    seen.add(key);
  }
  return repeated;
}

/**
 * Plans a run line by line: temper, starts, bars, loads, energy, hours and money.
 *
 * @param rows - Lines, each with steel, good and yield at least; lengths [mm], temperatures [°C], hours [h], amounts in one currency; a refused or blank one stays as it is.
 * @param date - Day number that prices are compared with [d]; the newest price date where left out.
 * @param faults - Cells of each line that could not be read and stand as if left out, in the order of the lines.
 * @returns In the order of the lines. A fault in one leaves the others planned; its pieces count nowhere.
 * Limits: a figure out of range stands as its refusal, a line without what it needs as its own; nothing is thrown.
 * Error and source: those of the functions that it joins, `startsNeeded`, `temperedRange`, `barsFor`, `furnaceLoads`, `furnaceEnergy`.
 */
export function planRun(
  rows: readonly PlanRow<PlanLine>[],
  date?: number,
  faults: readonly Faults[] = [],
): readonly PlanRow<LinePlan>[] {
  return toTheEnd(planRunInParts(rows, date, faults));
}

/** The same plan in parts: it may pause after each line. */
export function* planRunInParts(
  given: readonly PlanRow<PlanLine>[],
  date: number | undefined,
  faults: readonly Faults[] = [],
): InParts<readonly PlanRow<LinePlan>[]> {
  const rows = given.map((row) => (isPlanned(row) ? attempt(() => readLine(row)) : row));
  const repeated = repeatedNames(rows);
  const begun: PlanRow<Begun>[] = [];
  for (const [at, row] of rows.entries()) {
    begun.push(isPlanned(row) ? attempt(() => begin(row, faults[at] ?? {})) : row);
    yield;
  }
  const today = priceDay(
    rows.map((row) => (isPlanned(row) ? row : undefined)),
    date,
  );
  const shares = loadShares(begun.map((row) => (isPlanned(row) ? row.furnace : undefined)));
  const finished: PlanRow<LinePlan>[] = [];
  for (const [index, row] of begun.entries()) {
    finished.push(isPlanned(row) ? named(finish(row, shares[index], today), repeated) : row);
    yield;
  }
  return finished;
}
