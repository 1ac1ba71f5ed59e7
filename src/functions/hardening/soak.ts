import { HEAT_UP, SOAK_FAMILIES, SOAK_RULE, soakMinutes } from "../../core/hardening/soak";
import { findSteel } from "../../core/steel/find";
import type { Family } from "../../core/steel/steel";
import { rowFunction } from "../declare";
import { number, optionalText } from "../parameters";

/** A kind of steel by its name, or that of a grade. */
function findFamily(given: string | number): Family {
  const word = String(given).trim().toLowerCase();
  return SOAK_FAMILIES.find((family) => family === word) ?? findSteel(given).family;
}

const toTenth = (minutes: number) => Math.round(minutes * 10) / 10;

export const SOAK = rowFunction({
  name: "SOAK",
  summary:
    "Minutes in the furnace: time for the steel to come within 10 °C (18 °F) of it, soak after that, and both together.",
  parameters: {
    thickness: number({
      label: "thickness mm",
      quantity: "length",
      unit: "mm",
      above: 0,
      max: 1000,
      help: "Thickness of the blade at its thickest in mm, both faces free.",
    }),
    furnaceC: number({
      label: "furnace C",
      quantity: "temperature",
      unit: "°C",
      above: 20,
      max: 1400,
      help: "Temperature of the furnace in °C; a tempering oven gives the heat-up alone.",
    }),
    family: optionalText({
      label: "family",
      kind: "kind of steel or grade",
      help: `Kind of steel (${SOAK_FAMILIES.join(", ")}) or a grade.`,
      accepts: `${SOAK_FAMILIES.join(", ")}, or a grade`,
      fallback: "plain carbon",
      find: findFamily,
    }),
  },
  result: [
    { label: "heat-up", unit: "min" },
    { label: "soak", unit: "min" },
    { label: "total", unit: "min" },
  ],
  relations: [HEAT_UP, SOAK_RULE],
  compute: ({ thickness, furnaceC, family }) => {
    const { heatUp, soak, total } = soakMinutes(thickness, furnaceC, family);
    return [toTenth(heatUp), soak === null ? "" : toTenth(soak), toTenth(total)];
  },
});
