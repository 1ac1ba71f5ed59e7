import { checkFigure } from "../figure-limits";
import { quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { relation } from "../relation";
import { checkBar, checkCut, PIECE_LENGTH, USUAL_KERF, USUAL_TRIM } from "../stock/cutting-limits";

/** Bars for pieces of one length. */
export const BAR_COUNT = relation({
  title: "Bars for pieces of one length",
  source: "shop-arithmetic",
  locator: "pieces a bar = whole part of (bar - trim + kerf) ÷ (piece + kerf); the last piece needs no cut",
  evidence: "standard",
  inputs: {},
  output: { label: "bars", unit: "" },
  error: {
    size: 0,
    unit: "",
    kind: "exact for sizes as given; lines of one steel and section may share bars, STEEL_ORDER counts that",
  },
});

/** Pieces of one length cut from bars of one length. Lengths in mm. */
export interface BarCut {
  /** Length of one, 0.1 to 30,000 [mm]. */
  readonly piece: number;
  /** Wanted, whole, 0 and more [-]. */
  readonly pieces: number;
  /** Of one bar, 0.1 to 30,000 [mm]. */
  readonly barLength: number;
  /** Width of a cut, 0 to 20; 1.2 where left out [mm]. */
  readonly kerf?: number | undefined;
  /** Cut off each bar, both ends together, 0 to 1000; 10 where left out [mm]. */
  readonly trim?: number | undefined;
}

export interface BarCount {
  /** Bars to buy [-]. */
  readonly bars: number;
  /** Pieces that one bar gives [-]. */
  readonly piecesABar: number;
  /** Left of a full bar after its last cut [mm]. */
  readonly drop: number;
  /** Length of the pieces as a share of the length of the bars, 0 to 1 [-]. */
  readonly use: number;
}

/** Binary fractions must not cost a piece: three of 0.1 in 0.3 are three. */
const ROUNDING = 1e-9;

/**
 * Bars for pieces of one length.
 *
 * @param cut - Lengths of piece, bar, kerf and trim [mm], number of pieces.
 * @returns Bars, pieces a bar, drop [mm], use of the bars 0 to 1.
 * @throws InvalidValue for a piece longer than the bar, and for what is no figure or past the limits of `cutPlan`.
 * Error and source: {@link BAR_COUNT}.
 */
export function barsFor({
  piece,
  pieces,
  barLength,
  kerf = USUAL_KERF,
  trim = USUAL_TRIM,
}: BarCut): BarCount {
  checkCut(kerf, trim);
  checkFigure(piece, "piece", PIECE_LENGTH);
  checkFigure(pieces, "pieces", { unit: "", min: 0, whole: true });
  checkBar({ length: barLength });
  const usable = barLength - trim;
  const piecesABar = Math.floor((usable + kerf) / (piece + kerf) + ROUNDING);
  if (piecesABar < 1) {
    throw new InvalidValue(
      `a blank of ${quantityText(piece, "mm")} is longer than the bar: ${quantityText(barLength, "mm")} less ` +
        `${quantityText(trim, "mm")} trim leaves ${quantityText(Math.max(0, usable), "mm")}`,
    );
  }
  const bars = Math.ceil(pieces / piecesABar);
  const drop = Math.max(0, usable - piecesABar * (piece + kerf));
  return { bars, piecesABar, drop, use: bars === 0 ? 0 : (pieces * piece) / (bars * barLength) };
}
