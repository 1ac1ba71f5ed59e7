import { celsiusOf } from "../core/quantity-text";

/** A spelling of a unit: multiply by `factor`, then add `offset`, to get the base unit of the quantity. */
type Unit = readonly [factor: number, offset?: number];

interface QuantityUnits {
  /** What a sentence calls the quantity. */
  readonly noun: string;
  readonly units: Readonly<Record<string, Unit>>;
  /** How to type it, shown when something else was given. */
  readonly shown: string;
}

const INCH: Unit = [25.4];
const HOUR: Unit = [1];
const MINUTE: Unit = [1 / 60];
const SECOND: Unit = [1 / 3600];
const LITRE: Unit = [1];
const US_GALLON: Unit = [3.785411784];
const FAHRENHEIT: Unit = [celsiusOf(1) - celsiusOf(0), celsiusOf(0)];

/**
 * Units that may be typed after a number, by quantity. The first unit is the base unit. Spellings are
 * compared in lower case with spaces and full stops taken out.
 */
export const QUANTITIES = {
  length: {
    noun: "a length",
    units: {
      mm: [1],
      cm: [10],
      m: [1000],
      µm: [0.001],
      um: [0.001],
      in: INCH,
      inch: INCH,
      inches: INCH,
      '"': INCH,
      "″": INCH,
      ft: [304.8],
      "'": [304.8],
    },
    shown: '25.4, "25.4 mm", "1 in" or "1-1/4 in"',
  },
  mass: {
    noun: "a mass",
    units: { g: [1], kg: [1000], lb: [453.59237], lbs: [453.59237], oz: [28.349523125] },
    shown: '450, "450 g", "0.45 kg" or "1 lb"',
  },
  temperature: {
    noun: "a temperature",
    units: {
      "°c": [1],
      c: [1],
      degc: [1],
      celsius: [1],
      "°f": FAHRENHEIT,
      f: FAHRENHEIT,
      degf: FAHRENHEIT,
      fahrenheit: FAHRENHEIT,
      k: [1, -273.15],
    },
    shown: '200 (°C), "200 °C" or "400 °F"',
  },
  time: {
    noun: "a time",
    units: {
      h: HOUR,
      hr: HOUR,
      hrs: HOUR,
      hour: HOUR,
      hours: HOUR,
      min: MINUTE,
      mins: MINUTE,
      minute: MINUTE,
      minutes: MINUTE,
      s: SECOND,
      sec: SECOND,
      seconds: SECOND,
    },
    shown: '2 (hours), "2 h" or "90 min"',
  },
  hardness: { noun: "a Rockwell C hardness", units: { hrc: [1], rc: [1] }, shown: '58 or "58 HRC"' },
  "mass %": {
    noun: "a mass percentage",
    units: { "%": [1], "mass%": [1], "wt%": [1] },
    shown: '0.95 or "0.95 %"',
  },
  fraction: { noun: "a fraction", units: { "": [1], "%": [0.01] }, shown: '0.92 or "92 %"' },
  angle: { noun: "an angle", units: { "°": [1], deg: [1], degrees: [1] }, shown: '15 or "15°"' },
  density: {
    noun: "a density",
    units: { "g/cm³": [1], "g/cm3": [1], "kg/m³": [0.001], "kg/m3": [0.001] },
    shown: '7.85 or "7850 kg/m3"',
  },
  capacity: {
    noun: "a volume of liquid",
    units: {
      l: LITRE,
      litre: LITRE,
      litres: LITRE,
      liter: LITRE,
      liters: LITRE,
      ml: [0.001],
      gal: US_GALLON,
      gallon: US_GALLON,
      gallons: US_GALLON,
      usgal: US_GALLON,
    },
    shown: '20, "20 L" or "5 gal" (US gallons)',
  },
  volume: {
    noun: "a volume",
    units: { mm3: [1], "mm³": [1], cm3: [1000], "cm³": [1000], in3: [16387.064] },
    shown: '66000 or "66 cm3"',
  },
  force: {
    noun: "a force",
    units: { n: [1], kn: [1000], kgf: [9.80665], kp: [9.80665], lbf: [4.4482216152605] },
    shown: '50 (N), "50 N" or "5 kgf"',
  },
  stiffness: {
    noun: "a stiffness",
    units: { "n/mm": [1], "kgf/mm": [9.80665], "lbf/in": [4.4482216152605 / 25.4] },
    shown: '2.5 or "2.5 N/mm"',
  },
  "line load": {
    noun: "a load per mm of edge",
    units: { "n/mm": [1], "lbf/in": [4.4482216152605 / 25.4] },
    shown: '20 or "20 N/mm"',
  },
  count: { noun: "a whole number", units: {}, shown: "24" },
  number: { noun: "a number", units: {}, shown: "1.5" },
  money: { noun: "an amount without a currency sign", units: {}, shown: "125.50" },
} as const satisfies Record<string, QuantityUnits>;

export type Quantity = keyof typeof QUANTITIES;

/** The unit of a spelling, or `undefined` where the spelling belongs to another quantity or to none. */
export function unitOf(quantity: Quantity, spelling: string): Unit | undefined {
  const units: Readonly<Record<string, Unit>> = QUANTITIES[quantity].units;
  return Object.hasOwn(units, spelling) ? units[spelling] : undefined;
}
