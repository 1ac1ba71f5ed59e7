import { USUAL_LINE } from "../../core/run/line";
import { askIfPercent } from "../../core/run/starts";
import { USUAL_TONG_HOLD } from "../../core/stock/forge-length";
import { choiceOrNothing } from "../choice";
import { money } from "../money/arguments";
import { numberOrNothing, optionalNumber } from "../parameters";
import { length } from "../shape/lengths";
import { kerf, trim } from "../stock/arguments";
import { dateOrNothing } from "./dates";
import { learningRate, modelOptions } from "./learning-arguments";

/** The blank and the bar it is cut from. */
export const stockHeadings = {
  blankLength: numberOrNothing(
    length({
      label: "blank length",
      above: 0,
      help: "Cut from the bar for one piece in mm, tang included; the length of the blade where left out.",
    }),
  ),
  blankWidth: numberOrNothing(
    length({ label: "blank width", above: 0, help: "Width of the bar in mm; of the blade where left out." }),
  ),
  blankThickness: numberOrNothing(
    length({
      label: "blank thickness",
      above: 0,
      help: "Thickness of the bar in mm; of the blade where left out.",
    }),
  ),
  barLength: numberOrNothing(
    length({ label: "bar length", above: 0, max: 30_000, help: "Of the bars, in mm." }),
  ),
  forgedVolume: numberOrNothing({
    label: "forged mm³",
    quantity: "volume",
    unit: "mm³",
    above: 0,
    max: 1e9,
    help: `Finished volume of a forged blade with its tang in mm³; its blank may be shorter, and is worked out as FORGE_LENGTH does where left out, ${USUAL_TONG_HOLD} mm of tong hold added.`,
  }),
  kerf,
  trim,
};

/** An amount whose 0 means that none is given: an empty cell of a range may arrive as one. */
function above0(options: { label: string; help: string }) {
  return { ...money(options), above: 0 };
}

function share(label: string, help: string, max: number) {
  return { label, help, quantity: "fraction", unit: "", min: 0, max, askOver: askIfPercent } as const;
}

/** Hours and money. */
export const costHeadings = {
  priceKg: numberOrNothing(above0({ label: "price kg", help: "Price of the steel a kg." })),
  priceDate: dateOrNothing({
    label: "price date",
    help: 'When that price was quoted: a date, or "2026-03-31".',
  }),
  hoursFirst: numberOrNothing({
    label: "hours first",
    quantity: "time",
    unit: "h",
    above: 0,
    max: 100_000,
    help: "Bench hours of the first piece.",
  }),
  rate: optionalNumber({
    ...learningRate("Share of the hours left each time the count doubles; 1 where hours do not fall."),
    fallback: USUAL_LINE.rate,
  }),
  model: choiceOrNothing({
    ...modelOptions,
    help: "unit (the rate is that of single pieces) or average (of the mean of all so far); needed beside a rate.",
  }),
  setUpHours: optionalNumber({
    label: "set-up h",
    quantity: "time",
    unit: "h",
    min: 0,
    fallback: USUAL_LINE.setUpHours,
    help: "Bench hours once a line: warming up, jigs.",
  }),
  hourRate: numberOrNothing(above0({ label: "hour rate", help: "Cost of one bench hour." })),
  overheadRate: optionalNumber({
    ...money({ label: "overhead rate", help: "Overhead for each bench hour." }),
    fallback: USUAL_LINE.overheadRate,
  }),
  costAStart: optionalNumber({
    ...money({ label: "cost a start", help: "Belts and the like for each piece begun." }),
    fallback: USUAL_LINE.costAStart,
  }),
  costAGoodOne: optionalNumber({
    ...money({ label: "cost a good one", help: "Fittings, packing and the like for each good piece." }),
    fallback: USUAL_LINE.costAGoodOne,
  }),
  energyPrice: numberOrNothing(above0({ label: "kWh price", help: "Price of one kWh." })),
  outsideHeat: numberOrNothing(
    above0({
      label: "outside heat",
      help: "Charge of an outside heat treater for the line; loads and kWh then stay empty.",
    }),
  ),
  margin: numberOrNothing({
    ...share("margin", "Share of the price that is wanted after the cost, 0.35 or 35 %.", 0.99),
    above: 0,
  }),
  price: numberOrNothing(above0({ label: "price", help: "Price of one good blade, where it is fixed." })),
  priceStep: optionalNumber({
    ...money({ label: "price step", help: "Smallest step of the price worked out from the margin." }),
    min: 0.01,
    fallback: USUAL_LINE.priceStep,
  }),
};
