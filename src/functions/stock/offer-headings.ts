import { InvalidValue } from "../../core/refusal";
import { PRICE_UNITS } from "../../core/stock/offers";
import { quoted } from "../cells";
import { type ChoiceOptions, choice } from "../choice";
import { money } from "../money/arguments";
import { number, numberOrNothing, type Parameter, text, textOrNothing } from "../parameters";
import { steel } from "../steel-argument";
import { sectionNamed } from "./section-text";
import { shopLength } from "./shop-length";

const mm = (label: string, max: number, help: string) =>
  numberOrNothing({ label, quantity: "length", unit: "mm", above: 0, max, help });

/** Steel and cross-section, of what is needed and of what is offered. */
const bar = {
  steel,
  section: textOrNothing({
    label: "section",
    kind: "section",
    help: 'Cross-section of the bar: "50 x 3", "2 x 1/4 in" or "Ø 20"; in place of width and thickness.',
    accepts: 'width × thickness such as "50 x 3", or a diameter such as "Ø 20"',
    find: sectionNamed,
  }),
  width: mm("width", 2000, "Width of the bar in mm."),
  thickness: mm("thickness", 2000, "Thickness of the bar in mm."),
};

/** Headings of the table of what is needed. */
export const NEED_HEADINGS = {
  ...bar,
  length: mm("length", 30_000, "Length of a piece in mm."),
  quantity: numberOrNothing({
    label: "quantity",
    quantity: "count",
    unit: "",
    min: 0,
    max: 100_000,
    whole: true,
    help: "Pieces of that length.",
  }),
  kilograms: numberOrNothing({
    label: "kg",
    quantity: "mass",
    unit: "kg",
    above: 0,
    max: 1e6,
    help: "Mass needed, in place of length and quantity.",
  }),
  inStock: numberOrNothing({
    label: "kg in stock",
    quantity: "mass",
    unit: "kg",
    min: 0,
    max: 1e6,
    help: "Of this steel and section in the rack; repeated figures count once.",
  }),
  barLength: mm("bar length", 30_000, "Length of the bars in the rack in mm."),
};

export const NEED_WORDS: Readonly<Record<string, keyof typeof NEED_HEADINGS>> = {
  grade: "steel",
  starts: "quantity",
  pieces: "quantity",
  "blank length": "length",
  "blank width": "width",
  "blank thickness": "thickness",
  "in the rack": "inStock",
  bar: "barLength",
};

/** Several lengths in one cell stand apart by semicolons: a comma may be a decimal one. */
function lengthsNamed(given: string | number): number[] {
  const lengths =
    typeof given === "number"
      ? [given]
      : given
          .split(/\s*(?:;|\bor\b|\band\b)\s*/i)
          .filter(Boolean)
          .map(shopLength);
  if (lengths.length > 0 && lengths.every((length) => length > 0 && length <= 30_000)) return lengths;
  throw new InvalidValue(
    `bar length ${quoted(given)} given; give lengths above 0 and up to 30000 mm, several as "3000; 6000"`,
  );
}

const per: ChoiceOptions<(typeof PRICE_UNITS)[number]> = {
  label: "per",
  help: "What the price counts: kg, bar, m, lb or ft.",
  words: PRICE_UNITS,
  aliases: { "": "kg", metre: "m", meter: "m", kilogram: "kg", pound: "lb", foot: "ft", piece: "bar" },
};

const amount = (label: string, help: string) => numberOrNothing(money({ label, help }));

const weekText = (given: string | number): string => {
  const isDay = typeof given === "number" && given >= 36_526 && given <= 73_050;
  return isDay ? new Date((given - 25_569) * 86_400_000).toISOString().slice(0, 10) : String(given);
};

/** Bar lengths: the unit of bare figures is the millimetre. */
const barLengths: Parameter<readonly number[] | undefined> = {
  ...textOrNothing<readonly number[]>({
    label: "bar length",
    kind: "length",
    help: 'Bars in stock in mm; several lengths as "3000; 6000". Empty where any mass is sold.',
    accepts: 'a length in mm, or several such as "3000; 6000"',
    find: lengthsNamed,
  }),
  unit: "mm",
};

/** Headings of the table of offers. */
export const OFFER_HEADINGS = {
  supplier: text({
    label: "supplier",
    kind: "name",
    help: "Who offers it.",
    accepts: "a name",
    find: (given) => String(given),
  }),
  ...bar,
  price: number({ ...money({ label: "price", help: "Price of a kg, a bar or a metre." }), min: 0 }),
  per: choice(per),
  barLengths,
  barsInStock: numberOrNothing({
    label: "bars in stock",
    quantity: "count",
    unit: "",
    min: 1,
    max: 1e6,
    whole: true,
    help: "Bars of each length to be had; empty where as many as needed.",
  }),
  minimum: amount(
    "minimum charge",
    "Least amount the supplier charges for the goods of an order; once is enough.",
  ),
  freight: amount("freight", "What the supplier adds once to an order; once is enough."),
  week: textOrNothing({
    label: "week",
    kind: "week",
    help: 'Week or day of delivery, for example "2027-W03".',
    accepts: 'a week or day such as "2027-W03"',
    find: weekText,
  }),
};

export const OFFER_WORDS: Readonly<Record<string, keyof typeof OFFER_HEADINGS>> = {
  grade: "steel",
  "price kg": "price",
  "price a kg": "price",
  "bar lengths": "barLengths",
  "bar lengths mm": "barLengths",
  "bar lengths in stock": "barLengths",
  minimum: "minimum",
  delivery: "week",
  "week of delivery": "week",
};
