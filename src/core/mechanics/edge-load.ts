import { quantityText } from "../quantity-text";
import { InvalidValue, NotAvailable } from "../refusal";
import { relation } from "../relation";
import { rootBetween } from "./root";

const RADIANS = Math.PI / 180;
/** The thickest edge that is looked for [mm] */
const THICKEST_EDGE = 10;

/** Side load on an edge. */
export const EDGE_BENDING = relation({
  title: "Side load at which a wedge-shaped edge takes a set",
  source: "wedge-bending",
  locator: "bending stress 6 M ÷ t² of a wedge loaded across its edge over the depth of the contact",
  evidence: "standard",
  inputs: { angle: { label: "angle a side", unit: "°", min: 3, max: 40 } },
  output: { label: "side load", unit: "N/mm" },
  error: {
    size: 20,
    unit: "%",
    kind: "within 8 % of the exact wedge below 40° included, and the error of the yield strength",
  },
  note:
    "A bound for comparing two grinds or two hardnesses, not a rating: chips, carbides, burrs and fatigue are left out. " +
    "The load is spread from the apex over the depth of the contact.",
});

/** An edge as it is ground. */
export interface Edge {
  /** Thickness behind the edge bevel [mm] */
  readonly behind: number;
  /** Of the edge bevel, a side [°] */
  readonly angle: number;
  /** How deep from the apex the load touches [mm] */
  readonly contact: number;
}

export interface EdgeLoad {
  /** Side load at which the set begins, per mm of edge [N/mm] */
  readonly first: number;
  /** How deep the set then reaches from the apex [mm] */
  readonly depth: number;
  /** Side load at which the set reaches the shoulder of the bevel [N/mm] */
  readonly whole: number;
}

/** Up to this hardness the trade expects an overloaded edge to roll, from the other one to chip. */
const ROLLS_UP_TO_HRC = 58;
const CHIPS_FROM_HRC = 61;

/** What an overloaded edge is expected to do at a hardness [HRC]; common practice, no source. */
export function rollOrChip(hrc: number): string {
  if (hrc <= ROLLS_UP_TO_HRC) return "overloaded, an edge of this hardness usually rolls (common practice)";
  if (hrc >= CHIPS_FROM_HRC) return "overloaded, an edge of this hardness usually chips (common practice)";
  return "overloaded, an edge of this hardness may roll or chip (common practice)";
}

/** Height of the edge bevel from apex to shoulder [mm] */
function bevelHeight({ behind, angle }: Pick<Edge, "behind" | "angle">): number {
  return behind / (2 * Math.tan(angle * RADIANS));
}

/** Load that brings the section at the shoulder to its yield strength: yield times t² over 6 times the lever. */
function shoulderLoad(edge: Edge, yieldMPa: number): number {
  return (yieldMPa * edge.behind ** 2) / (6 * (bevelHeight(edge) - edge.contact / 2));
}

function checkEdge(edge: Edge): void {
  const height = bevelHeight(edge);
  if (edge.contact <= height) return;
  throw new InvalidValue(
    `contact ${quantityText(edge.contact, "mm")} given, deeper than the bevel of ${quantityText(height, "mm")} ` +
      `(${quantityText(edge.behind, "mm")} behind the edge at ${quantityText(edge.angle, "°")} a side): give a smaller contact`,
  );
}

/**
 * Side load at which an edge begins to take a set, and at which the set reaches the shoulder of its bevel.
 * Over the depth of the contact `c` the bending stress is the same, 0.75 w ÷ (c tan² angle); behind it falls.
 *
 * @param edge - Thickness behind the edge [mm], angle a side [°], contact [mm]
 * @param yieldMPa - Yield strength [MPa]
 * @returns Loads per mm of edge [N/mm] and depth [mm]
 * @throws InvalidValue for a contact deeper than the bevel.
 * Error: the beam form is within 8 % of the exact wedge below 40° included.
 * Source: beam form of the wedge solution of Carothers and Inglis.
 */
export function edgeLoad(edge: Edge, yieldMPa: number): EdgeLoad {
  checkEdge(edge);
  const { angle, contact } = edge;
  return {
    first: (yieldMPa * contact * Math.tan(angle * RADIANS) ** 2) / 0.75,
    depth: contact,
    whole: shoulderLoad(edge, yieldMPa),
  };
}

/**
 * Thickness behind the edge at which a side load just brings the set to the shoulder of the bevel.
 *
 * @param load - Side load per mm of edge [N/mm]
 * @param edge - Angle a side [°], contact [mm]
 * @param yieldMPa - Yield strength [MPa]
 * @returns [mm]
 * @throws NotAvailable where the load needs over 10 mm, or is less than the thinnest bevel bears.
 * Error and source: {@link EDGE_BENDING}, of which it is the inverse.
 */
export function edgeForLoad(load: number, edge: Omit<Edge, "behind">, yieldMPa: number): number {
  const thinnest = 2 * edge.contact * Math.tan(edge.angle * RADIANS);
  const excess = (behind: number) => shoulderLoad({ ...edge, behind }, yieldMPa) / load - 1;
  if (excess(thinnest) >= 0) {
    throw new NotAvailable(
      `${quantityText(load, "N/mm")} is borne by a bevel no higher than the contact, ${quantityText(thinnest, "mm")} ` +
        "behind the edge: give a larger load or a smaller contact",
    );
  }
  if (excess(THICKEST_EDGE) < 0) {
    throw new NotAvailable(
      `${quantityText(load, "N/mm")} would need over ${quantityText(THICKEST_EDGE, "mm")} behind the edge: give a smaller load`,
    );
  }
  return rootBetween(excess, thinnest, THICKEST_EDGE, { tolerance: 1e-12, within: 1e-12 });
}
