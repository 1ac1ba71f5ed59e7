import type { Fuller } from "../../core/shape/fuller";
import type { Outline } from "../../core/shape/section";
import { figure } from "../charts/figure";
import { type Path, type Place, scaleDrawing } from "../charts/scale-drawing";
import { ask, firstRow } from "../parts/ask";
import type { BladeInput } from "./blade-form";
import { sectionPath } from "./section-outline";

/** Grinds with an edge on both sides: drawn about the middle line, the others below a straight back. */
const TWO_EDGED: readonly string[] = ["lenticular", "diamond", "hexagonal", "rectangle"];

function profilePath({ x, width, grind }: BladeInput): Path {
  const isTwoEdged = TWO_EDGED.includes(grind.word);
  const back = x.map((at, i) => [at, isTwoEdged ? -(width[i] ?? 0) / 2 : 0] as const);
  const edge = x.map((at, i) => [at, isTwoEdged ? (width[i] ?? 0) / 2 : (width[i] ?? 0)] as const);
  return [...back, ...edge.reverse()];
}

/** The blade seen from its side, with places marked. */
export function bladeProfile(blade: BladeInput, places: readonly Place[]): HTMLElement {
  const { x, width, grind } = blade;
  const length = (x.at(-1) ?? 0) - (x[0] ?? 0);
  const drawing = {
    title: "The blade to scale",
    description: `A ${grind.word} blade ${length} mm long, ${width[0]} mm wide at the heel and ${width.at(-1)} mm at the tip; ${places.map(({ name }) => name).join(", ")}.`,
    outline: profilePath(blade),
    places,
  };
  return figure(
    (pixels) => scaleDrawing(drawing, pixels),
    "The side of the blade, to scale both ways: heel at the left, tip at the right.",
  );
}

function heelFuller({ fullerWidth, fullerDepth }: BladeInput): Fuller {
  return { width: fullerWidth[0] ?? 0, depth: fullerDepth[0] ?? 0 };
}

function heelOutline({ grind, width, thickness, edge, bevelHeight, curve }: BladeInput): Outline {
  const wide = width[0] ?? 0;
  const bevel = bevelHeight === 0 ? wide : bevelHeight;
  return { grind, width: wide, thickness: thickness[0] ?? 0, edge, bevel, curve, flat: 0, rib: 0 };
}

/** Area at the heel, mm²: the volume of a slice 1 mm long as STATIONS reckons it. */
function heelArea(blade: BladeInput): string {
  const { grind, width, thickness, edge, bevelHeight, curve } = blade;
  const fuller = heelFuller(blade);
  const slice = [[0], [1]];
  const given = [
    width[0],
    thickness[0],
    grind.word,
    edge,
    null,
    bevelHeight,
    curve,
    fuller.width,
    fuller.depth,
  ];
  const [volume = ""] = firstRow(ask("STATIONS", slice, ...given));
  return Number(volume).toFixed(1);
}

/** The section at the heel. */
export function heelSection(blade: BladeInput): HTMLElement {
  const { grind } = blade;
  const fuller = heelFuller(blade);
  const outline = heelOutline(blade);
  const area = heelArea(blade);
  const fullered =
    fuller.width === 0 ? "" : `, a fuller ${fuller.width} mm wide and ${fuller.depth} mm deep on each side`;
  const drawing = {
    title: "The section at the heel to scale",
    description: `A ${grind.word} section ${outline.width} mm wide and ${outline.thickness} mm thick${fullered}; its area is ${area} mm².`,
    outline: sectionPath(outline, fuller),
  };
  return figure(
    (pixels) => scaleDrawing(drawing, pixels),
    `The section at the heel, to scale both ways, edge at the left: ${area} mm².`,
  );
}
