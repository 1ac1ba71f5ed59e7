import { criticalPoints, criticalRelations } from "../../core/hardening/critical-points";
import { rowFunction } from "../declare";
import { roundedOrBlank } from "../rounded-or-blank";
import { steel } from "../steel-argument";
import { usualHardenC } from "./harden-argument";

export const CRITICAL = rowFunction({
  name: "CRITICAL",
  summary:
    "Where a steel changes on heating (Ac1 and the upper critical) and where martensite starts on cooling (Ms); empty where nothing is published.",
  parameters: { steel, hardenC: usualHardenC },
  result: [
    { label: "Ac1", unit: "°C" },
    { label: "upper critical", unit: "°C" },
    { label: "name of the upper", unit: "text" },
    { label: "Ms", unit: "°C" },
  ],
  relations: criticalRelations,
  compute: ({ steel, hardenC }) => {
    const { ac1, upper, upperName, ms } = criticalPoints(steel, hardenC);
    return [roundedOrBlank(ac1), roundedOrBlank(upper), upperName, roundedOrBlank(ms)];
  },
});
