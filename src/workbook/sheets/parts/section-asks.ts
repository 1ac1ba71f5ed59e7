import { GRINDS, type Grind } from "../../../core/shape/grinds";
import { textLiteral } from "../../../formula/tokens";

const CURVES = { "": "", "wheel radius": "the radius of the wheel", bulge: "the height of the bulge" };
const FLATS = { "": "", "flat width": "the width of the flat", "rib width": "width and height of the rib" };
const BEVELS = {
  "": "",
  needed: "the bevel height",
  full: "the bevel height unless it is the whole width",
};

/** What a section asks for beyond width, thickness and edge. */
function asked({ word, edge, bevel, curve, flat }: Grind): string {
  const wanted = [CURVES[curve], FLATS[flat], BEVELS[bevel]].filter((name) => name !== "");
  if (wanted.length > 0) return `${word} asks for ${wanted.join(", and ")}`;
  return edge ? "" : `${word} has no thickness behind the edge`;
}

/** Formula, without its equals sign, of what the section named in a cell asks for; empty where that is nothing more. */
export function sectionAsks(cell: string): string {
  const known = GRINDS.map((grind) => [grind.word, asked(grind)] as const).filter(
    ([, words]) => words !== "",
  );
  return known.reduceRight(
    (otherwise, [word, words]) => `IF(${cell}=${textLiteral(word)},${textLiteral(words)},${otherwise})`,
    '""',
  );
}
