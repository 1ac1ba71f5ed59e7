import { ErrorType } from "@univerjs/engine-formula";
import { unknownNameSentence } from "../formula/unknown-names";

const MEANING: Readonly<Partial<Record<string, string>>> = {
  [ErrorType.DIV_BY_ZERO]: "a number is divided by zero or by an empty cell",
  [ErrorType.VALUE]:
    "a text stands where a number belongs, a bracket or comma is missing, or a cell this reads from holds #VALUE!: select that cell",
  [ErrorType.NUM]: "a number is too large, too small or not possible here",
  [ErrorType.NA]: "a look-up found nothing, or a cell this reads from holds #N/A: select that cell",
  [ErrorType.REF]: "the formula points at a cell or range that is not there",
  [ErrorType.CYCLE]: "the formula depends on its own result",
  [ErrorType.SPILL]: "the result needs more cells than are free: clear the cells beside and below",
  [ErrorType.CALC]: "the formula cannot be worked out: an empty list, say, or a LAMBDA that is not called",
  [ErrorType.NULL]: "two ranges share no cell: a comma or an operator is missing between them",
};

/** A formula that is not one. */
export const UNREADABLE = {
  error: ErrorType.VALUE,
  message: "the formula cannot be read: check its brackets, quotes and commas",
} as const;

/** Says what an error of the engine's own functions means; `names` are the functions it knows. */
export function errorSentence(code: string, formula: string, names: ReadonlySet<string>): string {
  if (code === ErrorType.NAME) return unknownNameSentence(formula, names);
  return MEANING[code] ?? "the formula has no answer";
}
