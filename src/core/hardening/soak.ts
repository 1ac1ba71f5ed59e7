import { BoundedMap } from "../bounded-map";
import { NotAvailable } from "../refusal";
import { checkRange, relation } from "../relation";
import { heatContent } from "../run/heat-content";
import type { Family } from "../steel/steel";

/** Time for a blade to take the heat of a furnace. */
export const HEAT_UP = relation({
  title: "Time for a thin blade to come within 10 °C of the furnace",
  source: "heat-up-calculation",
  locator: "dT/dt = 2q/(ρ c t), both faces free, emissivity 0.8, 15 W/m²K",
  evidence: "compiled",
  inputs: {
    thicknessMm: { label: "thickness", unit: "mm", min: 0.5, max: 15 },
    furnaceC: { label: "furnace", unit: "°C", min: 120, max: 1200 },
  },
  output: { label: "heat-up", unit: "min" },
  error: {
    size: 40,
    unit: "%",
    kind: "about: bright steel, packed blades and a furnace that drops on loading are slower",
  },
  note: "Specific heat of carbon steel; stainless takes about as long.",
});

/** Time at temperature. */
export const SOAK_RULE = relation({
  title: "Soak at hardening temperature, counted from when the steel has it",
  source: "soak-rules",
  locator: "the longer of a floor for the kind of steel and a time for each millimetre",
  evidence: "common practice",
  inputs: {},
  output: { label: "soak", unit: "min" },
  error: {
    size: null,
    unit: "min",
    kind: "rules of the trade; sheets of one grade differ by a factor of two",
  },
  note: "Rules for each millimetre were made for tools of 25 mm; below about 6 mm the floor governs.",
});

interface Rule {
  /** Least soak, min. */
  readonly floor: number;
  /** min for each mm. */
  readonly perMm: number;
}

/** Kinds of steel that are hardened, with their soak. */
const RULES: Readonly<Partial<Record<Family, Rule>>> = {
  "plain carbon": { floor: 5, perMm: 1.5 },
  "low alloy": { floor: 10, perMm: 1.5 },
  "cold work": { floor: 20, perMm: 1.2 },
  "hot work": { floor: 20, perMm: 1.2 },
  "martensitic stainless": { floor: 30, perMm: 1.2 },
  "high speed": { floor: 3, perMm: 0 },
};

/** Kinds of steel that `soak` knows. */
export const SOAK_FAMILIES = Object.keys(RULES) as Family[];

const STEFAN_BOLTZMANN = 5.67e-8;
const EMISSIVITY = 0.8;
const CONVECTION = 15;
const DENSITY = 7850;
const ROOM_C = 20;
const SHORT_OF_FURNACE = 10;
/** Below this a furnace tempers, and nothing soaks for hardening. */
const COOLEST_HARDENING_C = 700;

/** Heat that one face takes up, W/m². */
function flux(steelC: number, furnaceC: number): number {
  const [cool, hot] = [steelC + 273.15, furnaceC + 273.15];
  return CONVECTION * (hot - cool) + EMISSIVITY * STEFAN_BOLTZMANN * (hot ** 4 - cool ** 4);
}

/** Steps of about 2 °C: halving them moves the time by less than 0.1 %. */
const STEP_C = 2;

/** Furnace temperatures remembered: a shop uses a handful. */
const REMEMBERED = 500;
const secondsByFurnace = new BoundedMap<number, number>(REMEMBERED);

/**
 * Integral of heat content over heat taken up, from room temperature to 10 °C short of the furnace: seconds
 * for each kg/m² of face. Thickness only scales it, so it is worked out once a furnace temperature.
 */
function secondsFor(furnaceC: number): number {
  const known = secondsByFurnace.get(furnaceC);
  if (known !== undefined) return known;
  const end = furnaceC - SHORT_OF_FURNACE;
  const steps = Math.ceil((end - ROOM_C) / STEP_C);
  const step = (end - ROOM_C) / steps;
  let seconds = 0;
  for (let i = 0; i < steps; i++) {
    const from = ROOM_C + i * step;
    const heat = 1000 * heatContent(from, from + step);
    seconds += heat / flux(from + step / 2, furnaceC);
  }
  secondsByFurnace.set(furnaceC, seconds);
  return seconds;
}

/**
 * Time for a thin blade to come within 10 °C of the furnace, from room temperature.
 *
 * @param thicknessMm - 0.5 to 15, both faces free [mm]
 * @param furnaceC - 120 to 1200 [°C]
 * @returns [min]
 * @throws NotAvailable outside those ranges.
 * Error and source: {@link HEAT_UP}.
 */
export function heatUpMinutes(thicknessMm: number, furnaceC: number): number {
  checkRange(HEAT_UP, "thicknessMm", thicknessMm);
  checkRange(HEAT_UP, "furnaceC", furnaceC);
  return (secondsFor(furnaceC) * DENSITY * (thicknessMm / 1000)) / 2 / 60;
}

/** Minutes in the furnace. */
export interface Soak {
  /** Until the steel has the temperature [min]. */
  readonly heatUp: number;
  /** At that temperature [min]; `null` in a tempering oven: there the hold is what a temper asks for. */
  readonly soak: number | null;
  /** Heating up and soak [min]. */
  readonly total: number;
}

/**
 * Soak at hardening temperature, counted from when the steel has it.
 *
 * @param thicknessMm - Thickest place [mm].
 * @param family - Kind of steel.
 * @returns Minutes: the longer of the floor of the kind and its time for each millimetre.
 * @throws NotAvailable for kinds that are not hardened.
 */
export function soakAtHeat(thicknessMm: number, family: Family): number {
  const { floor, perMm } = ruleOf(family);
  return Math.max(floor, perMm * thicknessMm);
}

function ruleOf(family: Family): Rule {
  const rule = RULES[family];
  if (rule !== undefined) return rule;
  throw new NotAvailable(
    `${family} steel is not hardened by a quench; soaks are held for ${SOAK_FAMILIES.join(", ")}`,
  );
}

/**
 * How long a blade has to be in the furnace.
 *
 * @param thicknessMm - Thickest place, 0.5 to 15 [mm]
 * @param furnaceC - 120 to 1200 [°C]
 * @param family - Kind of steel.
 * @returns Heat-up, soak and total [min]
 * @throws NotAvailable outside the ranges, and for kinds that are not hardened.
 * Error and source: {@link HEAT_UP}, {@link SOAK_RULE}.
 */
export function soakMinutes(thicknessMm: number, furnaceC: number, family: Family): Soak {
  ruleOf(family);
  const heatUp = heatUpMinutes(thicknessMm, furnaceC);
  if (furnaceC < COOLEST_HARDENING_C) return { heatUp, soak: null, total: heatUp };
  const soak = soakAtHeat(thicknessMm, family);
  return { heatUp, soak, total: heatUp + soak };
}
