import { InvalidValue } from "../../core/refusal";
import { quoted } from "../cells";
import { numberOrNothing, type Parameter } from "../parameters";

const ISO = /^(\d{4})-(\d{1,2})-(\d{1,2})$/;
const MS_A_DAY = 86_400_000;
/** Day 25569 of a spreadsheet is 1 January 1970. */
const DAY_OF_1970 = 25_569;
const FIRST_DAY = 36_526;
const LAST_DAY = 73_050;
const ACCEPTS = 'a date of the sheet from 2000 to 2099, or "2026-03-31"';

/** Day number of a date written year first; any other order reads differently from country to country. */
function dayOf(text: string): number | undefined {
  const found = ISO.exec(text.trim());
  if (found === null) return undefined;
  const [year = 0, month = 0, day = 0] = found.slice(1).map(Number);
  const time = Date.UTC(year, month - 1, day);
  const isReal = new Date(time).getUTCMonth() === month - 1 && day > 0;
  return isReal ? time / MS_A_DAY + DAY_OF_1970 : undefined;
}

/** A date that may be left out: a cell formatted as a date, or text written year first. */
export function dateOrNothing({
  label,
  help,
}: {
  label: string;
  help: string;
}): Parameter<number | undefined> {
  const plain = numberOrNothing({ label, help, quantity: "number", unit: "", min: 0 });
  return {
    ...plain,
    kind: "date",
    accepts: ACCEPTS,
    words: [],
    zeroIsBlank: true,
    read(cell) {
      const day = typeof cell === "string" ? dayOf(cell) : cell;
      if (typeof day === "number" && day >= FIRST_DAY && day <= LAST_DAY) return Math.floor(day);
      throw new InvalidValue(`${label}: ${quoted(cell)} is not a date here; give ${ACCEPTS}`);
    },
  };
}
