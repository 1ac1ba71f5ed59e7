import { rewritten, tokensOf } from "./tokens";

/** How a reader's program writes formulas. */
interface Separators {
  readonly decimal: string;
  readonly list: string;
}

/** True where a list in braces has several columns. */
function hasColumns(formula: string): boolean {
  let depth = 0;
  return tokensOf(formula).some(({ kind }) => {
    if (kind === "openArray") depth += 1;
    else if (kind === "closeArray") depth -= 1;
    return kind === "comma" && depth > 0;
  });
}

/**
 * A formula as a reader's program shows it: his sign between arguments, his decimal sign. A list in braces with
 * several columns stays in English, whole formula and all: which sign stands between its columns is told by no
 * program.
 *
 * @param formula - In English, as files have it.
 */
export function localForm(formula: string, { decimal, list }: Separators): string {
  if (decimal === "." && list === ",") return formula;
  if (hasColumns(formula)) return formula;
  return rewritten(formula, ({ kind, text }) => {
    if (kind === "comma") return list;
    return kind === "number" ? text.replace(".", decimal) : undefined;
  });
}
