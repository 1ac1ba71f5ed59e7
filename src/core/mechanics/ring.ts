import { quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { relation } from "../relation";
import { type Blade, hasSubstance } from "./beam";
import { type Fitting, motionOf, type System, systemOf } from "./free-blade";
import { bendingModes } from "./free-modes";
import { rootBetween } from "./root";

/** First two bending modes of a free blade. */
export const BLADE_RING = relation({
  title: "Bending vibration of a free blade",
  source: "beam-theory",
  locator: "Euler-Bernoulli beam, both ends free; Hermite elements with the masses of the fittings",
  evidence: "standard",
  inputs: { stations: { label: "stations", unit: "", min: 2, max: null } },
  output: { label: "frequency", unit: "Hz" },
  error: {
    size: 5,
    unit: "%",
    kind: "of a frequency, for stations right to 2 % of the thickness and fittings that sit tight; 1e-4 of the beam as described",
  },
  note:
    "Across the flat, both ends free, as a blade rings that is struck while it hangs. Each fitting counts as one mass with its own " +
    "inertia; beyond the stations it is joined rigidly to the nearest end. A grip that is not tight, or a hand, " +
    "shifts the quiet point near the heel.",
});

/** How a free blade rings across the flat. */
export interface Ring {
  /** First mode of bending [Hz]. */
  readonly first: number;
  /** Second mode of bending [Hz]. */
  readonly second: number;
  /** Place that stands still in the first mode [mm]; `undefined` beyond blade and fittings. */
  readonly quietNearHeel: number | undefined;
  /** The other such place, towards the tip [mm]; `undefined` beyond blade and fittings. */
  readonly quietNearTip: number | undefined;
}

const hertz = (squared: number) => Math.sqrt(squared) / (2 * Math.PI);

/** The places between the ends, fittings included, where a motion of the nodes stands still. */
function quietPoints(system: System, motion: Float64Array, fittings: readonly Fitting[]): number[] {
  const positions = fittings.map(({ position }) => position);
  const from = Math.min(...positions, system.nodes[0] as number);
  const to = Math.max(...positions, system.nodes.at(-1) as number);
  const places = [...new Set([from, ...system.nodes, to])];
  const at = (x: number) => motionOf(system, motion, x);
  return places.slice(1).flatMap((place, index) => {
    const before = places[index] as number;
    if (at(before) * at(place) > 0) return [];
    return [rootBetween(at, before, place, { tolerance: 1e-9 * (to - from) })];
  });
}

function checkFitting({ mass, position, inertia }: Fitting): void {
  if (mass >= 0 && inertia >= 0 && Number.isFinite(position)) return;
  throw new InvalidValue(
    `fitting of ${mass} g at ${position} mm: give mass and own inertia from 0 and a place in mm`,
  );
}

/** A blade that comes to nothing between its ends is two blades. */
function checkBetweenEnds(blade: Blade): void {
  const empty = blade.places.slice(1, -1).find((x) => !hasSubstance(blade.at(x)));
  if (empty === undefined) return;
  throw new InvalidValue(
    `at ${quantityText(empty, "mm")} the blade comes to nothing between its ends: give width and thickness in mm`,
  );
}

/**
 * The first two bending frequencies of a free blade with its fittings, and the quiet points of the first.
 *
 * @param blade - From `bladeOf`.
 * @param fittings - Guard, grip, pommel: mass [g], place [mm], own inertia [kg m²]
 * @returns Frequencies [Hz] and places [mm]
 * @throws InvalidValue for a fitting with a negative mass or inertia.
 * Error: 1e-4 of the beam described; a real blade as its stations and ±3 % of the modulus allow.
 * Source: Euler-Bernoulli beam, free at both ends.
 */
export function ring(blade: Blade, fittings: readonly Fitting[]): Ring {
  fittings.forEach(checkFitting);
  checkBetweenEnds(blade);
  const system = systemOf(blade, fittings);
  const [first, second] = bendingModes(system, blade);
  const quiet = quietPoints(system, first.motion, fittings);
  const middle = (blade.start + blade.end) / 2;
  const half = (x: number) => x <= middle;
  return {
    first: hertz(first.squared),
    second: hertz(second.squared),
    quietNearHeel: quiet.find(half),
    quietNearTip: [...quiet].reverse().find((x) => !half(x)),
  };
}
