import { checkFigure, type FigureLimits } from "../figure-limits";

// Limits of sense: beyond them a figure is a slip, and the table of the search outgrows memory.

/** Of a piece and of a bar [mm] */
export const PIECE_LENGTH = { unit: "mm", min: 0.1, max: 30_000 } as const satisfies FigureLimits;
export const PIECES = { unit: "", min: 0, max: 100_000, whole: true } as const satisfies FigureLimits;
/** Width or thickness of a flat bar [mm] */
export const BAR_SIDE = { unit: "mm", min: 0.1, max: 1000 } as const satisfies FigureLimits;
export const KERF = { unit: "mm", min: 0, max: 20 } as const satisfies FigureLimits;
export const TRIM = { unit: "mm", min: 0, max: 1000 } as const satisfies FigureLimits;
/** Of one steel and section in the rack [kg] */
export const KG_IN_STOCK = { unit: "kg", min: 0, max: 1e6 } as const satisfies FigureLimits;
const BAR_PRICE: FigureLimits = { unit: "", min: 0 };
const BARS_IN_STOCK: FigureLimits = { unit: "", min: 0, whole: true };

/** What is taken for the width of a cut and for what is cut off a bar where nothing is said [mm] */
export const USUAL_KERF = 1.2;
export const USUAL_TRIM = 10;

/** @throws InvalidValue for a width of cut or a trim that cannot be. */
export function checkCut(kerf: number, trim: number): void {
  checkFigure(kerf, "kerf", KERF);
  checkFigure(trim, "trim", TRIM);
}

/** @throws InvalidValue for a length or a quantity that cannot be. */
export function checkPieces(length: number, quantity: number): void {
  checkFigure(length, "length", PIECE_LENGTH);
  checkFigure(quantity, "quantity", PIECES);
}

/** @throws InvalidValue for a length, a price or a stock of bars that cannot be. */
export function checkBar(bar: {
  readonly length: number;
  readonly price?: number | undefined;
  readonly inStock?: number | undefined;
}): void {
  checkFigure(bar.length, "bar length", PIECE_LENGTH);
  if (bar.price !== undefined) checkFigure(bar.price, "bar price", BAR_PRICE);
  if (bar.inStock !== undefined) checkFigure(bar.inStock, "bars in stock", BARS_IN_STOCK);
}
