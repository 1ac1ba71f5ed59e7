import { placeOf } from "../../formula/addresses";
import { type Area, meet } from "./area";
import { placesOf } from "./cells";
import type { Formula } from "./formula";

/** A range with the formulas that read it. */
interface Range {
  readonly area: Area;
  readonly formulas: Set<Formula>;
}

/** Ranges wider than this are kept apart instead of under each of their columns. */
const MAX_LISTED_COLUMNS = 64;

const keyOf = ({ row, column, lastRow, lastColumn }: Area) => `${row},${column},${lastRow},${lastColumn}`;
const isOneCell = ({ row, column, lastRow, lastColumn }: Area) => row === lastRow && column === lastColumn;

function eachMeeting(
  ranges: readonly Range[] | undefined,
  area: Area,
  visit: (formula: Formula) => void,
): void {
  for (const range of ranges ?? []) if (meet(range.area, area)) range.formulas.forEach(visit);
}

/** The formulas that read cells of one sheet. */
class SheetReaders {
  private readonly cells = new Map<number, Set<Formula>>();
  private readonly ranges = new Map<string, Range>();
  private readonly byColumn = new Map<number, Range[]>();
  private readonly wide: Range[] = [];

  add(area: Area, formula: Formula): void {
    if (isOneCell(area)) {
      const place = placeOf(area.row, area.column);
      const formulas = this.cells.get(place);
      if (formulas === undefined) this.cells.set(place, new Set([formula]));
      else formulas.add(formula);
      return;
    }
    this.rangeOf(area).formulas.add(formula);
  }

  remove(area: Area, formula: Formula): void {
    if (isOneCell(area)) this.cells.get(placeOf(area.row, area.column))?.delete(formula);
    else this.ranges.get(keyOf(area))?.formulas.delete(formula);
  }

  /** Calls back with each formula that reads one of some cells; with some of them more than once. */
  each(area: Area, visit: (formula: Formula) => void): void {
    for (const [row, column] of placesOf(area)) this.cells.get(placeOf(row, column))?.forEach(visit);
    for (let { column } = area; column <= area.lastColumn; column += 1)
      eachMeeting(this.byColumn.get(column), area, visit);
    eachMeeting(this.wide, area, visit);
  }

  private rangeOf(area: Area): Range {
    const key = keyOf(area);
    const found = this.ranges.get(key);
    if (found !== undefined) return found;
    const range = { area, formulas: new Set<Formula>() };
    this.ranges.set(key, range);
    const isWide = area.lastColumn - area.column >= MAX_LISTED_COLUMNS;
    if (isWide) this.wide.push(range);
    else for (let { column } = area; column <= area.lastColumn; column += 1) this.list(column, range);
    return range;
  }

  private list(column: number, range: Range): void {
    const listed = this.byColumn.get(column);
    if (listed === undefined) this.byColumn.set(column, [range]);
    else listed.push(range);
  }
}

/** Which formulas read which cells of a workbook. */
export class Readers {
  private readonly sheets = new Map<number, SheetReaders>();
  private readonly listed = new Set<Formula>();
  private later: Formula[] = [];

  /** Formulas that are not listed yet: listing them is left until it is needed. */
  get unlisted(): readonly Formula[] {
    return this.later;
  }

  addLater(formula: Formula): void {
    this.later.push(formula);
  }

  /** Lists what was left until now and still stands in its cell. @returns What was listed. */
  listAll(): readonly Formula[] {
    const late = this.later.filter((formula) => formula.cell.formula === formula);
    for (const formula of late) this.add(formula);
    this.later = [];
    return late;
  }

  /** What a formula reads becomes other cells. */
  relist(formula: Formula, change: () => void): void {
    const isListed = this.later.length === 0;
    if (isListed) this.remove(formula);
    change();
    if (isListed) this.add(formula);
  }

  /** Every formula that is listed with what it reads. */
  all(): Iterable<Formula> {
    return this.listed;
  }

  private add(formula: Formula): void {
    this.listed.add(formula);
    for (const area of formula.reads) this.of(area.sheet).add(area, formula);
  }

  remove(formula: Formula): void {
    this.listed.delete(formula);
    for (const area of formula.reads) this.of(area.sheet).remove(area, formula);
  }

  /** Calls back with each formula that reads one of some cells; with some of them more than once. */
  each(area: Area, visit: (formula: Formula) => void): void {
    this.sheets.get(area.sheet)?.each(area, visit);
  }

  private of(sheet: number): SheetReaders {
    const found = this.sheets.get(sheet);
    if (found !== undefined) return found;
    const made = new SheetReaders();
    this.sheets.set(sheet, made);
    return made;
  }
}
