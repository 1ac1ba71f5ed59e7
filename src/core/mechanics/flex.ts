import { quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { relation } from "../relation";
import { type Blade, checkOnBlade, hasSubstance } from "./beam";
import { type Arm, armOf, compliance, endSlope, firstGuess, shoot } from "./elastica";
import { rootBetween, rootNear } from "./root";

const DEGREES = 180 / Math.PI;

/** Bending of a blade held at one place and loaded at another. */
export const BLADE_FLEX = relation({
  title: "Bending of a blade across the flat",
  source: "bisshopp-drucker-1945",
  locator: "elastica of a cantilever under a dead load, here with a section that varies along the blade",
  evidence: "standard",
  inputs: {
    stations: { label: "stations", unit: "", min: 2, max: null },
    load: { label: "load", unit: "N", min: 0, max: null },
  },
  output: { label: "deflection", unit: "mm" },
  error: {
    size: 10,
    unit: "%",
    kind: "of a stiffness, for stations right to 2 % of the thickness and a modulus of 207 GPa ± 3 %",
  },
  note:
    "Of a sound blade, held rigidly; the load keeps its direction and the blade's own weight is left out. The set is where " +
    "the most strained fibre reaches the yield strength that the hardness stands for; a flawed, hot-spotted or " +
    "under-tempered blade may break before it. Not a proof test.",
});

/** A bent blade. */
export interface Bend {
  /** Of the load, across the blade [mm] */
  readonly deflection: number;
  /** At the load [°] */
  readonly slope: number;
  /** Largest stress of a fibre [MPa] */
  readonly stress: number;
  /** Where it is, in the x of the stations [mm] */
  readonly stressAt: number;
}

/** A place on the line of a bent blade, from the place where it is held [mm]. */
export interface BentPoint {
  /** The place on the straight blade, in the x of the stations [mm]. */
  readonly x: number;
  /** From where the blade is held, in the direction it had there [mm]. */
  readonly along: number;
  /** From where the blade is held, square to that direction [mm]. */
  readonly across: number;
}

interface Peak {
  readonly at: number;
  readonly value: number;
}

/** The top of the parabola through three nodes, where it lies between them; the nodes are evenly apart. */
function topAbout(places: Float64Array, values: Float64Array, node: number): Peak | undefined {
  const [before, here, after] = [node - 1, node, node + 1].map((each) => values[each]);
  if (before === undefined || here === undefined || after === undefined) return undefined;
  const step = (places[node + 1] as number) - (places[node] as number);
  const [rise, bend] = [(after - before) / 2, 2 * here - before - after];
  // Past the outer nodes it is no longer the stress of this panel.
  if (!(bend > 0) || Math.abs(rise) > bend) return undefined;
  return { at: (places[node] as number) + (rise / bend) * step, value: here + rise ** 2 / (2 * bend) };
}

/**
 * The largest of values at nodes: the top of the parabola through the highest and its neighbours. A parabola across a
 * kink would shoot over the top of either side, so that there each side is taken by itself.
 */
function peakOf({ nodes, kinks }: Arm, values: Float64Array): Peak {
  const top = values.indexOf(Math.max(...values));
  const about = kinks.has(top) ? [top - 1, top + 1] : [top];
  const highest: Peak = { at: nodes[top] as number, value: values[top] as number };
  return about.reduce<Peak>((best, node) => {
    const own = topAbout(nodes, values, node);
    return own !== undefined && own.value > best.value ? own : best;
  }, highest);
}

function bendBy(arm: Arm, load: number, guess = firstGuess(arm, load)): Bend {
  const stresses = new Float64Array(arm.nodes.length);
  const slope = endSlope(arm, load, guess);
  const { across } = shoot(arm, load, slope, (node, moment) => {
    stresses[node] = moment * (arm.fibre[node] as number);
  });
  const { at, value } = peakOf(arm, stresses);
  return { deflection: across, slope: slope * DEGREES, stress: value, stressAt: arm.held + at };
}

/** A blade held at one place and loaded at another, ready to be asked. */
export interface HeldBlade {
  /** Of the load, as long as the bend is small [N/mm] */
  readonly stiffness: number;
  /** The bend under a load at its place, 0 and more [N]. */
  readonly bend: (load: number) => Bend;
  /** The load at which the largest stress reaches the yield strength given [N], and the bend there. */
  readonly set: (yieldMPa: number) => Bend & { readonly load: number };
  /** The line of the blade under a load, 0 and more [N], from where it is held to the load. */
  readonly line: (load: number) => readonly BentPoint[];
}

function checkHold(blade: Blade, held: number, load: number): void {
  checkOnBlade(blade, "held at", held);
  checkOnBlade(blade, "load at", load);
  if (load - held < (blade.end - blade.start) / 1000) {
    throw new InvalidValue(
      `load at ${quantityText(load, "mm")}, held at ${quantityText(held, "mm")}: ` +
        "the load must lie beyond the place where the blade is held, toward the tip",
    );
  }
  const empty = [load, ...blade.places].find((x) => x >= held && x <= load && !hasSubstance(blade.at(x)));
  if (empty === undefined) return;
  throw new InvalidValue(
    `at ${quantityText(empty, "mm")} the blade comes to nothing; load it a little before the tip`,
  );
}

const STRESS_WITHIN = 1e-9;

/** The load searched for upwards from one that is too small, step by step. */
function loadAbove(excess: (load: number) => number, low: number): number {
  let high = low;
  while (excess(high) < 0) high *= 1.5;
  if (high === low) return low;
  return rootBetween(excess, high / 1.5, high, { tolerance: STRESS_WITHIN * high, within: STRESS_WITHIN });
}

/** The bend at which the largest stress is `yieldMPa`: the load is at least that of the straight blade, for the lever only shortens. */
function bendAtStress(arm: Arm, yieldMPa: number): Bend & { readonly load: number } {
  const straight = Math.max(...arm.nodes.map((s, node) => (arm.length - s) * (arm.fibre[node] as number)));
  const low = yieldMPa / straight;
  let bent = { load: low, ...bendBy(arm, low) };
  const excess = (load: number) => {
    const guess = Math.min(1.5, (bent.slope / DEGREES) * (load / bent.load));
    if (load !== bent.load) bent = { load, ...bendBy(arm, load, guess) };
    return bent.stress / yieldMPa - 1;
  };
  const near = rootNear(excess, [low, (low * yieldMPa) / bent.stress], STRESS_WITHIN);
  if (near === undefined || near < low) excess(loadAbove(excess, low));
  return bent;
}

function bentLine(arm: Arm, load: number): BentPoint[] {
  const fromLoad: BentPoint[] = [];
  const end = shoot(arm, load, endSlope(arm, load, firstGuess(arm, load)), (node, _moment, along, across) =>
    fromLoad.push({ x: arm.held + (arm.nodes[node] as number), along, across }),
  );
  return fromLoad.reverse().map(({ x, along, across }) => ({
    x,
    along: end.along - along,
    across: end.across - across,
  }));
}

/**
 * Bending across the flat of a blade held rigidly at one place and loaded across the flat at another, bent
 * as far as it goes: the load keeps its direction and the blade its length.
 *
 * @param blade - From `bladeOf`.
 * @param held - Where it is held [mm]
 * @param load - Where it is loaded, beyond that toward the tip [mm]
 * @throws InvalidValue for places off the blade; and where the load does not lie beyond the held place.
 * Error: 1e-6 of the elastica; a real blade as its stations and ±3 % of the modulus allow.
 * Source: Bisshopp and Drucker 1945, with a section that varies.
 */
export function heldBlade(blade: Blade, held: number, load: number): HeldBlade {
  checkHold(blade, held, load);
  const arm = armOf(blade, held, load);
  const bend = (force: number) => bendBy(arm, force);
  return {
    stiffness: 1 / compliance(arm),
    bend,
    set: (yieldMPa) => bendAtStress(arm, yieldMPa),
    line: (force) => bentLine(arm, force),
  };
}
