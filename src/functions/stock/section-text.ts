import { attemptOr, InvalidValue } from "../../core/refusal";
import { type BarSection, flatSection, roundSection } from "../../core/stock/bar-section";
import { shopLength } from "./shop-length";

const ROUND = /^(?:ø|⌀|dia(?:meter)?\.?|round|rd\.?)\s*(.+)$/i;
const BETWEEN = /\s*[x×*]\s*/i;
const LARGEST = 2000;

/** A size with the unit of the last one, where it has none of its own: "1 1/2 x 1/4 in" is all inches. */
function sizeOf(text: string, unit: string): number {
  const hasUnit = /[a-z"'″]/i.test(text);
  return shopLength(hasUnit || unit === "" ? text : `${text} ${unit}`);
}

/**
 * The cross-section of a bar as people write it: "50 × 3 mm", "2 x 1/4 in", "Ø 20".
 *
 * @throws InvalidValue for anything else, and for sizes that no bar has.
 */
export function sectionNamed(given: string | number): BarSection {
  const text = String(given).trim();
  const [, diameter] = ROUND.exec(text) ?? [];
  const sizes = (diameter ?? text).split(BETWEEN);
  const wanted = diameter === undefined ? 2 : 1;
  const unit = /(in|inch|"|″|cm|mm)\.?$/i.exec(text)?.[1] ?? "";
  const figures = attemptOr([], () => sizes.map((size) => sizeOf(size, unit)));
  const [width, thickness = 0] = figures;
  const isBar = figures.length === wanted && figures.every((figure) => figure > 0 && figure <= LARGEST);
  if (width === undefined || !isBar) {
    throw new InvalidValue(
      `section "${text.slice(0, 40)}" given; give width × thickness in mm, "50 x 3", or a diameter, "Ø 20"; up to ${LARGEST} mm`,
    );
  }
  return diameter === undefined ? flatSection(width, thickness) : roundSection(width);
}
