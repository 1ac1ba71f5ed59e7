import { Refusal } from "../../src/core/refusal";
import type { Cell, Cells } from "../../src/functions/cells";

/** Words that only a fault of ours can put into a sentence. */
const TELLTALE =
  /fault in the add-in|\bNaN\b|\bundefined\b|\[object |Infinity|is not a function|Cannot read|\bnull\b/;

/** A temperature in °C that is not followed by the same in °F. */
const ONE_SCALE = /-?\d+(?:\.\d+)? °C(?!\/)(?! \(-?\d+ °F\))(?! \(\d+ °F as a difference\))/;

/** What the caller typed may stand in a sentence in quotes, whatever it is. */
function withoutQuotes(text: string): string {
  return text.replace(/"[^"]*"/g, '""');
}

function textFault(text: string): string | undefined {
  const own = withoutQuotes(text);
  if (TELLTALE.test(own)) return `a word of the machine: ${text}`;
  if (ONE_SCALE.test(own)) return `a temperature in one scale: ${text}`;
  return undefined;
}

function refusalFault({ message, code }: Refusal): string | undefined {
  if (code !== "#VALUE!" && code !== "#N/A") return `code ${code}`;
  if (message.trim().length < 10) return `no sentence: "${message}"`;
  return textFault(message);
}

function cellFault(cell: Cell): string | undefined {
  if (cell instanceof Refusal) return refusalFault(cell);
  if (typeof cell === "string") return textFault(cell);
  if (typeof cell === "number") return Number.isFinite(cell) ? undefined : `the number ${cell}`;
  // A table hands a cell of the smith's own back as it came.
  return typeof cell === "boolean" ? undefined : `a cell that holds ${String(cell)}`;
}

/** What is wrong with an answer whatever the question was; `undefined` where nothing is. */
export function faultOf(cells: Cells): string | undefined {
  const width = cells[0]?.length ?? 0;
  if (width === 0) return "no cell at all";
  if (cells.some((row) => row.length !== width)) return "rows of different widths";
  for (const cell of cells.flat()) {
    const fault = cellFault(cell);
    if (fault !== undefined) return fault;
  }
  return undefined;
}

/** An answer as plain values, so that two can be compared. */
export function plain(cells: Cells): unknown[][] {
  return cells.map((row) =>
    row.map((cell) => (cell instanceof Refusal ? `${cell.code} ${cell.message}` : cell)),
  );
}
