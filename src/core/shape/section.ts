import { lengthText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { wordAsked } from "../word-list";
import { findGrind, type Grind } from "./grinds";

/** A cross-section as it is described: lengths in mm; what is left out takes the default of its grind. */
export interface Section {
  /** One of `GRINDS`, or a word for it. */
  readonly grind: Grind | string;
  /** Spine to edge, or edge to edge; of the body under the rib for a T-back; 0 and more [mm]. */
  readonly width: number;
  /** At the spine or the middle; of the body under the rib for a T-back; 0 and more [mm]. */
  readonly thickness: number;
  /** Thickness behind the edge; 0 where left out [mm]. */
  readonly edge?: number | undefined;
  /** From the edge, across the width; the whole width where left out, if the grind allows that [mm]. */
  readonly bevelHeight?: number | undefined;
  /** Wheel radius of a hollow grind, height of the bulge of a convex one [mm]. */
  readonly curve?: number | undefined;
  /** Width of the flat of a hexagonal section, of the rib of a T-back [mm]. */
  readonly flatWidth?: number | undefined;
  /** Height of the rib of a T-back [mm]. */
  readonly ribHeight?: number | undefined;
}

/** The same with its grind found. */
type FoundSection = Section & { readonly grind: Grind };

/** A section with every figure given: the form that areas are computed from. All in mm. */
export interface Outline {
  readonly grind: Grind;
  readonly width: number;
  readonly thickness: number;
  readonly edge: number;
  readonly bevel: number;
  readonly curve: number;
  readonly flat: number;
  readonly rib: number;
}

/** A length must be one, and a figure that the grind has no use for is a slip, not a detail to be dropped. */
function checkFigure(word: string, name: string, value: number | undefined, used: boolean): void {
  if (value === undefined || (value === 0 && !used)) return;
  if (!Number.isFinite(value) || value < 0) {
    throw new InvalidValue(`${name} ${value}: give a length in mm, from 0`);
  }
  if (used) return;
  const hint = name === "bevel height" ? ', or use "part flat"' : "";
  throw new InvalidValue(
    `a "${word}" section takes no ${name}, ${lengthText(value)} given: leave it blank${hint}`,
  );
}

function checkFigures(section: FoundSection): void {
  const { grind } = section;
  const { word } = grind;
  checkFigure(word, "width", section.width, true);
  checkFigure(word, "thickness", section.thickness, true);
  checkFigure(word, "edge thickness", section.edge, grind.edge);
  checkFigure(word, "bevel height", section.bevelHeight, grind.bevel !== "");
  checkFigure(word, "radius or bulge", section.curve, grind.curve !== "");
  checkFigure(word, "flat or rib width", section.flatWidth, grind.flat !== "");
  checkFigure(word, "rib height", section.ribHeight, grind.flat === "rib width");
}

/** A figure without which the section is not defined. */
function needed(section: FoundSection, value: number | undefined, name: string): number {
  const isPoint = section.width === 0;
  if (isPoint || (value !== undefined && value > 0)) return value ?? 0;
  throw new InvalidValue(`a "${section.grind.word}" section needs a ${name} in mm`);
}

function bevelOf(section: FoundSection): number {
  const { grind, width, bevelHeight } = section;
  if (grind.bevel === "") return width;
  if (grind.bevel === "needed") return needed(section, bevelHeight, "bevel height");
  return bevelHeight === undefined || bevelHeight === 0 ? width : bevelHeight;
}

function curveOf(section: FoundSection): number {
  const { grind, curve } = section;
  if (grind.curve === "") return 0;
  const isFlatConvex = grind.curve === "bulge" && curve === 0;
  return isFlatConvex ? 0 : needed(section, curve, grind.curve);
}

const hasGrind = (section: Section): section is FoundSection => typeof section.grind === "object";

/** Only where the grind is a word: copying an object costs more than its area. */
function found(section: Section): FoundSection {
  return hasGrind(section) ? section : { ...section, grind: wordAsked(section.grind, findGrind) };
}

/**
 * A section with its defaults filled in and figures that its grind does not take refused.
 *
 * @throws InvalidValue naming the figure that is missing or out of place.
 */
export function outlineOf(described: Section): Outline {
  const section = found(described);
  checkFigures(section);
  const { grind, width, thickness, edge = 0 } = section;
  const hasRib = grind.flat === "rib width";
  return {
    grind,
    width,
    thickness,
    edge,
    bevel: bevelOf(section),
    curve: curveOf(section),
    flat: grind.flat === "" ? 0 : needed(section, section.flatWidth, grind.flat),
    rib: hasRib ? needed(section, section.ribHeight, "rib height") : 0,
  };
}
