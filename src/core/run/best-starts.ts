import { numberText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { relation } from "../relation";
import { BINOMIAL_STARTS, chancesOfEnough } from "./starts";

/** Starts by expected gain. */
export const BEST_STARTS = relation({
  title: "Number to start for the highest expected gain",
  source: "reject-allowance",
  locator: "one more is started as long as it brings in more than it costs",
  evidence: "standard",
  inputs: { good: BINOMIAL_STARTS.inputs.good, yield: BINOMIAL_STARTS.inputs.yield },
  output: { label: "starts", unit: "" },
  error: { size: 0, unit: "", kind: "exact if each blade fails on its own and the yield is right" },
  note: "An average over many such orders; a single order may end with too few. Compare with STARTS.",
});

/** An order of few and dear blades. Money in one currency. */
export interface DearOrder {
  /** Good blades ordered, whole, 1 and more [-]. */
  readonly good: number;
  /** Share that comes out good, 0.01 to 1 [-]. */
  readonly yield: number;
  /** Of one start [money]. */
  readonly cost: number;
  /** Of one good blade ordered [money]. */
  readonly price: number;
  /** What a good blade over the order brings [money]. */
  readonly spare: number;
  /** For each good blade that is missing, beside the price that is not earned [money]. */
  readonly penalty: number;
}

export interface BestStarts {
  /** Blades to start [-]. */
  readonly starts: number;
  /** Expected over many such orders [money]. */
  readonly gain: number;
}

function checkOrder(order: DearOrder): void {
  const { spare, price, penalty, cost } = order;
  if (spare > price + penalty) {
    throw new InvalidValue(
      `spare ${numberText(spare)} is more than price and penalty together, ${numberText(price + penalty)}: ` +
        "a blade over the order would be worth more than one of it",
    );
  }
  if (order.yield * spare >= cost) {
    throw new InvalidValue(
      `spares at ${numberText(spare)} pay for themselves (cost ${numberText(cost)} at yield ${numberText(order.yield)}): ` +
        "there is no best number, start as many as you can sell",
    );
  }
}

/**
 * Number of starts with the highest expected gain. Each further start brings in its yield times what a
 * good blade is then worth (price and penalty while blades are missing, the spare value after) and
 * costs its cost; since that worth only falls, the first start that does not pay is past the best.
 *
 * @param order - Good blades wanted, yield 0.01 to 1, amounts in one currency.
 * @returns Starts and expected gain [same currency]; 0 starts and the penalties where no start pays.
 * @throws InvalidValue for figures without a best number, or outside the limits of the binomial.
 * Error and source: {@link BEST_STARTS}.
 */
export function bestStarts(order: DearOrder): BestStarts {
  const { good, price, penalty, spare, cost } = order;
  checkOrder(order);
  const enoughFrom = chancesOfEnough(good, order.yield);
  let gain = 0 - penalty * good;
  let starts = 0;
  for (;;) {
    const enough = starts < good ? 0 : (enoughFrom.next().value as number);
    const worth = (price + penalty) * (1 - enough) + spare * enough;
    const more = order.yield * worth - cost;
    if (more <= 0) return { starts, gain };
    gain += more;
    starts += 1;
  }
}
