import { boundsOf } from "../../core/steel/bounds";
import { statedCarbon } from "../../core/steel/carbon";
import { ELEMENTS, type Element } from "../../core/steel/composition";
import { limitsRelations } from "../../core/steel/composition-relations";
import type { Steel } from "../../core/steel/steel";
import { hasOpenCarbon } from "../../core/steel/typical";
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
  if (element === "C") return statedCarbon(steel);
  return isKnown(steel, element) ? steel.composition[element] : "";
}

function tableRow(steel: Steel, element: Element): Answer[] {
  const { low, high } = boundsOf(steel, element);
  const isOpen = element === "C" && steel.grade !== null && hasOpenCarbon(steel.grade);
  return [element, low ?? "", high ?? "", isOpen ? "" : typical(steel, element)];
}

export const COMPOSITION = scalarFunction({
  name: "COMPOSITION",
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
});
