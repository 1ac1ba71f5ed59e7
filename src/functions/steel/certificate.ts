import { InvalidValue } from "../../core/refusal";
import { ANALYSIS_KINDS, type AnalysisKind, certificate, type Result } from "../../core/steel/certificate";
import type { Element } from "../../core/steel/composition";
import { limitsRelations } from "../../core/steel/composition-relations";
import { variationRelation } from "../../core/steel/product-variation";
import type { Steel } from "../../core/steel/steel";
import { type Answer, tableFunction } from "../declare";
import { optionalText, rangeParameter } from "../parameters";
import { steel } from "../steel-argument";
import { analysedContents, element } from "./element";

function kindNamed(given: string | number): AnalysisKind {
  const found = ANALYSIS_KINDS.find((kind) => kind === String(given).trim().toLowerCase());
  if (found !== undefined) return found;
  throw new InvalidValue(
    `kind "${given}" given; give "heat" (ladle analysis) or "product" (pieces of the bar)`,
  );
}

/** Pairs elements and figures; an element without a figure was not analysed. */
function paired(
  elements: readonly (Element | undefined)[],
  values: readonly (number | undefined)[],
): Result[] {
  if (elements.length !== values.length)
    throw new InvalidValue(
      `${elements.length} elements but ${values.length} values: give two ranges of equal length`,
    );
  return values.flatMap((value, at) => {
    const symbol = elements[at];
    if (value === undefined) return [];
    if (symbol === undefined) throw new InvalidValue(`value ${at + 1}, ${value} %, has no element beside it`);
    return [{ element: symbol, value }];
  });
}

function rows(given: Steel, results: readonly Result[], kind: AnalysisKind): Answer[][] {
  const { lines, verdict } = certificate(given, results, kind);
  const table: Answer[][] = lines.map(({ element, low, high, value, status }) => [
    element,
    low ?? "",
    high ?? "",
    value ?? "",
    status,
  ]);
  return [...table, ["verdict", "", "", "", verdict]];
}

function relations(given: Steel | null) {
  const variation = given?.grade == null ? null : variationRelation(given.grade);
  return [...limitsRelations(given), ...(variation === null ? [] : [variation])];
}

export const CERTIFICATE = tableFunction({
  name: "CERTIFICATE",
  summary:
    "Holds the figures of a mill certificate against the limits of the grade ordered; the last row is the verdict.",
  parameters: {
    steel,
    elements: rangeParameter({
      ...element,
      label: "elements",
      help: "Range of element symbols: C, Si, Mn, P, S, Cr ...",
    }),
    values: analysedContents,
    kind: optionalText({
      label: "kind",
      kind: "kind of analysis",
      help: '"heat" for the ladle analysis, "product" for pieces of the bar: permissible variations apply, an element may come several times.',
      accepts: '"heat" or "product"',
      fallback: "heat",
      words: ANALYSIS_KINDS,
      find: kindNamed,
    }),
  },
  result: [
    { label: "element", unit: "text" },
    { label: "low", unit: "mass %" },
    { label: "high", unit: "mass %" },
    { label: "value", unit: "mass %" },
    { label: "status", unit: "text" },
  ],
  relations,
  compute: ({ steel, elements, values, kind }) => rows(steel, paired(elements, values), kind),
});
