import { type LearningModel, totalHours } from "../run/learning";
import { startsNeeded } from "../run/starts";
import { lotCost, outsideCharge, priceAtMargin } from "./price";
import { roundMoney } from "./rounding";

/** What a lot of any size costs. Money in one currency. */
export interface LotTerms {
  /** Once a lot [money]. */
  readonly setUp: number;
  /** Of the first piece [h]. */
  readonly hoursFirst: number;
  /** Learning rate: share of the hours after each doubling, above 0 to 1 [-]. */
  readonly rate: number;
  /** How the rate is counted. */
  readonly model: LearningModel;
  /** Cost of an hour of work [money]. */
  readonly hourRate: number;
  /** Of one start [money]. */
  readonly material: number;
  /** An outside shop's charge for one start [money]. */
  readonly outsideRate: number;
  /** Its least charge for a lot [money]. */
  readonly outsideMinimum: number;
  /** What it charges once a lot [money]. */
  readonly outsideSetUp: number;
  /** Share of the price, 0 to below 1 [-]. */
  readonly margin: number;
  /** Step that prices are rounded to, above 0 [money]. */
  readonly step: number;
  /** Share that comes out good, above 0 to 1 [-]. */
  readonly yieldShare: number;
  /** Chance wanted of enough good pieces, above 0 to below 1 [-]. */
  readonly confidence: number;
}

export interface PriceBreak {
  /** Pieces to start for the lot [-]. */
  readonly starts: number;
  /** Bench hours of all starts [h]. */
  readonly hours: number;
  /** Outside shop's charge for the whole lot [money]. */
  readonly outside: number;
  /** Of the whole lot [money]. */
  readonly cost: number;
  /** Of one good piece, not rounded [money]. */
  readonly unitCost: number;
  /** Of one good piece, rounded to the step [money]. */
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
