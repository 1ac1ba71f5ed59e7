import { type LearningModel, totalHours } from "../run/learning";
import { startsNeeded } from "../run/starts";
import { lotCost, outsideCharge, priceAtMargin } from "./price";
import { roundMoney } from "./rounding";

/** What a lot of any size costs. Money in one currency. */
export interface LotTerms {
  /** Once a lot. */
  readonly setUp: number;
  /** Of the first piece, h. */
  readonly hoursFirst: number;
  readonly rate: number;
  readonly model: LearningModel;
  readonly hourRate: number;
  /** Of one start. */
  readonly material: number;
  /** An outside shop's charge for one start, its least for a lot, and what it charges once. */
  readonly outsideRate: number;
  readonly outsideMinimum: number;
  readonly outsideSetUp: number;
  /** Share of the price. */
  readonly margin: number;
  readonly step: number;
  readonly yieldShare: number;
  readonly confidence: number;
}

export interface PriceBreak {
  readonly starts: number;
  readonly hours: number;
  readonly outside: number;
  /** Of the whole lot. */
  readonly cost: number;
  /** Of one good piece, not rounded. */
  readonly unitCost: number;
  /** Rounded to the step. */
  readonly price: number;
}

/**
 * Cost and price of one good piece in a lot.
 *
 * @param good - Good pieces in the lot, a whole number from 1 to 10,000.
 * @param terms - Amounts in one currency, hours of the first piece [h], yield 0.01 to 1, confidence above 0, up to 0.999999.
 * @returns Starts, hours [h], amounts in the same currency.
 * @throws InvalidValue outside the limits of the binomial.
 * Error and source: {@link MONEY}, {@link LEARNING_CURVE}, {@link BINOMIAL_STARTS}.
 */
export function priceBreak(good: number, terms: LotTerms): PriceBreak {
  const { hoursFirst, rate, model, outsideRate, outsideMinimum, outsideSetUp } = terms;
  const starts = startsNeeded(good, terms.yieldShare, terms.confidence);
  const hours = totalHours({ first: hoursFirst, rate, model }, starts);
  const outside = outsideCharge(starts, outsideRate, outsideMinimum, outsideSetUp);
  const cost = lotCost({ ...terms, runHours: hours, outside, quantity: starts });
  const unitCost = cost / good;
  const price = roundMoney(priceAtMargin(unitCost, terms.margin), terms.step, "half up");
  return { starts, hours, outside, cost, unitCost, price };
}
