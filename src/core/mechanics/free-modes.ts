import { ELASTIC_MODULUS } from "../steel/elastic-modulus";
import { type Banded, factor, solve, times } from "./banded";
import type { Blade } from "./beam";
import { type System, T_PER_MM3 } from "./free-blade";

// The lowest modes in which a free blade bends, found one after another by inverse iteration.

const ITERATIONS = 60;
const SETTLED = 1e-12;
/** (βL)² of the first bending mode of a uniform free bar, to place the shift. */
const UNIFORM_FIRST = 22.3733;

/** How a blade bends while it rings. */
export interface BendingMode {
  /** Motion and slope of every node, in turn; only their shares among one another count. */
  readonly motion: Float64Array;
  /** Square of the angular frequency [1/s²] */
  readonly squared: number;
}

const dot = (a: Float64Array, b: Float64Array) =>
  a.reduce((sum, value, at) => sum + value * (b[at] as number), 0);

/** A vector with the mass times it, scaled so that their product is 1. */
interface Mode {
  readonly vector: Float64Array;
  readonly weighted: Float64Array;
}

function asMode(vector: Float64Array, mass: Banded): Mode {
  const weighted = times(mass, vector);
  const scale = 1 / Math.sqrt(dot(vector, weighted));
  return { vector: vector.map((value) => value * scale), weighted: weighted.map((value) => value * scale) };
}

function takeOut(vector: Float64Array, modes: readonly Mode[]): void {
  for (const mode of modes) {
    const share = dot(vector, mode.weighted);
    mode.vector.forEach((value, at) => {
      vector[at] = (vector[at] as number) - share * value;
    });
  }
}

/** A motion of every node: its place and slope as functions of x. */
function motion(
  nodes: readonly number[],
  place: (x: number) => number,
  slope: (x: number) => number,
): Float64Array {
  return Float64Array.from(nodes.flatMap((x) => [place(x), slope(x)]));
}

/** The two motions without bending: shift and turn. Both are made free of each other. */
function rigidModes({ nodes, mass }: System): Mode[] {
  const shift = asMode(
    motion(
      nodes,
      () => 1,
      () => 0,
    ),
    mass,
  );
  const turning = motion(
    nodes,
    (x) => x,
    () => 1,
  );
  takeOut(turning, [shift]);
  return [shift, asMode(turning, mass)];
}

/** Square of the angular frequency of a mode [1/s²] */
function eigenvalue({ vector }: Mode, stiffness: Banded): number {
  return dot(vector, times(stiffness, vector));
}

/** The lowest mode that is free of those found before, by inverse iteration with the shifted stiffness. */
function nextMode(system: System, shifted: Banded, found: readonly Mode[], start: Float64Array): Mode {
  let vector = start;
  takeOut(vector, found);
  let mode = asMode(vector, system.mass);
  let before = 0;
  for (let iteration = 0; iteration < ITERATIONS; iteration += 1) {
    vector = Float64Array.from(mode.weighted);
    solve(shifted, vector);
    takeOut(vector, found);
    mode = asMode(vector, system.mass);
    const value = eigenvalue(mode, system.stiffness);
    if (Math.abs(value - before) <= SETTLED * value) break;
    before = value;
  }
  return mode;
}

/** A shift well under the first mode: the stiffness alone is singular, for a free blade can move without bending. */
function shiftedStiffness({ nodes, stiffness, mass }: System, blade: Blade): Banded {
  const middle = blade.at((blade.start + blade.end) / 2);
  const length = (nodes.at(-1) as number) - (nodes[0] as number);
  const perLength = blade.density * T_PER_MM3 * middle.area;
  const first = (UNIFORM_FIRST ** 2 * ELASTIC_MODULUS * middle.secondMoment) / (perLength * length ** 4);
  const shifted = stiffness.map((row, at) =>
    row.map((value, beside) => value + 0.02 * first * (mass[at]?.[beside] as number)),
  );
  factor(shifted);
  return shifted;
}

/** The first two modes in which a free blade bends, with the squares of their angular frequencies [1/s²]. */
export function bendingModes(system: System, blade: Blade): [first: BendingMode, second: BendingMode] {
  const shifted = shiftedStiffness(system, blade);
  const rigid = rigidModes(system);
  const middle = (blade.start + blade.end) / 2;
  const start = (power: number) =>
    motion(
      system.nodes,
      (x) => (x - middle) ** power,
      (x) => power * (x - middle) ** (power - 1),
    );
  const first = nextMode(system, shifted, rigid, start(2));
  const second = nextMode(system, shifted, [...rigid, first], start(3));
  const bending = (mode: Mode) => ({ motion: mode.vector, squared: eigenvalue(mode, system.stiffness) });
  return [bending(first), bending(second)];
}
