import { numberText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { totalHours } from "../run/learning";
import type { Figure, ReadLine } from "../run/line";
import { priceAtMargin } from "./price";
import { roundMoney } from "./rounding";

/** What a line takes, as far as it could be worked out. */
export interface Consumption {
  readonly starts: number;
  readonly hours: number | undefined;
  /** Steel bought, kg. */
  readonly kilograms: number | undefined;
  readonly kilowattHours: Figure;
}

/** Money of a line. */
export interface PlannedCost {
  /** Of the whole line [money]. */
  readonly cost: number | undefined;
  /** Of one good blade, not rounded [money]. */
  readonly unitCost: number | undefined;
  /** Of one good blade, rounded to the step [money]. */
  readonly price: number | undefined;
  /** Share of the price, below 1 [-]. */
  readonly margin: number | undefined;
  /** Sentences on what the money leaves open. */
  readonly cautions: readonly string[];
}

/**
 * Bench hours of all starts and the set-up.
 *
 * @throws InvalidValue for a rate without its model.
 */
export function benchHours(line: ReadLine, starts: number): number | undefined {
  const { hoursFirst, rate, model, setUpHours } = line;
  if (hoursFirst === undefined) return setUpHours > 0 ? setUpHours : undefined;
  if (rate < 1 && model === undefined) {
    throw new InvalidValue(
      'model is empty: a rate needs "unit" (the rate is that of single pieces) or "average" (of the mean of ' +
        "all so far); they differ by a third over ten pieces",
    );
  }
  return setUpHours + totalHours({ first: hoursFirst, rate, model: model ?? "unit" }, starts);
}

/** Two figures multiplied; unknown where one of them is. */
function times(a: Figure, b: Figure): number | undefined {
  return typeof a === "number" && typeof b === "number" ? a * b : undefined;
}

interface Parts {
  readonly steel: number | undefined;
  readonly labour: number | undefined;
  readonly energy: number | undefined;
}

function lineCost(line: ReadLine, starts: number, hours: number, parts: Parts): number | undefined {
  const { good, overheadRate, costAStart, costAGoodOne, outsideHeat } = line;
  const others = costAStart * starts + costAGoodOne * good + (outsideHeat ?? 0) + overheadRate * hours;
  const known = Object.values(parts).filter((part) => part !== undefined);
  if (known.length === 0 && others === 0) return undefined;
  return known.reduce((sum, part) => sum + part, others);
}

function missingCaution(line: ReadLine, parts: Parts): string[] {
  const missing: string[] = [];
  if (parts.steel === undefined) {
    missing.push(line.priceKg === undefined ? "steel (no price kg)" : "steel (no size of the blank)");
  }
  if (parts.labour === undefined) {
    missing.push(line.hourRate === undefined ? "labour (no hour rate)" : "labour (no hours first)");
  }
  return missing.length === 0 ? [] : [`Not in the unit cost: ${missing.join(", ")}.`];
}

function priceOf({ price, margin, priceStep }: ReadLine, unitCost: number): number | undefined {
  if (price !== undefined) return price;
  return margin === undefined ? undefined : roundMoney(priceAtMargin(unitCost, margin), priceStep, "half up");
}

function marginCaution(line: ReadLine, unitCost: number): string[] {
  const { price, margin = 0, priceStep } = line;
  if (price === undefined || (price - unitCost) / price >= margin) return [];
  if (price < unitCost) {
    return [
      `The price ${numberText(price)} is under the unit cost: each blade loses ${(unitCost - price).toFixed(2)}.`,
    ];
  }
  const needed = roundMoney(priceAtMargin(unitCost, margin), priceStep, "half up");
  return [
    `The price ${numberText(price)} leaves less than the margin wanted; ${numberText(needed)} would keep it.`,
  ];
}

/** Cost, price and margin of a line. Every cost that is given is counted; the cautions say what is not. */
export function plannedCost(
  line: ReadLine,
  { starts, hours, kilograms, kilowattHours }: Consumption,
): PlannedCost {
  const parts = {
    steel: times(line.priceKg, kilograms),
    labour: times(line.hourRate, hours),
    energy: times(line.energyPrice, kilowattHours),
  };
  const cost = lineCost(line, starts, hours ?? 0, parts);
  const none = { price: line.price, margin: undefined, cautions: [] };
  if (cost === undefined) return { cost, unitCost: undefined, ...none };
  const unitCost = cost / line.good;
  const price = priceOf(line, unitCost);
  return {
    cost,
    unitCost,
    price,
    margin: price === undefined || price === 0 ? undefined : (price - unitCost) / price,
    cautions: [...marginCaution(line, unitCost), ...missingCaution(line, parts)],
  };
}
