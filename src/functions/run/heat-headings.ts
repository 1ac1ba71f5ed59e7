import { readHardness } from "../../core/hardness/read-hardness";
import { USUAL_LINE } from "../../core/run/line";
import { ORDERED_CYCLES } from "../../core/tempering/hollomon-jaffe";
import { usualHardenC } from "../hardening/harden-argument";
import { quenchOptions } from "../hardening/quench-options";
import { quenchToC } from "../hardening/quench-to-argument";
import { kilograms, share } from "../money/arguments";
import { numberOrNothing, optionalNumber, textOrNothing } from "../parameters";
import { length } from "../shape/lengths";
import { HRC_SPAN, TEMPER_SPAN, TIME_SPAN } from "../tempering/treatment";
import { typedTemperOrNothing } from "../tempering/typed-temper";

const kilowattHours = { quantity: "number", unit: "kWh", above: 0 } as const;

/** Target, quench, temper and furnace. */
export const heatHeadings = {
  target: textOrNothing({
    label: "target HRC",
    kind: "hardness requirement",
    help: 'Hardness wanted in HRC: 60, "58-60" or "60 ±1"; the aim of the use where left out.',
    accepts: 'a hardness in HRC from 20 to 68, or a span in quotes such as "58-60"',
    find: (given) => readHardness(given).aim,
  }),
  quench: textOrNothing({
    ...quenchOptions,
    help: "Quench, one of the words that QUENCHES() lists.",
  }),
  hardenC: usualHardenC,
  sectionMm: numberOrNothing(
    length({
      label: "hardened mm",
      above: 0,
      help: "Thickest place when it goes into the quench, in mm; the thickness of the blade where left out.",
    }),
  ),
  chosenC: typedTemperOrNothing(
    numberOrNothing({
      label: "chosen temper C",
      ...TEMPER_SPAN,
      help: "Temper that you chose in °C; worked out for the target where left out.",
    }),
  ),
  temperHours: optionalNumber({
    label: "temper hours",
    ...TIME_SPAN,
    fallback: USUAL_LINE.temperHours,
    help: "Time of one temper in hours.",
  }),
  temperCycles: optionalNumber({
    label: "temper cycles",
    quantity: "count",
    unit: "",
    min: 1,
    max: 10,
    whole: true,
    fallback: USUAL_LINE.temperCycles,
    help: `Number of equal tempers; the planning workbook types ${ORDERED_CYCLES} for every line, a table that names none counts ${USUAL_LINE.temperCycles}.`,
  }),
  knownC: numberOrNothing({
    label: "known C",
    ...TEMPER_SPAN,
    help: "Temper that a blade of this batch already had, in °C.",
  }),
  knownHrc: numberOrNothing({ label: "known HRC", ...HRC_SPAN, help: "What that blade read in HRC." }),
  quenchToC,
  subZeroHours: numberOrNothing({
    label: "sub-zero h",
    ...TIME_SPAN,
    help: "Hours at the coldest temperature, straight from the quench.",
  }),
  clayMm: numberOrNothing(
    length({
      label: "clay mm",
      above: 0,
      help: "Thickness of the clay on a blade hardened at its edge, in mm.",
    }),
  ),
  clayFromMm: numberOrNothing(
    length({
      label: "clay from mm",
      above: 0,
      help: "Distance from the edge at which the clay begins, in mm.",
    }),
  ),
  recipe: textOrNothing({
    label: "recipe",
    kind: "recipe",
    help: "Recipe in your own words; lines of one recipe share loads. Worked out as RECIPE does where left out.",
    accepts: "the recipe in words",
    find: (given) => String(given),
  }),
  hardenMass: numberOrNothing({
    label: "harden g",
    quantity: "mass",
    unit: "g",
    above: 0,
    help: "Mass of one piece when it is hardened in g; that of the blank where left out.",
  }),
  piecesALoad: numberOrNothing({
    label: "pieces a load",
    quantity: "count",
    unit: "",
    whole: true,
    above: 0,
    help: "Pieces of this line that the furnace holds at a time.",
  }),
  massALoad: numberOrNothing(
    kilograms({ label: "kg a load", help: "Mass that the furnace or the oil takes at a time, in kg." }),
  ),
  efficiency: optionalNumber({
    ...share({ label: "efficiency", help: "Share of the furnace's energy that ends up in the steel." }),
    fallback: USUAL_LINE.efficiency,
  }),
  holdEnergy: numberOrNothing({
    label: "hold kWh",
    ...kilowattHours,
    help: "Energy of one load for holding and tempering, on top of heating up, in kWh.",
  }),
  meteredEnergy: numberOrNothing({
    label: "kWh a load",
    ...kilowattHours,
    help: "Energy of one load as metered, everything in it; then nothing is estimated.",
  }),
  ovenHours: numberOrNothing({
    label: "oven h",
    quantity: "time",
    unit: "h",
    above: 0,
    help: "Hours that one load keeps the ovens, heating up and tempering in it.",
  }),
};
