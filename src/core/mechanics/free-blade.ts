import { gaussRule } from "../shape/gauss";
import { ELASTIC_MODULUS } from "../steel/elastic-modulus";
import { addBlock, type Banded, bandedZeros } from "./banded";
import { type Blade, stepsAlong } from "./beam";

// A blade that nothing holds, as finite elements: two unknowns a node, its motion across the flat and its slope.

/** Elements along the blade; each panel between stations gets two at least. */
const ELEMENTS = 24;
const RULE = gaussRule(3);

/** Tonnes in a gram, and in a g/cm³ a tonne per mm³: mm, N, t and s go together. */
const T_PER_G = 1e-6;
export const T_PER_MM3 = 1e-9;
/** t mm² in a kg m². */
const T_MM2_PER_KG_M2 = 1e3;

/** A part that moves with the blade. */
export interface Fitting {
  /** [g] */
  readonly mass: number;
  /** In the x of the stations [mm] */
  readonly position: number;
  /** About its own centre, in the plane of the bending [kg m²] */
  readonly inertia: number;
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

/** Stiffness and mass of a blade with its fittings. */
export interface System {
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

export function systemOf(blade: Blade, fittings: readonly Fitting[]): System {
  const nodes = stepsAlong(blade.places, blade.start, blade.end, ELEMENTS);
  const size = 2 * nodes.length;
  const system = { nodes, stiffness: bandedZeros(size), mass: bandedZeros(size) };
  for (let element = 0; element < nodes.length - 1; element += 1) addElement(system, blade, element);
  for (const fitting of fittings) addFitting(system, fitting);
  return system;
}

/** How far a motion of the nodes moves a place across the flat. */
export function motionOf({ nodes }: System, motion: Float64Array, x: number): number {
  const element = elementAt(nodes, x);
  const { move } = motionAt(nodes, element, x);
  return move.reduce((sum, share, at) => sum + share * (motion[2 * element + at] as number), 0);
}
