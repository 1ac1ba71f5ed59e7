import { quantityText } from "../quantity-text";

/** Cross-section of a bar or sheet. */
export interface BarSection {
  /** The same for the same sizes, whichever is given first: 50 × 3 is 3 × 50. */
  readonly key: string;
  /** As an order writes it: "50 × 3 mm", "Ø 20 mm". */
  readonly text: string;
  /** Of the cross-section [mm²]. */
  readonly area: number;
}

/** Sizes that differ by less are one: a hundredth of a millimetre. */
const SIZE_DIGITS = 2;

/** A flat bar or strip of width × thickness, mm. */
export function flatSection(width: number, thickness: number): BarSection {
  const [wide, thin] = [Math.max(width, thickness), Math.min(width, thickness)];
  return {
    key: `${wide.toFixed(SIZE_DIGITS)}x${thin.toFixed(SIZE_DIGITS)}`,
    text: `${quantityText(width, "")} × ${quantityText(thickness, "mm")}`,
    area: width * thickness,
  };
}

/** A round bar, mm. */
export function roundSection(diameter: number): BarSection {
  return {
    key: `round ${diameter.toFixed(SIZE_DIGITS)}`,
    text: `Ø ${quantityText(diameter, "mm")}`,
    area: (Math.PI * diameter ** 2) / 4,
  };
}
