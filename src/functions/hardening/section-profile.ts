import { quenchSection } from "../../core/hardening/section-quench";
import { sectionPoints, UNDER_SCALE } from "../../core/hardening/section-report";
import { tableFunction } from "../declare";
import { sectionInputs, sectionParameters } from "./section-arguments";
import { sectionRelations } from "./section-relations";

export const SECTION_PROFILE = tableFunction({
  name: "SECTION_PROFILE",
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
});
