import { InvalidValue, type Refusal } from "../core/refusal";
import type { Cell } from "./cells";
import type { Column } from "./declare";

/** Refuses what no cell can show: a function that comes to such a value has a fault of its own. */
function checked(answer: Cell): Cell {
  if (typeof answer === "number" && !Number.isFinite(answer)) {
    return new InvalidValue(`fault in the add-in, please report it: the result is ${answer}`);
  }
  return answer;
}

export function checkedRow(answers: readonly Cell[]): Cell[] {
  return answers.map(checked);
}

export { checked as checkedAnswer };

/** A refused row: figures carry the error with its sentence, texts stay empty, so that one fault reads as one. */
export function refusedRow(refusal: Refusal, columns: readonly Column[]): Cell[] {
  const allText = columns.every(({ unit }) => unit === "text");
  return columns.map(({ unit }, position) =>
    unit === "text" && !(allText && position === 0) ? "" : refusal,
  );
}

export function emptyRow(columns: readonly Column[]): Cell[] {
  return columns.map(() => "");
}
