import { readCellName, readRectangle } from "../../../formula/addresses";
import { FileRefusal } from "../package/file-refusal";
import { type OpenTag, type Visitor, walkXml } from "../package/xml";
import { ItemText } from "../strings";
import type { StoredCell, StoredFormula, StoredRow, StoredSheet } from "./stored-sheet";

/** No planning workbook comes near; a file beyond it would exhaust memory. */
const MAX_CELLS = 500_000;

type Open<T> = { -readonly [K in keyof T]: T[K] };

function formulaFrom({ attributes, start, end }: OpenTag): Open<StoredFormula> {
  const kinds = ["shared", "array", "dataTable"] as const;
  return {
    text: "",
    kind: kinds.find((kind) => kind === attributes.t) ?? "normal",
    area: readRectangle(attributes.ref),
    sharedIndex: attributes.si,
    start,
    tagEnd: end,
    closeStart: end,
    end,
  };
}

/** Builds the rows and cells of one worksheet part from the visits of its XML. */
class SheetReader implements Visitor {
  readonly rows: StoredRow[] = [];
  prefix: string | undefined;
  data: StoredSheet["data"] | undefined;
  dimension: StoredSheet["dimension"];
  isProtected = false;
  private row: (Open<StoredRow> & { cells: StoredCell[] }) | undefined;
  private cell: Open<StoredCell> | undefined;
  private formula: Open<StoredFormula> | undefined;
  private value: string | undefined;
  private readonly item = new ItemText();
  private inItem = false;
  private count = 0;

  open(tag: OpenTag): void {
    this.prefix ??= tag.prefix;
    if (this.cell) this.openInCell(this.cell, tag);
    else if (tag.name === "c" && this.row) this.openCell(this.row, tag);
    else if (tag.name === "row") this.openRow(tag);
    else this.openOther(tag);
  }

  text(text: string): void {
    if (this.formula) this.formula.text += text;
    else if (this.value !== undefined) this.value += text;
    else if (this.inItem) this.item.add(text);
  }

  close(name: string, start: number, end: number): void {
    if (this.cell) this.closeInCell(this.cell, name, start, end);
    else if (name === "row" && this.row) {
      this.rows.push(Object.assign(this.row, { closeStart: start, end }));
      this.row = undefined;
    } else if (name === "sheetData" && this.data) this.data = { ...this.data, closeStart: start };
  }

  private openOther({ name, attributes, start, end }: OpenTag): void {
    if (name === "sheetData") this.data = { start, tagEnd: end, closeStart: end };
    if (name === "sheetProtection") this.isProtected = /^(?:1|true)$/.test(attributes.sheet ?? "");
    const area = name === "dimension" ? readRectangle(attributes.ref) : undefined;
    if (area) this.dimension = { start, end, area };
  }

  /** Rows count like cells: a sheet may name a million of them without a cell. */
  private countOne(): void {
    this.count += 1;
    if (this.count <= MAX_CELLS) return;
    const most = MAX_CELLS.toLocaleString("en-GB");
    throw new FileRefusal(
      `The file holds more than ${most} rows and cells on one sheet; no more are read. Delete what is not needed.`,
    );
  }

  private openRow({ attributes, start, end }: OpenTag): void {
    this.countOne();
    const given = Number(attributes.r) - 1;
    const row = Number.isInteger(given) ? given : (this.rows.at(-1)?.row ?? -1) + 1;
    this.row = { row, start, tagEnd: end, closeStart: end, end, cells: [] };
  }

  private openCell(row: StoredRow, { attributes, start, end }: OpenTag): void {
    this.countOne();
    const place = readCellName(attributes.r ?? "") ?? {
      row: row.row,
      column: (row.cells.at(-1)?.column ?? -1) + 1,
    };
    this.cell = {
      row: place.row,
      column: place.column,
      type: attributes.t ?? "n",
      style: attributes.s,
      isDynamic: attributes.cm !== undefined,
      formula: undefined,
      raw: undefined,
      valueStart: -1,
      valueEnd: -1,
      start,
      tagEnd: end,
      end,
    };
  }

  private openInCell(cell: Open<StoredCell>, tag: OpenTag): void {
    if (this.inItem) this.item.open(tag.name);
    else if (tag.name === "f") this.formula = formulaFrom(tag);
    else if (tag.name === "v") {
      this.value = "";
      cell.valueStart = tag.start;
    } else if (tag.name === "is") {
      this.inItem = true;
      cell.valueStart = tag.start;
    }
  }

  private closeInCell(cell: Open<StoredCell>, name: string, start: number, end: number): void {
    if (name === "c") {
      cell.end = end;
      this.row?.cells.push(cell);
      this.cell = undefined;
    } else if (name === "f" && this.formula) {
      cell.formula = Object.assign(this.formula, { closeStart: start, end });
      this.formula = undefined;
    } else if (name === "v" || name === "is") this.closeValue(cell, end);
    else if (this.inItem) this.item.close(name);
  }

  private closeValue(cell: Open<StoredCell>, end: number): void {
    cell.raw = this.inItem ? this.item.take() : (this.value ?? "");
    cell.valueEnd = end;
    this.value = undefined;
    this.inItem = false;
  }
}

/** Reads the cells of a worksheet part. @throws FileRefusal where it is no worksheet or cannot be read. */
export function readSheet(part: string, xml: string): StoredSheet {
  const reader = new SheetReader();
  walkXml(part, xml, {
    open: (tag) => reader.open(tag),
    text: (text) => reader.text(text),
    close: (name, start, end) => reader.close(name, start, end),
  });
  const { rows, data, dimension, isProtected } = reader;
  if (data === undefined) throw new FileRefusal(`Part ${part} of the file is not a worksheet.`);
  return { xml, prefix: reader.prefix ?? "", rows, data, dimension, isProtected };
}
