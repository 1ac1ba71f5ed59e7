import { type Fuller, fullerArea } from "../core/shape/fuller";
import { outlineArea } from "../core/shape/section-area";
import { type BladeInput, heelOutline } from "./blade-form";
import { type Path, type Place, scaleDrawing } from "./scale-drawing";
import { sectionPath } from "./section-outline";
import { figure } from "./svg";

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

/** Area at the heel with one fuller on each face, mm². */
function heelArea(blade: BladeInput): number {
  const outline = heelOutline(blade);
  return outlineArea(outline) - 2 * fullerArea(outline, heelFuller(blade));
}

/** The section at the heel. */
export function heelSection(blade: BladeInput): HTMLElement {
  const { grind } = blade;
  const fuller = heelFuller(blade);
  const outline = heelOutline(blade);
  const area = heelArea(blade).toFixed(1);
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
