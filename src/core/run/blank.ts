import { InvalidValue } from "../refusal";
import { taperedBlade } from "../shape/taper";
import { densityOf } from "../steel/density";
import { forgeLength, USUAL_LOSSES, USUAL_TONG_HOLD } from "../stock/forge-length";
import { type BarCount, barsFor } from "./bars";
import type { ReadLine } from "./line";

/** Steel of a line. */
export interface PlannedStock {
  /** Of one piece as it is hardened [kg]. */
  readonly hardenKg: number | undefined;
  /** Bars to buy and what each gives; undefined without a bar length. */
  readonly bars: BarCount | undefined;
  /** Steel to buy: whole bars, or the blanks where no bar length is given [kg]. */
  readonly kilograms: number | undefined;
  /** Sentences on what the steel leaves open. */
  readonly cautions: readonly string[];
}

const G_PER_KG = 1000;
const MM3_PER_CM3 = 1000;

/**
 * Mass of one finished blade without its tang [g]; nothing where a size is not given.
 *
 * @throws InvalidValue for a section that cannot be.
 */
export function bladeMass(line: ReadLine): number | undefined {
  const { length, width, thickness } = line;
  if (length === undefined || width === undefined || thickness === undefined) return undefined;
  return taperedBlade({ ...line, length, width, thickness }, densityOf(line.steel).value).mass;
}

/** What forging takes of a piece that is cut first, where nothing is said. */
const FORGING = { ...USUAL_LOSSES, tong: USUAL_TONG_HOLD, rule: "multiply" } as const;

/** Bar for a forged blade of which the volume is given. */
function forgedLength({ forgedVolume, blankWidth, blankThickness }: ReadLine): number | undefined {
  if (forgedVolume === undefined || blankWidth === undefined || blankThickness === undefined)
    return undefined;
  return forgeLength({
    ...FORGING,
    volume: forgedVolume,
    barWidth: blankWidth,
    barThickness: blankThickness,
  });
}

/** What one piece is cut as: its own blank, else the size of the blade. */
function blankOf(line: ReadLine) {
  return {
    length: line.blankLength ?? forgedLength(line) ?? line.length,
    width: line.blankWidth ?? line.width,
    thickness: line.blankThickness ?? line.thickness,
  };
}

/** @throws InvalidValue for a blank that is smaller than its blade. */
export function checkBlank(line: ReadLine): void {
  if (line.forgedVolume !== undefined) return;
  const sides = ["length", "width", "thickness"] as const;
  const own = { length: line.blankLength, width: line.blankWidth, thickness: line.blankThickness };
  for (const side of sides) {
    const [blank, blade] = [own[side], line[side]];
    const isForged = side !== "length" && line.blankLength !== undefined;
    if (blank === undefined || blade === undefined || isForged || blank >= blade) continue;
    throw new InvalidValue(
      `blank ${side}: ${blank} mm is less than the ${side} of the blade, ${blade} mm; for a forged blade ` +
        "give its volume as forged mm³, or the blank length too",
    );
  }
}

function sizeCaution({ length, width, thickness }: ReadLine): string[] {
  const missing = Object.entries({ length, width, thickness }).filter(([, value]) => value === undefined);
  if (missing.length === 0 || missing.length === 3) return [];
  return [`No mass: ${missing.map(([side]) => side).join(" and ")} not given.`];
}

/**
 * Bars and steel to buy of a line.
 *
 * @param starts - Pieces begun.
 * @throws InvalidValue for a blank that no bar holds.
 */
export function plannedStock(line: ReadLine, starts: number): PlannedStock {
  const density = densityOf(line.steel).value;
  const { length, width, thickness } = blankOf(line);
  const area = width === undefined || thickness === undefined ? undefined : width * thickness;
  const kilogramsOf = (mm: number | undefined) =>
    mm === undefined || area === undefined ? undefined : (mm * area * density) / MM3_PER_CM3 / G_PER_KG;
  const { barLength, kerf, trim, hardenMass } = line;
  const bars =
    barLength === undefined || length === undefined
      ? undefined
      : barsFor({ piece: length, pieces: starts, barLength, kerf, trim });
  const blankKg = kilogramsOf(length);
  const bought =
    bars === undefined ? kilogramsOf(length === undefined ? undefined : length * starts) : undefined;
  return {
    hardenKg: hardenMass === undefined ? blankKg : hardenMass / G_PER_KG,
    bars,
    kilograms: bars === undefined ? bought : kilogramsOf(bars.bars * (barLength ?? 0)),
    cautions: sizeCaution(line),
  };
}
