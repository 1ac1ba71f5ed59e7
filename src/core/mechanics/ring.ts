import { quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { relation } from "../relation";
import { gaussRule } from "../shape/gauss";
import { ELASTIC_MODULUS } from "../steel/elastic-modulus";
import { addBlock, type Banded, bandedZeros, factor, solve, times } from "./banded";
import { type Blade, hasSubstance, stepsAlong } from "./beam";
import { rootBetween } from "./root";

/** Elements along the blade; each panel between stations gets two at least. */
const ELEMENTS = 24;
const RULE = gaussRule(3);
const ITERATIONS = 60;
const SETTLED = 1e-12;
/** (βL)² of the first bending mode of a uniform free bar, to place the shift. */
const UNIFORM_FIRST = 22.3733;

/** Tonnes in a gram, and in a g/cm³ a tonne per mm³: mm, N, t and s go together. */
const T_PER_G = 1e-6;
const T_PER_MM3 = 1e-9;
/** t mm² in a kg m². */
const T_MM2_PER_KG_M2 = 1e3;

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

/** A part that moves with the blade. */
export interface Fitting {
  /** [g] */
  readonly mass: number;
  /** In the x of the stations [mm] */
  readonly position: number;
  /** About its own centre, in the plane of the bending [kg m²] */
  readonly inertia: number;
}

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

type Four = readonly [number, number, number, number];

/** Hermite's shape functions of an element, at a share of its length `h`. */
function shapes(share: number, h: number): Four {
  const rest = 1 - share;
  return [
    rest * rest * (1 + 2 * share),
    h * share * rest * rest,
    share * share * (3 - 2 * share),
    -h * share * share * rest,
  ];
}

/** Their slopes. */
function slopes(share: number, h: number): Four {
  const turn = (6 * share * (1 - share)) / h;
  return [-turn, (1 - share) * (1 - 3 * share), turn, share * (3 * share - 2)];
}

/** Their curvatures. */
function curvatures(share: number, h: number): Four {
  const bend = (12 * share - 6) / (h * h);
  return [bend, (6 * share - 4) / h, -bend, (6 * share - 2) / h];
}

interface System {
  readonly nodes: readonly number[];
  readonly stiffness: Banded;
  readonly mass: Banded;
}

function addElement(system: System, blade: Blade, element: number): void {
  const { nodes, stiffness, mass } = system;
  const start = nodes[element] as number;
  const h = (nodes[element + 1] as number) - start;
  RULE.points.forEach((share, point) => {
    const weight = (RULE.weights[point] as number) * h;
    const { area, secondMoment } = blade.at(start + share * h);
    const rigidity = weight * ELASTIC_MODULUS * secondMoment;
    const inertia = weight * blade.density * T_PER_MM3 * area;
    const bend = curvatures(share, h);
    const move = shapes(share, h);
    addBlock(
      stiffness,
      2 * element,
      (row, column) => rigidity * (bend[row] as number) * (bend[column] as number),
    );
    addBlock(mass, 2 * element, (row, column) => inertia * (move[row] as number) * (move[column] as number));
  });
}

/** The element that holds a place, by halving; a place beyond an end belongs to the element there. */
function elementAt(nodes: readonly number[], x: number): number {
  let low = 0;
  let high = nodes.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((nodes[middle] as number) <= x) low = middle;
    else high = middle;
  }
  return low;
}

/** Motion and turn of a place, from the four unknowns of its element; beyond an end the blade goes on straight. */
function motionAt(
  nodes: readonly number[],
  element: number,
  x: number,
): { readonly move: Four; readonly turn: Four } {
  const start = nodes[element] as number;
  const end = nodes[element + 1] as number;
  const h = end - start;
  if (x < start) return { move: [1, x - start, 0, 0], turn: [0, 1, 0, 0] };
  if (x > end) return { move: [0, 0, 1, x - end], turn: [0, 0, 0, 1] };
  const share = (x - start) / h;
  return { move: shapes(share, h), turn: slopes(share, h) };
}

function addFitting({ nodes, mass }: System, fitting: Fitting): void {
  const element = elementAt(nodes, fitting.position);
  const { move, turn } = motionAt(nodes, element, fitting.position);
  const heavy = fitting.mass * T_PER_G;
  const own = fitting.inertia * T_MM2_PER_KG_M2;
  addBlock(
    mass,
    2 * element,
    (row, column) =>
      heavy * (move[row] as number) * (move[column] as number) +
      own * (turn[row] as number) * (turn[column] as number),
  );
}

function systemOf(blade: Blade, fittings: readonly Fitting[]): System {
  const nodes = stepsAlong(blade.places, blade.start, blade.end, ELEMENTS);
  const size = 2 * nodes.length;
  const system = { nodes, stiffness: bandedZeros(size), mass: bandedZeros(size) };
  for (let element = 0; element < nodes.length - 1; element += 1) addElement(system, blade, element);
  for (const fitting of fittings) addFitting(system, fitting);
  return system;
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

const hertz = (squared: number) => Math.sqrt(squared) / (2 * Math.PI);

/** Deflection of a mode at a place. */
function deflection({ nodes }: System, { vector }: Mode, x: number): number {
  const element = elementAt(nodes, x);
  const { move } = motionAt(nodes, element, x);
  return move.reduce((sum, share, at) => sum + share * (vector[2 * element + at] as number), 0);
}

/** The places between the ends, fittings included, where a mode stands still. */
function quietPoints(system: System, mode: Mode, fittings: readonly Fitting[]): number[] {
  const positions = fittings.map(({ position }) => position);
  const from = Math.min(...positions, system.nodes[0] as number);
  const to = Math.max(...positions, system.nodes.at(-1) as number);
  const places = [...new Set([from, ...system.nodes, to])];
  const at = (x: number) => deflection(system, mode, x);
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
  const shifted = shiftedStiffness(system, blade);
  const found = rigidModes(system);
  const middle = (blade.start + blade.end) / 2;
  const start = (power: number) =>
    motion(
      system.nodes,
      (x) => (x - middle) ** power,
      (x) => power * (x - middle) ** (power - 1),
    );
  const first = nextMode(system, shifted, found, start(2));
  const second = nextMode(system, shifted, [...found, first], start(3));
  const quiet = quietPoints(system, first, fittings);
  const half = (x: number) => x <= middle;
  return {
    first: hertz(eigenvalue(first, system.stiffness)),
    second: hertz(eigenvalue(second, system.stiffness)),
    quietNearHeel: quiet.find(half),
    quietNearTip: [...quiet].reverse().find((x) => !half(x)),
  };
}
