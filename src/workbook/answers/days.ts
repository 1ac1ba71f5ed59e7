import { InvalidValue } from "../../core/refusal";
import { quoted } from "../../functions/cells";

const DAY_MS = 86_400_000;
/** 1 January 1970 in days of the 1900 calendar. */
const EPOCH = 25_569;
/** Bare figures from here to there are days of the calendar: 1954 to 2119. */
const [FIRST, LAST] = [20_000, 80_000];
const SHAPES = "2026-10-05 or 5 October 2026";

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

function serialOf(year: number, month: number, day: number, given: string): number {
  const date = new Date(Date.UTC(year, month - 1, day));
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day)
    throw new InvalidValue(`"${given}" is no day of the calendar: give for example ${SHAPES}`);
  return date.getTime() / DAY_MS + EPOCH;
}

/** Two figures and a year: which is the day must follow from the figures themselves, or from points between them. */
function ofFigures(given: string): number | undefined {
  const [, first, sign, second, year] = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4})$/.exec(given) ?? [];
  if (first === undefined || second === undefined) return undefined;
  const [a, b, y] = [Number(first), Number(second), Number(year)];
  if (sign !== "." && a <= 12 && b <= 12 && a !== b)
    throw new InvalidValue(`"${given}" reads as two days: write ${SHAPES}`);
  return a > 12 || sign === "." ? serialOf(y, b, a, given) : serialOf(y, a, b, given);
}

function ofWords(given: string): number | undefined {
  const [, day, month = "", year] = /^(\d{1,2})\.? ([A-Za-z]{3,9})\.?,? (\d{4})$/.exec(given) ?? [];
  const place = MONTHS.indexOf(month.slice(0, 3).toLowerCase());
  return place < 0 ? undefined : serialOf(Number(year), place + 1, Number(day), given);
}

function ofIso(given: string): number | undefined {
  const [, year, month, day] = /^(\d{4})-(\d{1,2})-(\d{1,2})(?:T.*)?$/.exec(given) ?? [];
  return year === undefined ? undefined : serialOf(Number(year), Number(month), Number(day), given);
}

/**
 * A day in the calendar of spreadsheets.
 *
 * @throws InvalidValue where a text is none, or can be read in two ways.
 */
export function readDay(given: number | string): number {
  const text = String(given).trim();
  const figure = typeof given === "number" ? given : Number(text);
  if (Number.isInteger(figure) && figure >= FIRST && figure <= LAST) return figure;
  const serial = ofIso(text) ?? ofFigures(text) ?? ofWords(text);
  if (serial !== undefined) return serial;
  throw new InvalidValue(`${quoted(text)} is not a day: give for example ${SHAPES}`);
}

/** The week of a day, and the year it belongs to (ISO 8601: the week of its Thursday). */
function isoWeek(serial: number): string {
  const weekday = (serial + 5) % 7;
  const thursday = new Date((serial - EPOCH - weekday + 3) * DAY_MS);
  const start = Date.UTC(thursday.getUTCFullYear(), 0, 1);
  const week = Math.floor((thursday.getTime() - start) / (7 * DAY_MS)) + 1;
  return `${thursday.getUTCFullYear()}-W${String(week).padStart(2, "0")}`;
}

const WEEK = /^(?:(\d{4})[-/ ]*)?(?:week|wk|kw|cw|w)?\.? ?(\d{1,2})(?:[-/ ,]+(\d{4}))?$/i;

/**
 * A calendar week as ISO 8601 writes it; without a year `W41`.
 *
 * @throws InvalidValue for what is neither a week nor a day.
 */
export function weekOf(given: number | string): string {
  const text = String(given).trim();
  const [, before, week, after] = WEEK.exec(text) ?? [];
  const year = before ?? after;
  const number = Number(week);
  if (week !== undefined && number >= 1 && number <= 53)
    return `${year === undefined ? "" : `${year}-`}W${week.padStart(2, "0")}`;
  try {
    return isoWeek(readDay(given));
  } catch {
    throw new InvalidValue(`${quoted(text)} is not a week: give for example 2026-W41, week 41 or 2026-10-05`);
  }
}
