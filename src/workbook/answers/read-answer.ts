import { InvalidValue } from "../../core/refusal";
import { functionNamed } from "../../functions/catalogue";
import { isEmpty, quoted } from "../../functions/cells";
import { evaluate } from "../../functions/evaluate";
import { parseMeasure } from "../../functions/measure";
import type { Quantity } from "../../functions/quantities";
import { momentText } from "../share/moments";
import type { Held } from "./answer-tables";
import { readDay, weekOf } from "./days";
import { type AnswerField, elementOf } from "./forms";
import { readMoney } from "./money";
import type { Reading } from "./reading";

/** What readers know of the plan. */
export interface ReaderContext {
  readonly currency: string;
}

type Reader = (given: number | string, field: AnswerField, context: ReaderContext) => Reading;

const plain = (value: number | string): Reading => ({ value, shown: String(value) });

const measured = (given: number | string, quantity: Quantity, unit: string): number =>
  typeof given === "number" ? given : parseMeasure(given, quantity, unit);

/** The answer of one of our functions to one value; refusals become exceptions again. */
function answerOf(name: string, ...given: unknown[]): number | string {
  const fn = functionNamed(name);
  if (fn === undefined) throw new RangeError(`no function ${name}`);
  const [[cell = null] = []] = evaluate(fn, given);
  if (cell instanceof Error) throw cell;
  return typeof cell === "number" ? cell : String(cell);
}

const OTHER_SCALE = /\b(hv|hbw?|hb|hr[abd]|hr\d\dn|mpa)\b/i;

function inHrc(value: number, scale: string): string {
  try {
    return `, about ${Math.round(Number(answerOf("HARDNESS", value, scale, "HRC")) * 10) / 10} HRC by conversion`;
  } catch {
    return "";
  }
}

function hardness(given: number | string): Reading {
  const text = String(given).trim();
  const scale = OTHER_SCALE.exec(text)?.[1]?.toUpperCase();
  const figure = Number.parseFloat(text.replace(",", "."));
  if (scale !== undefined)
    throw new InvalidValue(
      `${text} is no Rockwell C reading${inHrc(figure, scale)}: the plan holds HRC; ask for readings in it`,
    );
  const value = measured(given, "hardness", "HRC");
  if (value > 70)
    throw new InvalidValue(
      `${text} is no Rockwell C reading, which end at 70; it may be Vickers${inHrc(value, "HV")}`,
    );
  if (value < 20) throw new InvalidValue(`${text} lies below 20 HRC, where Rockwell C ends`);
  return plain(value);
}

/** Certificates write contents below what the analysis sees as `<0.005`. */
const BELOW = /^<\s*/;

function content(given: number | string, { heading }: AnswerField): Reading {
  const text = String(given).trim();
  const isBelow = BELOW.test(text);
  const value = measured(isBelow ? text.replace(BELOW, "") : given, "mass %", "%");
  const element = elementOf(heading);
  if (value < 0) throw new InvalidValue(`${element} ${text} is less than nothing: give mass %`);
  // CERTIFICATE refuses slips of units, whatever the grade.
  answerOf("CERTIFICATE", "1084", [[element]], [[value]]);
  return isBelow ? { ...plain(value), doubt: `"${text}" is taken as its limit, ${value} %` } : plain(value);
}

const LENGTHS = /\s*(?:;|\/(?=\s)|\n|,\s|\band\b)\s*/i;

function lengths(given: number | string): Reading {
  const parts =
    typeof given === "number" ? [given] : given.split(LENGTHS).filter((part) => part.trim() !== "");
  const all = parts.map((part) => measured(part, "length", "mm"));
  if (all.length === 0 || all.some((length) => length <= 0))
    throw new InvalidValue(`${quoted(given)} names no length of bar: give for example 3000; 6000`);
  return plain(all.length === 1 ? String(all[0]) : all.join("; "));
}

function day(given: number | string): Reading {
  const serial = readDay(given);
  return { value: serial, shown: momentText(serial, "date", false) ?? String(serial) };
}

const CELSIUS_BEYOND = 300;
/** How often and how long, as the order writes it in front of a temper: `2 × 2 h at`. */
const HOW_OFTEN = /^\s*\d+\s*[x×]\s*(?:[\d.,]+\s*h\s*(?:at|@)?\s*)?/i;

function temperature(given: number | string): Reading {
  const value = measured(
    typeof given === "number" ? given : given.replace(HOW_OFTEN, ""),
    "temperature",
    "°C",
  );
  const isBare = typeof given === "number" || /^[\d.,\s]+$/.test(given);
  if (isBare && value > CELSIUS_BEYOND)
    return { ...plain(value), doubt: `${value} without a scale is taken as °C; it may be °F` };
  return plain(Math.round(value * 10) / 10);
}

function count(given: number | string): Reading {
  const value = measured(given, "count", "");
  if (!Number.isInteger(value) || value < 0)
    throw new InvalidValue(`${quoted(given)} is not a whole number of pieces: give for example 24`);
  return plain(value);
}

function choice(given: number | string, { words = [] }: AnswerField): Reading {
  const text = String(given).trim().toLowerCase();
  const found = words.find((word) => word === text);
  if (found !== undefined) return plain(found);
  throw new InvalidValue(`${quoted(String(given))} is no answer here: ${words.join(", ")} are`);
}

const MAX_WORDS = 300;

function words(given: number | string): Reading {
  const text = String(given)
    .replace(/\p{Cc}/gu, " ")
    .trim();
  if (text.length > MAX_WORDS)
    throw new InvalidValue(`a text of ${text.length} letters; at most ${MAX_WORDS} are taken`);
  return plain(text);
}

const READERS: Readonly<Record<AnswerField["kind"], Reader>> = {
  money: (given, _, { currency }) => readMoney(given, currency),
  per: (given) => plain(String(given).trim()),
  lengths,
  week: (given) => plain(weekOf(given)),
  date: day,
  temperature,
  hardness,
  "mass %": content,
  count,
  choice,
  words,
};

/**
 * Reads an answer with the readers of the functions: units, decimal commas, days.
 *
 * @returns `undefined` where nothing was answered.
 * @throws InvalidValue with a sentence.
 */
export function readAnswer(held: Held, field: AnswerField, context: ReaderContext): Reading | undefined {
  if (held === undefined) return undefined;
  if ("error" in held) throw new InvalidValue(`${held.error} stands in the cell: ask for the answer again`);
  const given = typeof held.value === "boolean" ? String(held.value) : held.value;
  if (isEmpty(given)) return undefined;
  return READERS[field.kind](given, field, context);
}
