import { attempt, InvalidValue, Refusal } from "../../core/refusal";
import { FOR_DRAWINGS } from "../../functions/catalogue";

const { parseMeasure } = FOR_DRAWINGS;

/** Stations as lists of one length, mm. */
export interface StationLists {
  readonly x: readonly number[];
  readonly width: readonly number[];
  readonly thickness: readonly number[];
  /** One fuller on each side; 0 where there is none. */
  readonly fullerWidth: readonly number[];
  readonly fullerDepth: readonly number[];
}

const FORM =
  "give place, width and thickness in mm, such as 450 38 4.5, and behind them width and depth of a fuller if there is one";

/** Tabs, semicolons and spaces part figures; so does a comma with a space after it, never a decimal comma. */
const BETWEEN = /[\t;]|,?\s+|,$/;

/** With and without a fuller. */
const COUNTS = [3, 5];

function figures(line: string, number: number): readonly number[] {
  const parts = line
    .trim()
    .split(BETWEEN)
    .filter((part) => part !== "");
  if (COUNTS.includes(parts.length)) return parts.map((part) => figure(part, number));
  throw new InvalidValue(`line ${number}, "${line.trim()}", holds ${parts.length} figures: ${FORM}`);
}

function figure(text: string, number: number): number {
  const length = attempt(() => parseMeasure(text, "length", "mm"));
  if (length instanceof Refusal) throw new InvalidValue(`line ${number}: ${length.message}; ${FORM}`);
  return length;
}

/**
 * Reads stations as they are typed or pasted, one a line: place, width, thickness and, where there is
 * one, width and depth of the fuller. Decimal point or
 * comma; a unit may stand directly after a figure; lines without any figure, such as headings, are passed over.
 *
 * @throws InvalidValue naming the line that does not fit.
 */
export function readStations(text: string): StationLists {
  const rows = text
    .split(/\r?\n/)
    .map((line, at) => ({ line, number: at + 1 }))
    .filter(({ line }) => /\d/.test(line))
    .map(({ line, number }) => figures(line, number));
  if (rows.length === 0) throw new InvalidValue(`no station is given: ${FORM}, one station a line`);
  const column = (index: number) => rows.map((row) => row[index] ?? 0);
  return {
    x: column(0),
    width: column(1),
    thickness: column(2),
    fullerWidth: column(3),
    fullerDepth: column(4),
  };
}
