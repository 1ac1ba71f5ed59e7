import { describe, expect, test } from "vitest";
import { Refusal } from "../../src/core/refusal";
import { catalogue } from "../../src/functions/catalogue";
import { across, numericArguments, type OneArgument } from "./one-argument";

/*
 * A hidden clamp shows as an answer that changes over most of an argument's span and stands still at its
 * end. Where it stands still by nature, the reason stands here.
 */
const STANDS_STILL: Readonly<Record<string, string>> = {
  "ACCEPT_CHANCE, sample": "a chance of 0",
  "ACCEPT_CHANCE, accept": "the span is tried in steps that round to 0 twice",
  "CHANCE_OF_ENOUGH, starts": "chances of 0 and 1",
  "CHANCE_OF_ENOUGH, good": "chances of 1 and 0",
  "CUT_PLAN, kerf": "lengths are counted in tenths of a millimetre",
  "CUT_PLAN, trim": "lengths are counted in tenths of a millimetre",
  "CUT_PLAN, keep off-cut": "no off-cut is as long as that, or every one is",
  "DECARB, minutes": "depths are given to 0.01 mm",
  "FULLERED_AREA, a side": "1 or 2, tried more than once",
  "FULLERED_AREA, sides": "1 or 2, tried more than once",
  "GRIND_ALLOWANCE, minutes": "depths are given to 0.01 mm",
  "LOADS, pieces a load": "everything goes into one load",
  "LOADS, kg a load": "everything goes into one load",
  "OUTSIDE_CHARGE, quantity": "the minimum charge stands",
  "OUTSIDE_CHARGE, rate": "the minimum charge stands",
  "OUTSIDE_CHARGE, minimum": "the rate exceeds the minimum",
  "PRICE_BREAKS, outside rate": "the minimum charge stands",
  "PRICE_BREAKS, outside minimum": "the rate exceeds the minimum",
  "PRICE_BREAKS, step": "a step above every price",
  "RETAINED, quench to C": "above the martensite start all of it stays austenite",
  "ROUND_MONEY, step": "a step above the amount rounds to 0",
  "SECTION_FIT, clay m²K/W": "where the search for the clay begins",
  "SECTION_PROFILE, bath factor": "nothing hardens",
  "SECTION_QUENCH, spine mm": "hardens through",
  "SECTION_QUENCH, clay m²K/W": "nothing hardens",
  "SECTION_QUENCH, transfer s": "hardens through",
  "SECTION_QUENCH, bath factor": "nothing hardens, or all of it",
  "STARTS_BY_PROFIT, yield": "not worth starting",
  "STEEL_ORDER, kerf": "lengths are counted in tenths of a millimetre",
  "STEEL_ORDER, trim": "lengths are counted in tenths of a millimetre",
  "TEMPERED_HRC, cycles": "hardness is given to 0.1 HRC",
  "TEMPERED_RANGE, hours": "ends are given in whole HRC",
  "TEMPER_CURVE, step C": "only the first point is left",
  "YIELD_FLOOR, good": "the span is tried in steps that round to 0 twice",
};

/** The figures of the answer, as one text; `undefined` where any cell of it is refused or it has none. */
function figures({ ask }: OneArgument, value: number): string | undefined {
  const cells = ask(value).flat();
  if (cells.some((cell) => cell instanceof Refusal)) return undefined;
  const numbers = cells.filter((cell) => typeof cell === "number");
  return numbers.length === 0 ? undefined : JSON.stringify(numbers);
}

/** Whether answers differ along the span and yet the last two or the first two are the same. */
function standsStill(one: OneArgument): boolean {
  const values = across(one.span, one.parameter.kind === "count");
  const answers = values.map((value) => figures(one, value)).filter((text) => text !== undefined);
  if (answers.length < 4 || new Set(answers).size === 1) return false;
  return answers[0] === answers[1] || answers[answers.length - 1] === answers[answers.length - 2];
}

describe("no argument is held back at the end of its span", () => {
  const cases = catalogue
    .flatMap(numericArguments)
    .filter(({ parameter }) => parameter.takes === "cell")
    .map((one) => [`${one.fn.name}, ${one.parameter.label}`, one] as const);

  test.each(cases)("%s", (name, one) => {
    expect(standsStill(one) && STANDS_STILL[name] === undefined).toBe(false);
  });

  test("every exception is needed", () => {
    const needed: readonly string[] = cases.filter(([, one]) => standsStill(one)).map(([name]) => name);
    expect(Object.keys(STANDS_STILL).filter((name) => !needed.includes(name))).toEqual([]);
  });
});
