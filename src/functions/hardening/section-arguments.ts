import type { SectionInputs } from "../../core/hardening/section-quench";
import type { Values } from "../declare";
import { number, numberOrNothing, optionalNumber, text } from "../parameters";
import { INCHES_UNDER } from "../shape/lengths";
import { steel } from "../steel-argument";
import { quenchOptions } from "./quench-options";

const LENGTH = { quantity: "length", unit: "mm", above: 0, max: 200 } as const;
const RESISTANCE = { quantity: "number", unit: "m²K/W", min: 0, max: 0.1, fallback: 0 } as const;

/** The arguments that describe one blade on its way into the bath. */
export const sectionParameters = {
  steel,
  width: number({
    ...LENGTH,
    inchesUnder: INCHES_UNDER.width,
    label: "width mm",
    help: "Width of the blade from edge to spine.",
  }),
  spine: number({
    ...LENGTH,
    inchesUnder: INCHES_UNDER.thickness,
    label: "spine mm",
    help: "Thickness at the spine when quenched.",
  }),
  edge: number({
    ...LENGTH,
    label: "edge mm",
    help: "Thickness at the edge when quenched, before final grinding.",
  }),
  quench: text({
    ...quenchOptions,
    help: 'Bath in quotes: "fast oil", "oil A", "slow oil", "agitated water", "brine".',
  }),
  clay: optionalNumber({
    ...RESISTANCE,
    label: "clay m²K/W",
    help: "Resistance of the clay above the line: thickness in m over conductivity; calibrate it with SECTION_FIT.",
  }),
  clayLine: optionalNumber({
    quantity: "length",
    unit: "mm",
    min: 0,
    max: 200,
    fallback: 0,
    label: "clay line mm",
    help: "Distance from the edge at which the thick clay starts.",
  }),
  below: optionalNumber({
    ...RESISTANCE,
    label: "below line m²K/W",
    help: "Resistance of the coat between edge and clay line.",
  }),
  transfer: optionalNumber({
    quantity: "number",
    unit: "s",
    min: 0,
    max: 60,
    fallback: 0,
    label: "transfer s",
    help: "Seconds in air between fire and bath.",
  }),
  bathFactor: optionalNumber({
    quantity: "number",
    unit: "",
    above: 0,
    max: 10,
    fallback: 1,
    label: "bath factor",
    help: "How much faster this bath draws heat than the published one; calibrate it with SECTION_FIT.",
  }),
  start: numberOrNothing({
    quantity: "temperature",
    unit: "°C",
    above: 0,
    max: 1300,
    label: "start C",
    help: "Temperature of the blade leaving the fire; the usual hardening temperature where left out.",
  }),
} as const;

/** The arguments as core takes them. */
export function sectionInputs(given: Values<typeof sectionParameters>): SectionInputs {
  return {
    steel: given.steel,
    widthMm: given.width,
    spineMm: given.spine,
    edgeMm: given.edge,
    quench: given.quench,
    clay: given.clay,
    clayLineMm: given.clayLine,
    below: given.below,
    transferS: given.transfer,
    bathFactor: given.bathFactor,
    startC: given.start,
  };
}
