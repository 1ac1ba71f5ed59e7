import { stainless, stainlessRelations } from "../../core/steel/stainless";
import { rowFunction } from "../declare";
import { numberOrNothing } from "../parameters";
import { steel } from "../steel-argument";

export const STAINLESS = rowFunction({
  name: "STAINLESS",
  summary:
    "Whether a hardened steel keeps enough chromium in solution to be stainless; the rest is locked up in carbide.",
  parameters: {
    steel,
    hardenC: numberOrNothing({
      label: "harden C",
      quantity: "temperature",
      unit: "°C",
      above: 0,
      max: 1300,
      help: "Hardening temperature; left out, the middle of the grade's hardening window.",
    }),
  },
  result: [
    { label: "chromium in all", unit: "mass %" },
    { label: "dissolved chromium", unit: "mass %" },
    { label: "PREN of the dissolved", unit: "" },
    { label: "verdict", unit: "text" },
  ],
  relations: stainlessRelations,
  compute: ({ steel, hardenC }) => {
    const { bulk, dissolved, pren, verdict } = stainless(steel, hardenC);
    return [bulk, dissolved ?? "", pren ?? "", verdict];
  },
});
