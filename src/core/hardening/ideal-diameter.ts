import table from "../../data/hardening/a255-factors.json";
import { checkRange, type Limit, type Relation } from "../relation";
import type { Composition, Element } from "../steel/composition";

type Factor = readonly [
  element: Element,
  above: number,
  upTo: number,
  a: number,
  b: number,
  c: number,
  d: number,
];

const factors = table.rows as unknown as readonly Factor[];

const NAMES: Partial<Record<Element, string>> = {
  C: "carbon",
  Mn: "manganese",
  Si: "silicon",
  Ni: "nickel",
  Cr: "chromium",
  Mo: "molybdenum",
  Cu: "copper",
  V: "vanadium",
};

const limits: Record<string, Limit> = {};
for (const [element, , upTo] of factors) {
  const min = element === "C" ? 0.01 : 0;
  limits[element] = { label: NAMES[element] ?? element, unit: "%", min, max: upTo };
}

/** Ideal diameter from composition. */
export const IDEAL_DIAMETER: Relation = {
  title: "Ideal diameter from composition, grain size 7",
  source: "astm-a255",
  locator: table.locator,
  evidence: "standard",
  inputs: limits,
  output: { label: "ideal diameter", unit: "mm" },
  error: { size: 2, unit: "mm", kind: "rounding of the printed factors; a heat of steel differs more" },
};

function factorOf(element: Element, percent: number): number {
  const row = factors.find(
    ([symbol, above, upTo]) => symbol === element && (percent > above || above === 0) && percent <= upTo,
  );
  if (row === undefined) return 1;
  const [, , , a, b, c, d] = row;
  return a + percent * (b + percent * (c + percent * d));
}

/**
 * Diameter of a round that is half martensite at its centre in an ideal quench.
 *
 * @param c - Composition of the austenite in mass %.
 * @returns Ideal diameter in mm, ASTM grain size 7.
 * @throws NotAvailable outside the element ranges of the method.
 */
export function idealDiameter(c: Composition): number {
  let inches = 1;
  for (const element of Object.keys(limits) as Element[]) {
    checkRange(IDEAL_DIAMETER, element, c[element]);
    inches *= factorOf(element, c[element]);
  }
  return 25.4 * inches;
}
