import { tableFunction } from "../declare";
import { PLAN_HEADINGS } from "./plan-headings";

function need(optional: boolean, fallbackText: string): string {
  if (!optional) return "needed";
  return fallbackText === "" ? "may be left out" : `${fallbackText} where left out`;
}

export const RUN_HEADINGS = tableFunction({
  name: "RUN_HEADINGS",
  summary: "Every heading that RUN_PLAN reads: heading, unit, whether it is needed, meaning.",
  parameters: {},
  result: [
    { label: "heading", unit: "text" },
    { label: "unit", unit: "text" },
    { label: "needed", unit: "text" },
    { label: "meaning", unit: "text" },
  ],
  relations: [],
  compute: () =>
    Object.values(PLAN_HEADINGS).map(({ label, unit, optional, fallbackText, help }) => [
      label,
      unit,
      need(optional, fallbackText),
      help,
    ]),
});
