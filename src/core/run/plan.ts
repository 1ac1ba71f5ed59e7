import { benchHours, type PlannedCost, plannedCost } from "../money/cost";
import { type PriceDay, priceCaution, priceDay } from "../money/price-age";
import { type InParts, toTheEnd } from "../parts";
import { attempt, NotAvailable, Refusal } from "../refusal";
import { carbonOf } from "../steel/carbon";
import { type PlannedStock, plannedStock } from "./blank";
import { edgeCaution } from "./edge-caution";
import { furnaceLine, type PlannedEnergy, plannedEnergy } from "./energy";
import type { Figure, PlanLine } from "./line";
import { type LineRecipe, lineRecipe } from "./line-recipe";
import { checkPiece, type LoadShare } from "./load-packing";
import { type FurnaceLine, loadShares } from "./loads";
import { startsNeeded } from "./starts";

/** One line planned. */
export interface LinePlan {
  readonly line: PlanLine;
  readonly carbon: Figure;
  /** How it is hardened and tempered. */
  readonly recipe: LineRecipe;
  readonly starts: number;
  /** Bench hours of all starts and the set-up. */
  readonly hours: number | undefined;
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

function begin(line: PlanLine): Begun {
  const { steel, good, yieldShare, confidence } = line;
  const starts = startsNeeded(good, yieldShare, confidence);
  const stock = plannedStock(line, starts);
  const recipe = lineRecipe(line);
  const furnace = furnaceLine(line, starts, stock.hardenKg, recipe.text);
  if (furnace !== undefined) checkPiece(furnace, furnace.limits);
  return {
    line,
    carbon: attempt(() => carbonOf(steel), NotAvailable),
    recipe,
    starts,
    hours: benchHours(line, starts),
    stock,
    furnace,
  };
}

function isPlanned<T>(row: PlanRow<T>): row is T {
  return row !== undefined && !(row instanceof Refusal);
}

function finish(begun: Begun, share: LoadShare | undefined, today: PriceDay | undefined): LinePlan {
  const { line, starts, hours, stock, recipe } = begun;
  const hot = stock.hardenKg === undefined ? undefined : stock.hardenKg * starts;
  const energy = plannedEnergy(line, hot, share);
  const { kilograms } = stock;
  const cost = plannedCost(line, { starts, hours, kilograms, kilowattHours: energy.kilowattHours });
  const cautions = [
    ...recipe.temper.cautions.map(({ full }) => full),
    recipe.hardening.caution,
    edgeCaution(line),
    ...stock.cautions,
    ...energy.cautions,
    ...cost.cautions,
    priceCaution(line, today),
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
function repeatedNames(rows: readonly PlanRow<PlanLine>[]): Set<string> {
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
 * @param rows - Lines as read, lengths [mm], temperatures [°C], hours [h], amounts in one currency; a refused or blank one stays as it is.
 * @param date - Day number that prices are compared with [d]; the newest price date where left out.
 * @returns In the order of the lines. A fault in one leaves the others planned; its pieces count nowhere.
 * Limits: a figure out of range stands as its refusal; nothing is thrown.
 * Error and source: those of the functions that it joins, `startsNeeded`, `temperedRange`, `barsFor`, `furnaceLoads`, `furnaceEnergy`.
 */
export function planRun(
  rows: readonly PlanRow<PlanLine>[],
  date: number | undefined,
): readonly PlanRow<LinePlan>[] {
  return toTheEnd(planRunInParts(rows, date));
}

/** The same plan in parts: it may pause after each line. */
export function* planRunInParts(
  rows: readonly PlanRow<PlanLine>[],
  date: number | undefined,
): InParts<readonly PlanRow<LinePlan>[]> {
  const repeated = repeatedNames(rows);
  const begun: PlanRow<Begun>[] = [];
  for (const row of rows) {
    begun.push(isPlanned(row) ? attempt(() => begin(row)) : row);
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
