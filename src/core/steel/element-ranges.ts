import { checkRange, type Inputs, type Limit, type Relation } from "../relation";
import { type Composition, ELEMENTS, type Element } from "./composition";

/** Names of the elements, as sentences use them. */
const NAMES: Readonly<Record<Element, string>> = {
  C: "carbon",
  Si: "silicon",
  Mn: "manganese",
  P: "phosphorus",
  S: "sulphur",
  Cr: "chromium",
  Ni: "nickel",
  Mo: "molybdenum",
  V: "vanadium",
  W: "tungsten",
  Co: "cobalt",
  Cu: "copper",
  Al: "aluminium",
  N: "nitrogen",
};

/** The content of one element over which a relation may be used [mass %]. */
export interface ElementLimit extends Limit {
  readonly min: number;
  readonly max: number;
}

type Spans = Readonly<Partial<Record<Element, readonly [min: number, max: number]>>>;

export type ElementLimits<S extends Spans> = { readonly [E in keyof S & Element]: ElementLimit };

/**
 * The element ranges of a relation, keyed by symbol: `{ ...elements({ Cr: [0, 1.8] }) }`.
 *
 * @param spans - Lowest and highest content of each element [mass %].
 */
export function elements<const S extends Spans>(spans: S): ElementLimits<S> {
  const limits: Partial<Record<Element, ElementLimit>> = {};
  for (const symbol of Object.keys(spans) as Element[]) {
    const [min, max] = spans[symbol] as readonly [number, number];
    limits[symbol] = { label: NAMES[symbol], unit: "%", min, max };
  }
  return limits as ElementLimits<S>;
}

/**
 * Refuses a composition outside the element ranges of a relation, which are its inputs named by a
 * symbol; they are checked in the order in which the relation lists them.
 *
 * @param relation - The relation about to be used.
 * @param composition - What the steel holds [mass %].
 * @param only - The elements to check, in this order, where not all of them are asked.
 * @throws NotAvailable naming element, content, range and source.
 */
export function checkElements<I extends Inputs>(
  relation: Relation<I>,
  composition: Composition,
  only: readonly (keyof I & Element)[] = elementsOf(relation),
): void {
  for (const element of only) checkRange(relation, element, composition[element]);
}

function elementsOf<I extends Inputs>({ inputs }: Relation<I>): readonly (keyof I & Element)[] {
  const names: readonly string[] = ELEMENTS;
  return Object.keys(inputs).filter((name): name is keyof I & Element => names.includes(name));
}
