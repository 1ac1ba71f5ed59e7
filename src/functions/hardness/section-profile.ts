import { quenchSection } from "../../core/hardening/section-quench";
import { sectionPoints, UNDER_SCALE } from "../../core/hardening/section-report";
import { tableFunction } from "../declare";
import { sectionInputs, sectionParameters } from "./section-arguments";
import { sectionRelations } from "./section-relations";

export const SECTION_PROFILE = tableFunction({
  name: "SECTION_PROFILE",
  topic: "Hardening",
  summary: "Hardness from edge to spine after the quench, with a band that covers 90 %; bare or under clay.",
  parameters: sectionParameters,
  result: [
    { label: "from edge", unit: "mm" },
    { label: "low", unit: "HRC" },
    { label: "likely", unit: "HRC" },
    { label: "high", unit: "HRC" },
  ],
  relations: sectionRelations,
  compute: (given) =>
    sectionPoints(quenchSection(sectionInputs(given))).map(({ fromEdgeMm, low, likely, high }) => [
      fromEdgeMm,
      low ?? UNDER_SCALE,
      likely ?? UNDER_SCALE,
      high ?? UNDER_SCALE,
    ]),
  examples: [
    {
      given: ["1084", 30, 4, 0.5, "fast oil"],
      gives: Array.from({ length: 30 }, (_, column) => [column + 0.5, 63.8, 65.8, 67.8]),
      within: 1.5,
      source:
        "a separate program for the same conduction: 4 mm 1084 in fast oil is fully hard, 65.8 HRC, from edge to spine, 2 HRC allowed either way",
    },
  ],
});
