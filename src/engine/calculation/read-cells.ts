import { type Rectangle, SHEET_COLUMNS } from "../../formula/addresses";

/** Bits of a number that shifts take. */
const BITS = 31;
/** Stands for the place of a cell where none was chosen. */
const NOWHERE = -1;

/**
 * What a formula read of the cells that it names, in the order of its references: which of them, a bit for each (those
 * of a branch that was not taken are left out), and of those that INDEX chose one cell from, that cell alone. A plan
 * looks up the cells of a line in whole columns: an edit in one line is none of what the others say.
 */
export class ReadCells {
  private readonly bits: number[];
  /** Numbers of references, and behind each the place that was chosen in it. */
  private readonly chosen: number[] = [];

  constructor(references: number) {
    this.bits = new Array(Math.ceil(references / BITS)).fill(0);
  }

  /** Notes that a reference was read. */
  add(reference: number): void {
    const word = Math.floor(reference / BITS);
    this.bits[word] = (this.bits[word] ?? 0) | (1 << (reference % BITS));
  }

  /** Notes that of a reference one cell was read. */
  choose(reference: number, row: number, column: number): void {
    this.chosen.push(reference, row * SHEET_COLUMNS + column);
  }

  /** Notes that of a reference no cell was read. */
  chooseNone(reference: number): void {
    this.chosen.push(reference, NOWHERE);
  }

  /** False where a reference was not read, or another cell of it than those of an area on its sheet. */
  mayBeIn(reference: number, area: Rectangle): boolean {
    if (((this.bits[Math.floor(reference / BITS)] ?? 0) & (1 << (reference % BITS))) === 0) return false;
    const place = this.placeIn(reference);
    if (place === undefined) return true;
    if (place === NOWHERE) return false;
    const [row, column] = [Math.floor(place / SHEET_COLUMNS), place % SHEET_COLUMNS];
    return row >= area.row && row <= area.lastRow && column >= area.column && column <= area.lastColumn;
  }

  private placeIn(reference: number): number | undefined {
    for (let at = 0; at < this.chosen.length; at += 2)
      if (this.chosen[at] === reference) return this.chosen[at + 1];
    return undefined;
  }

  /** True where another reading was of the same references, and of whole ones. */
  isLike(other: ReadCells | undefined): boolean {
    return (
      other !== undefined &&
      this.chosen.length === 0 &&
      other.chosen.length === 0 &&
      this.bits.length === other.bits.length &&
      this.bits.every((word, at) => word === other.bits[at])
    );
  }
}
