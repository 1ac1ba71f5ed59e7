import { InvalidValue, NotAvailable, Refusal } from "../core/refusal";

/** What one worksheet cell holds once it has been read. `null` is an empty cell. */
export type Cell = number | string | boolean | null | Refusal;

export type Cells = readonly (readonly Cell[])[];

/** The forms in which Excel hands over a rich value or an error (an object with its plain value). */
interface RichValue {
  readonly type?: unknown;
  readonly basicValue?: unknown;
  readonly text?: unknown;
  readonly code?: unknown;
}

/**
 * Reads one raw cell as any host hands it over: plain values, `undefined` for an argument that was
 * left out, Excel's rich-value objects, its error objects in both known forms.
 */
function toCell(raw: unknown): Cell {
  switch (typeof raw) {
    case "number":
      return Number.isFinite(raw) ? raw : new InvalidValue("the cell holds a number that is not finite");
    case "string":
    case "boolean":
      return raw;
    case "object":
      if (raw === null) return null;
      return raw instanceof Refusal ? raw : richCell(raw as RichValue);
    default:
      return null;
  }
}

function richCell(rich: RichValue): Cell {
  if (rich.type === "Error" || (rich.type === undefined && typeof rich.code === "string")) {
    return errorCell(String(rich.basicValue ?? rich.code));
  }
  if (rich.type === "Entity" || rich.type === "LinkedEntity") {
    return typeof rich.text === "string" ? rich.text : errorCell(String(rich.basicValue));
  }
  return typeof rich.basicValue === "object" ? null : toCell(rich.basicValue);
}

/** An error that stood in an argument: it spoils its own row, and its sentence says where to look. */
function errorCell(code: string): Refusal {
  const sentence = `the cell this reads from holds ${code}: mend that cell first`;
  return code === "#N/A" ? new NotAvailable(sentence) : new InvalidValue(sentence);
}

function isPlain(raw: unknown): raw is Cell {
  return typeof raw === "string" || Number.isFinite(raw) || typeof raw === "boolean" || raw === null;
}

/** A row of plain values is taken as it stands: a sheet has a million rows. */
function toRow(row: unknown): readonly Cell[] {
  if (!Array.isArray(row)) return [toCell(row)];
  return row.every(isPlain) ? row : row.map(toCell);
}

/** Any argument as a rectangle of cells: a single value is 1 × 1; a ragged range is filled with empty cells. */
export function toCells(raw: unknown): Cells {
  if (!Array.isArray(raw)) return [[toCell(raw)]];
  const rows = raw.map(toRow);
  let width = 1;
  for (const row of rows) width = Math.max(width, row.length);
  if (rows.some((row) => row.length < width)) {
    return rows.map((row) => [...row, ...new Array<null>(width - row.length).fill(null)]);
  }
  return rows.length === 0 ? [[null]] : rows;
}

/** Empty, or an empty text: what a cell that nobody filled in looks like. */
export function isEmpty(cell: Cell): boolean {
  return cell === null || (typeof cell === "string" && cell.trim() === "");
}

const LONGEST_QUOTE = 80;

/** A cell as a sentence quotes it; a long text is cut short. */
export function quoted(cell: Cell): string {
  if (typeof cell !== "string") return String(cell);
  return cell.length > LONGEST_QUOTE ? `"${cell.slice(0, LONGEST_QUOTE)}…"` : `"${cell}"`;
}
