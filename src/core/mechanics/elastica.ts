import { ELASTIC_MODULUS } from "../steel/elastic-modulus";
import { type Blade, stepsAlong } from "./beam";
import { rootBetween, rootNear } from "./root";

// The line of a blade under a dead load, however far it bends: the elastica with a section that varies.

/** Steps of the integration along the bent blade: better than 1e-6 of the deflection. */
const STEPS = 72;

/** What of the blade bends: from the place where it is held to the load. Lengths from the held place. */
export interface Arm {
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

export function armOf(blade: Blade, held: number, load: number): Arm {
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
export function shoot({ nodes, flexibility }: Arm, load: number, endSlope: number, watch?: Watch): Shot {
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
export function endSlope(arm: Arm, load: number, guess: number): number {
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
export function firstGuess(arm: Arm, load: number): number {
  return Math.min(1.2, straightSlope(arm, load));
}

/** Deflection under a load so small that the blade stays straight, by Simpson's rule [mm/N]. */
export function compliance({ length, nodes, flexibility }: Arm): number {
  return integralAlong(nodes, (s, at) => (length - s) ** 2 * (flexibility[at] as number));
}
