import type { Rectangle } from "../../formula/addresses";
import type { Area } from "./area";
import type { SheetCells } from "./cells";
import type { Formula } from "./formula";
import { formulaBehind } from "./reading";

/** Cells of a range that are looked at before the formula that reads it is worked out; in larger ones only then. */
const MAX_LOOKED_AT = 4096;
/** A range of more cells is walked through once in a calculation, not again by each formula that reads it. */
const MAX_WALKED = 8;

const keyOf = ({ sheet, row, column, lastRow, lastColumn }: Area) =>
  `${sheet},${row},${column},${lastRow},${lastColumn}`;

const sizeOf = ({ row, column, lastRow, lastColumn }: Rectangle) =>
  (lastRow - row + 1) * (lastColumn - column + 1);

/** Finds what comes before a formula while formulas are worked out as they are asked for. */
export class DueBefore {
  /** Large ranges in which nothing is due any more: many formulas look a value up in the same one. */
  private readonly settled = new Set<string>();

  constructor(private readonly sheets: readonly SheetCells[]) {}

  /** Formulas became due. */
  forget(): void {
    this.settled.clear();
  }

  /** Formulas that are due and stand in the cells that a formula names. */
  of(formula: Formula): Formula[] {
    const found: Formula[] = [];
    for (const area of formula.pattern.areasAt(formula.place.row)) {
      const part = this.sheets[area.sheet]?.filledPart(area);
      if (part === undefined) continue;
      const size = sizeOf(part);
      if (size <= MAX_WALKED) this.findDue({ ...part, sheet: area.sheet }, formula, found);
      else if (size <= MAX_LOOKED_AT) this.findDueOnce({ ...part, sheet: area.sheet }, formula, found);
    }
    return found;
  }

  private findDueOnce(area: Area, formula: Formula, found: Formula[]): void {
    const key = keyOf(area);
    if (this.settled.has(key)) return;
    const before = found.length;
    this.findDue(area, formula, found);
    if (found.length === before) this.settled.add(key);
  }

  private findDue(area: Area, formula: Formula, found: Formula[]): void {
    const sheet = this.sheets[area.sheet];
    for (let { row } = area; row <= area.lastRow; row += 1)
      for (let { column } = area; column <= area.lastColumn; column += 1) {
        const behind = formulaBehind(sheet?.at(row, column));
        if (behind?.state === "due" && behind !== formula) found.push(behind);
      }
  }
}
