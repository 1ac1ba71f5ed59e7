import { quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { relation } from "../relation";
import { ELASTIC_MODULUS } from "../steel/elastic-modulus";
import { type Blade, checkOnBlade, hasSubstance, stepsAlong } from "./beam";
import { rootBetween, rootNear } from "./root";

/** Steps of the integration along the bent blade: better than 1e-6 of the deflection. */
const STEPS = 72;
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

/** What of the blade bends: from the place where it is held to the load. Lengths from the held place. */
interface Arm {
  /** In the x of the stations [mm] */
  readonly held: number;
  readonly length: number;
  /** Ends of the steps [mm] */
  readonly nodes: Float64Array;
  /** Nodes at a station, where the section may change its slope or jump over a short panel. */
  readonly kinks: ReadonlySet<number>;
  /** Curvature for a moment of 1 N mm [1/(N mm²)] at the start, middle and end of each step */
  readonly flexibility: Float64Array;
  /** Stress of the farthest fibre for a moment of 1 N mm, at the nodes [1/mm³] */
  readonly fibre: Float64Array;
}

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

function armOf(blade: Blade, held: number, load: number): Arm {
  const steps = stepsAlong(blade.places, held, load, STEPS);
  const flexibility = new Float64Array(2 * steps.length - 1);
  const fibre = new Float64Array(steps.length);
  steps.forEach((x, index) => {
    const section = blade.at(x);
    flexibility[2 * index] = 1 / (ELASTIC_MODULUS * section.secondMoment);
    fibre[index] = section.extremeFibre / section.secondMoment;
    if (index === 0) return;
    const middle = blade.at((x + (steps[index - 1] as number)) / 2);
    flexibility[2 * index - 1] = 1 / (ELASTIC_MODULUS * middle.secondMoment);
  });
  const kinks = new Set(steps.flatMap((x, index) => (blade.places.includes(x) ? [index] : [])));
  const nodes = Float64Array.from(steps, (x) => x - held);
  return { held, length: load - held, nodes, kinks, flexibility, fibre };
}

/** The blade integrated from the load back to the held place; at the held place its slope must be 0. */
interface Shot {
  /** From the held place to the load, along the straight blade's line and across it [mm]; across only where watched */
  readonly along: number;
  readonly across: number;
  /** Left at the held place [rad] */
  readonly miss: number;
}

/**
 * Cosine of the slope; of a slope below 0 that of none. A blade under a dead load never bends back past straight, but the
 * guess of a heavily loaded one may curl up and come out level again: held straight from there on, it only misses by more.
 */
const levelCos = (slope: number) => Math.cos(Math.max(0, slope));

type Watch = (node: number, moment: number, along: number, across: number) => void;

/**
 * Runge-Kutta of fourth order from the load, where the moment is 0 and the slope is guessed: the moment is
 * the load times the distance from it, and the slope changes by the moment times the flexibility. How far
 * the blade goes across takes half the time and is added up for a watcher only.
 */
function shoot({ nodes, flexibility }: Arm, load: number, endSlope: number, watch?: Watch): Shot {
  let slope = endSlope;
  let along = 0;
  let across = 0;
  const last = nodes.length - 1;
  watch?.(last, 0, 0, 0);
  for (let step = last; step > 0; step -= 1) {
    const h = (nodes[step] as number) - (nodes[step - 1] as number);
    const near = (flexibility[2 * step] as number) * load;
    const middle = (flexibility[2 * step - 1] as number) * load;
    const far = (flexibility[2 * step - 2] as number) * load;
    const k1 = near * along;
    const c1 = levelCos(slope);
    const s2 = slope - (h / 2) * k1;
    const k2 = middle * (along + (h / 2) * c1);
    const c2 = levelCos(s2);
    const s3 = slope - (h / 2) * k2;
    const k3 = middle * (along + (h / 2) * c2);
    const c3 = levelCos(s3);
    const s4 = slope - h * k3;
    const k4 = far * (along + h * c3);
    if (watch !== undefined) {
      across += (h / 6) * (Math.sin(slope) + 2 * Math.sin(s2) + 2 * Math.sin(s3) + Math.sin(s4));
    }
    along += (h / 6) * (c1 + 2 * c2 + 2 * c3 + levelCos(s4));
    slope -= (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    watch?.(step - 1, load * along, along, across);
  }
  return { along, across, miss: slope };
}

/**
 * An integral along the arm by Simpson's rule.
 *
 * @param term - At a place, and at the index of that place among starts, middles and ends of the steps.
 */
function integralAlong(nodes: Float64Array, term: (s: number, at: number) => number): number {
  let sum = 0;
  for (let step = 1; step < nodes.length; step += 1) {
    const from = nodes[step - 1] as number;
    const to = nodes[step] as number;
    sum +=
      ((to - from) / 6) *
      (term(from, 2 * step - 2) + 4 * term((from + to) / 2, 2 * step - 1) + term(to, 2 * step));
  }
  return sum;
}

const RIGHT_ANGLE = Math.PI / 2;
const SLOPE_WITHIN = 1e-12;

/**
 * Slope at the load of a blade that leaves the held place straight: between none and a right angle [rad]
 *
 * @param guess - Where it is about known, as from a load near by; found several times faster.
 */
function endSlope(arm: Arm, load: number, guess: number): number {
  const miss = (slope: number) => shoot(arm, load, slope).miss;
  const near = rootNear(miss, [guess, guess * 0.999], SLOPE_WITHIN);
  if (near !== undefined && near > 0 && near < RIGHT_ANGLE) return near;
  return rootBetween(miss, 0, RIGHT_ANGLE, { tolerance: 1e-15, within: SLOPE_WITHIN });
}

/** Slope at the load under a load so small that the blade stays straight, by Simpson's rule [rad] */
function straightSlope({ length, nodes, flexibility }: Arm, load: number): number {
  return load * integralAlong(nodes, (s, at) => (length - s) * (flexibility[at] as number));
}

/** A guess that stays inside the right angle however large the load is. */
function firstGuess(arm: Arm, load: number): number {
  return Math.min(1.2, straightSlope(arm, load));
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

/** Deflection under a load so small that the blade stays straight, by Simpson's rule [mm/N]. */
function compliance({ length, nodes, flexibility }: Arm): number {
  return integralAlong(nodes, (s, at) => (length - s) ** 2 * (flexibility[at] as number));
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
