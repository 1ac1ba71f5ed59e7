import { NotAvailable, Refusal } from "../../core/refusal";
import { functionNamed, NAMESPACE } from "../../functions/catalogue";
import type { Cell, Cells } from "../../functions/cells";
import { evaluate } from "../../functions/evaluate";

/** What a worksheet function answers, with the sentence of the first refusal in it. */
export interface Reply {
  readonly rows: Cells;
  readonly refusal: string | null;
}

/**
 * Asks a worksheet function exactly as a cell would, so that the pane cannot show another figure
 * than the sheet.
 *
 * @param name - Name without namespace.
 * @param given - The arguments; `null` for one left out.
 */
export function ask(name: string, ...given: readonly unknown[]): Reply {
  const fn = functionNamed(name);
  const rows =
    fn === undefined
      ? [[new NotAvailable(`this edition has no function ${NAMESPACE}.${name}`)]]
      : evaluate(fn, given);
  const refused = rows.flat().find((cell) => cell instanceof Refusal);
  return { rows, refusal: refused instanceof Refusal ? refused.message : null };
}

/** The only row of an answer as texts; a refused or empty cell is an empty text. */
export function firstRow({ rows }: Reply): string[] {
  return (rows[0] ?? []).map(cellText);
}

/** One column of texts; an answer that refuses gives none. */
export function list(reply: Reply): string[] {
  if (reply.refusal !== null) return [];
  return reply.rows.map((row) => cellText(row[0] ?? null)).filter((text) => text !== "");
}

/** A cell as text; the error of a refusal is shown beside the table, not in it. */
export function cellText(cell: Cell): string {
  return cell === null || cell instanceof Refusal ? "" : String(cell);
}
