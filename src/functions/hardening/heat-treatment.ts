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
});
