import { heatTreatment, heatTreatmentRelations, type Span } from "../../core/hardening/heat-treatment";
import { temperatureText } from "../../core/quantity-text";
import { rowFunction } from "../declare";
import { steel } from "../steel-argument";

const cell = (figure: number | null) => figure ?? "";

function rangeText({ low, high }: Span): string {
  if (low === null || high === null) return "";
  return low === high ? temperatureText(low) : `${temperatureText(low)} to ${temperatureText(high)}`;
}

export const HARDENING = rowFunction({
  name: "HARDENING",
  topic: "Hardening",
  summary:
    "How a grade is normalised, annealed and hardened, and what it reads as quenched, from published sheets; empty where none prints it.",
  parameters: { steel },
  result: [
    { label: "normalise, low", unit: "°C" },
    { label: "normalise, high", unit: "°C" },
    { label: "anneal", unit: "text" },
    { label: "harden, low", unit: "°C" },
    { label: "harden, high", unit: "°C" },
    { label: "soak", unit: "text" },
    { label: "quench", unit: "text" },
    { label: "as quenched, low", unit: "HRC" },
    { label: "as quenched, high", unit: "HRC" },
    { label: "source", unit: "text" },
  ],
  relations: heatTreatmentRelations,
  compute: ({ steel }) => {
    const { normalise, anneal, harden, soak, quench, quenched, source } = heatTreatment(steel);
    return [
      cell(normalise.low),
      cell(normalise.high),
      rangeText(anneal),
      cell(harden.low),
      cell(harden.high),
      soak,
      quench,
      cell(quenched.low),
      cell(quenched.high),
      source,
    ];
  },
  examples: [
    {
      given: ["1095"],
      gives: [855, 855, "800 °C (1472 °F)", 800, 800, "1.5 min for each mm", "oil", 66, 66, "…"],
      source: "Rockblade Kilns, 1095 product page",
    },
    {
      given: ["D2"],
      gives: ["", "", "870 °C (1598 °F)", 995, 1025, "30 to 45 min", "air", 63, 63, "…"],
      source: "Crucible, D2 data sheet",
    },
    {
      given: ["5160"],
      gives: [850, 880, "…", 830, 860, "", "oil", 54, "", "…"],
      source: "Saarstahl, specification sheet 55Cr3 (names SAE 5160); 54 HRC is a floor in the core",
    },
  ],
});
