import { boundsOf } from "../../core/steel/bounds";
import { carbonOf } from "../../core/steel/carbon";
import { ELEMENTS, type Element } from "../../core/steel/composition";
import { limitsRelations } from "../../core/steel/composition-relations";
import type { Steel } from "../../core/steel/steel";
import { type Answer, scalarFunction } from "../declare";
import { steel } from "../steel-argument";
import { bound } from "./bound";
import { elementOrNothing } from "./element";

/** True where something is known of an element: a limit, a figure, or the silicon assumed for plain carbon steel. */
function isKnown(steel: Steel, element: Element): boolean {
  const { low, high } = boundsOf(steel, element);
  return low !== null || high !== null || steel.composition[element] > 0;
}

/** Empty where nothing is specified: an element without a limit is not an element without content. */
function typical(steel: Steel, element: Element): Answer {
  if (element === "C") return carbonOf(steel);
  return isKnown(steel, element) ? steel.composition[element] : "";
}

function tableRow(steel: Steel, element: Element): Answer[] {
  const { low, high } = boundsOf(steel, element);
  const isOpen = Number.isNaN(steel.composition[element]);
  return [element, low ?? "", high ?? "", isOpen ? "" : typical(steel, element)];
}

export const COMPOSITION = scalarFunction({
  name: "COMPOSITION",
  topic: "Steel",
  summary:
    "Limits of an element by heat analysis and the figure that the other functions use; without an element, the whole table.",
  parameters: {
    steel,
    element: elementOrNothing,
    bound: bound(
      '"typical" for the figure that the other functions use (a maximum alone counts as 0), "low" or "high" for the limits.',
      ["typical", "low", "high"],
    ),
  },
  result: { label: "content", unit: "mass %" },
  relations: limitsRelations,
  compute: ({ steel, element, bound }) => {
    if (element === undefined) return "";
    return bound === "typical" ? typical(steel, element) : (boundsOf(steel, element)[bound] ?? "");
  },
  listing: {
    whenBlank: "element",
    result: [
      { label: "element", unit: "text" },
      { label: "low", unit: "mass %" },
      { label: "high", unit: "mass %" },
      { label: "typical", unit: "mass %" },
    ],
    compute: ({ steel }) =>
      ELEMENTS.filter((element) => isKnown(steel, element)).map((element) => tableRow(steel, element)),
  },
  examples: [
    { given: ["5160", "Cr", "low"], gives: 0.7, source: "SAE J404: Cr 0.70-0.90" },
    { given: ["5160", "Cr"], gives: 0.8, source: "SAE J404: Cr 0.70-0.90, middle" },
    { given: ["O1", "W", "high"], gives: 0.6, source: "ASTM A681: W 0.40-0.60" },
    { given: ["304", "C", "low"], gives: "", source: "SAE J405 sets a maximum only" },
    { given: ["1095", "Si"], gives: 0.22, source: "common practice, no source: SAE J403 sets no silicon" },
    { given: ["C 0.62 Mn 0.75", "Mn"], gives: 0.75, source: "as given" },
    {
      given: ["1095"],
      gives: [
        ["C", 0.9, 1.03, 0.95],
        ["Si", "", "", 0.22],
        ["Mn", 0.3, 0.5, 0.4],
        ["P", "", 0.04, 0],
        ["S", "", 0.05, 0],
      ],
      source: "SAE J403 and ASTM A29; silicon by common practice, no source",
    },
  ],
});
