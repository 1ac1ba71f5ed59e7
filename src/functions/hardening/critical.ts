import { criticalPoints, criticalRelations } from "../../core/hardening/critical-points";
import { rowFunction } from "../declare";
import { steel } from "../steel-argument";
import { usualHardenC } from "./harden-argument";

const whole = (celsius: number | null) => (celsius === null ? "" : Math.round(celsius));

export const CRITICAL = rowFunction({
  name: "CRITICAL",
  topic: "Hardening",
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
    return [whole(ac1), whole(upper), upperName, whole(ms)];
  },
  examples: [
    {
      given: ["C 0.465 Mn 0.75 Si 0.22"],
      gives: [721, 783, "Ac3", 323],
      within: 4,
      source:
        "Andrews 721; iron-carbon line 773.8 with 0.22 % Si (+9.8); van Bohemen's equation at the middle of 1045, 323",
    },
    {
      given: ["C 1.0 Mn 0.35 Si 0.25 Cr 1.45", 845],
      gives: [751, 893, "Acm", 200],
      within: 4,
      source: "Andrews 751; full equilibrium calculation 893; van Bohemen on what is dissolved 200",
    },
    { given: ["H13"], gives: [830, 915, "as printed", 300], source: "Lucefin, technical card 1.2344" },
    {
      given: ["440C", 1040],
      gives: ["", "", "", 228],
      within: 10,
      source: "Finkler and Schirra on 0.376 % C and 12.0 % Cr",
    },
  ],
});
