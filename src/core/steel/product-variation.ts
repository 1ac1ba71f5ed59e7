import brackets from "../../data/steel/product-variation.json";
import tables from "../../data/steel/product-variation-tables.json";
import { NotAvailable } from "../refusal";
import type { Relation } from "../relation";
import { number, oneOf, records, sourceKey, text } from "../table";
import { type Bounds, ELEMENTS, type Element } from "./composition";
import { bareName } from "./nominal-carbon";
import { type Grade, SYSTEMS } from "./steel";

/** How far one element of a piece may lie outside the limits of the heat. */
export interface Variation {
  /** Mass % under the minimum and over the maximum. */
  readonly under: number;
  readonly over: number;
  readonly isRecalled: boolean;
}

const pattern = (cell: unknown) => new RegExp(text(cell));

const TABLES = records(tables, {
  name: text,
  system: oneOf(SYSTEMS),
  standard: pattern,
  designation: pattern,
  source: sourceKey,
  words: text,
});

const BRACKETS = records(brackets, {
  table: text,
  element: oneOf(ELEMENTS),
  over: number,
  to: number,
  size: number,
  side: oneOf(["both", "over", "under", "minimum only"]),
  seen: text,
});

type VariationTable = (typeof TABLES)[number];
type Bracket = (typeof BRACKETS)[number];

function tableOf(grade: Grade): VariationTable | undefined {
  const name = bareName(grade);
  return TABLES.find(
    ({ system, standard, designation }) =>
      system === grade.system && standard.test(grade.standard) && designation.test(name),
  );
}

function heldTable(grade: Grade): VariationTable {
  const found = tableOf(grade);
  if (found !== undefined) return found;
  throw new NotAvailable(
    `no permissible variation of product analysis is held for ${grade.standard} (${grade.designation}): ` +
      'compare as "heat", or ask the mill; variations are held for SAE and AISI steels in bars, AISI and EN stainless, ' +
      "EN 10083, EN 10089, EN 10132 and 100Cr6",
  );
}

/** The relation behind the permissible variations of a grade; null where none are held. */
export function variationRelation(grade: Grade): Relation | null {
  const found = tableOf(grade);
  if (found === undefined) return null;
  const { source, words } = found;
  return {
    title: "permissible variation of product analysis",
    source,
    locator: words,
    evidence: "standard",
    inputs: {},
    output: { label: "variation from the limits of the heat", unit: "mass %" },
    error: { size: null, unit: "mass %", kind: "rows that are recalled are named in the verdict" },
    note: "For bars to 65 000 mm² of section; larger ones may vary more. The results of one element in a heat may not lie both above and below its range.",
  };
}

/** The maximum chooses the bracket, else the only limit. */
function holds({ over, to, side }: Bracket, bounds: Bounds): boolean {
  const deciding = bounds.high ?? bounds.low ?? 0;
  const isForMinimum = side === "minimum only";
  return deciding > over && deciding <= to && isForMinimum === (bounds.high === null);
}

/**
 * Permissible variation of one element in a piece.
 *
 * @param grade - The grade ordered.
 * @param element - The element.
 * @param bounds - Its limits by heat analysis; the maximum chooses the bracket, else the only limit.
 * @returns The variation, or null where the table has none for the element: the piece is held to the limits of the heat.
 * @throws NotAvailable where no table is held for the standard of the grade.
 */
export function variationOf(grade: Grade, element: Element, bounds: Bounds): Variation | null {
  const { name } = heldTable(grade);
  const bracket = BRACKETS.find(
    (each) => each.table === name && each.element === element && holds(each, bounds),
  );
  if (bracket === undefined) return null;
  const { size, side, seen } = bracket;
  return {
    under: side === "over" ? 0 : size,
    over: side === "under" ? 0 : size,
    isRecalled: seen !== "read",
  };
}
