import table from "../../data/tempering/oxide-colours.json";
import { celsiusOf, temperatureText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import { checkRange, relation } from "../relation";
import { grouped, number, oneOf, records, sourceKey, text } from "../table";

/** Colour of the oxide. */
export const OXIDE_COLOURS = relation({
  title: "Oxide colour after a short temper in air",
  source: "sheffield-gauge-plate",
  locator: "three lists together",
  evidence: "compiled",
  inputs: { temperC: { label: "temper", unit: "°C", min: 199, max: 332 } },
  output: { label: "colour", unit: "text" },
  error: {
    size: 20,
    unit: "°C",
    kind: "lists differ by 10 to 20 °C; time, surface and alloy move it further",
  },
  note: "Clean carbon steel, daylight. Stainless shows the same colours far hotter. A colour is no measurement of hardness.",
});

const printed = records(table, {
  colour: text,
  wordsOfList: text,
  source: sourceKey,
  low: number,
  high: number,
  unit: oneOf(["°C", "°F"]),
});

/** A colour with the tempers that lists print for it [°C] */
export interface ColourSpan {
  readonly colour: string;
  /** Coolest temper printed for it [°C]. */
  readonly low: number;
  /** Hottest temper printed for it [°C]. */
  readonly high: number;
}

const celsius = (value: number, unit: string) => (unit === "°F" ? celsiusOf(value) : value);

/** From the lowest to the highest figure that any list prints for a colour, coolest colour first. */
const SPANS: readonly ColourSpan[] = [...grouped(printed, ({ colour }) => colour)].map(([colour, lists]) => ({
  colour,
  low: Math.min(...lists.map(({ low, unit }) => celsius(low, unit))),
  high: Math.max(...lists.map(({ high, unit }) => celsius(high, unit))),
}));

/**
 * The colours in the order in which they come, each from where it follows the one before to where the next follows
 * it: halfway between the middles of neighbours.
 *
 * @returns Colour with its ends [°C], coolest first, without gaps.
 * Limits: those of the lists, 199 to 332 [°C].
 * Error and source: {@link OXIDE_COLOURS}.
 */
export function oxideColours(): readonly ColourSpan[] {
  const middles = SPANS.map(({ low, high }) => (low + high) / 2);
  const between = (at: number) => ((middles[at - 1] ?? 0) + (middles[at] ?? 0)) / 2;
  return SPANS.map(({ colour, low, high }, at) => ({
    colour,
    low: at === 0 ? low : between(at),
    high: at === SPANS.length - 1 ? high : between(at + 1),
  }));
}

function spanText({ colour, low, high }: ColourSpan): string {
  return `${colour} (${temperatureText(low)} to ${temperatureText(high)})`;
}

/** The colours that a temper may show: those whose span holds it, else its two neighbours. */
function coloursAt(temperC: number): readonly ColourSpan[] {
  const within = SPANS.filter(({ low, high }) => temperC >= low - 0.5 && temperC <= high + 0.5);
  if (within.length > 0) return within;
  const below = SPANS.filter(({ high }) => high < temperC);
  const above = SPANS.filter(({ low }) => low > temperC);
  const [last, next] = [below[below.length - 1], above[0]];
  if (last === undefined || next === undefined) throw new NotAvailable("no colour is listed there");
  return [last, next];
}

/**
 * The oxide colour that a short temper in air leaves on clean carbon steel.
 *
 * @param temperC - 199 to 332 [°C]
 * @returns Colour or colours with the span in which lists print each.
 * @throws NotAvailable outside the lists.
 * Error and source: {@link OXIDE_COLOURS}.
 */
export function oxideColour(temperC: number): string {
  checkRange(OXIDE_COLOURS, "temperC", temperC);
  const colours = coloursAt(temperC).map(spanText).join(" to ");
  return `${colours}; clean carbon steel, no measurement`;
}
