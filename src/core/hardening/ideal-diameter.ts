import table from "../../data/hardening/a255-factors.json";
import { relation } from "../relation";
import type { Composition } from "../steel/composition";
import { checkElements, elements } from "../steel/element-ranges";
import { number, oneOf, records } from "../table";

/** The elements that the method counts, in the order of the table. */
const COUNTED = ["C", "Mn", "Si", "Ni", "Cr", "Mo", "Cu", "V"] as const;

type Counted = (typeof COUNTED)[number];

const factors = records(table, {
  element: oneOf(COUNTED),
  above: number,
  upTo: number,
  a: number,
  b: number,
  c: number,
  d: number,
});

/** The highest content that the table has a factor for [mass %]. */
function highest(element: Counted): number {
  return Math.max(...factors.filter((factor) => factor.element === element).map(({ upTo }) => upTo));
}

function spanOf(element: Counted): readonly [min: number, max: number] {
  return [element === "C" ? 0.01 : 0, highest(element)];
}

/** Ideal diameter from composition. */
export const IDEAL_DIAMETER = relation({
  title: "Ideal diameter from composition, grain size 7",
  source: "astm-a255",
  locator: table.locator,
  evidence: "standard",
  inputs: elements({
    C: spanOf("C"),
    Mn: spanOf("Mn"),
    Si: spanOf("Si"),
    Ni: spanOf("Ni"),
    Cr: spanOf("Cr"),
    Mo: spanOf("Mo"),
    Cu: spanOf("Cu"),
    V: spanOf("V"),
  }),
  output: { label: "ideal diameter", unit: "mm" },
  error: { size: 2, unit: "mm", kind: "rounding of the printed factors; a heat of steel differs more" },
});

function factorOf(element: Counted, percent: number): number {
  const factor = factors.find(
    ({ element: symbol, above, upTo }) =>
      symbol === element && (percent > above || above === 0) && percent <= upTo,
  );
  if (factor === undefined) return 1;
  const { a, b, c, d } = factor;
  return a + percent * (b + percent * (c + percent * d));
}

/**
 * Diameter of a round that is half martensite at its centre in an ideal quench.
 *
 * @param c - Composition of the austenite [mass %]
 * @returns Ideal diameter [mm], ASTM grain size 7.
 * @throws NotAvailable outside the element ranges of the method.
 * Error and source: {@link IDEAL_DIAMETER}.
 */
export function idealDiameter(c: Composition): number {
  checkElements(IDEAL_DIAMETER, c);
  const inches = COUNTED.reduce((product, element) => product * factorOf(element, c[element]), 1);
  return 25.4 * inches;
}
