import { isErrorCode } from "../../formula/tokens";
import type { Reading } from "./readings";

/** What to do about a refusal: the input that cannot be read is named with what is accepted, else the range is. */
export function wayOut(readings: readonly Reading[]): string {
  const faulty = readings.filter(({ fault }) => fault !== "");
  if (faulty.length === 0) {
    return "Every input was read; the answer is refused for what they hold. Change an input until it lies inside the range below.";
  }
  return faulty.map(mend).join(" ");
}

/** An error that came from another cell: typing over the formula that only passes it on would be no way out. */
function mend({ name, given, accepts, holds }: Reading): string {
  if (isErrorCode(holds)) return `${given} (${name}) only passes on ${holds}: mend the cell it comes from.`;
  const where = given === "" || holds === "" ? `Mend ${name} in the formula` : `Mend ${given} (${name})`;
  return `${where}: it takes ${accepts}.`;
}

/** What an error of the host itself means where one of our functions stands, by its code. */
const HOST_ERRORS: Readonly<Partial<Record<string, string>>> = {
  "#NAME?":
    "The name of a function in the formula was not found. If it is one of ours, open Share and repair and re-enter it; else check the spelling, and put grades in double quotes.",
  "#SPILL!":
    "The answer needs more cells than are free. Clear the cells beside and below, or move the formula.",
  "#BUSY!": "The answer is being worked out. If this stays, press Ctrl+Alt+F9 to recalculate everything.",
  "#REF!": "The formula points at a cell that is no longer there. Point it at the right cell again.",
  "#CALC!": "The formula cannot be worked out: give a bounded range such as A2:A40, not a whole column.",
  "#CONNECT!": "Excel could not reach the add-in. Wait, or close and open the workbook.",
  "#FIELD!": "The formula asks for a part of a value that it does not have.",
  "#CYCLE!": "The formula depends on its own result.",
  "#DIV/0!": "A number is divided by zero or by an empty cell outside our functions.",
  "#NUM!": "A number outside our functions is too large, too small or not possible.",
  "#NULL!": "Two ranges share no cell: a comma or an operator is missing between them.",
};

/** What to do about an error that is not one of our sentences; empty for none. */
export function hostError(shown: string): string {
  return HOST_ERRORS[shown.trim()] ?? "";
}
