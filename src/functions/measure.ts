import { InvalidValue } from "../core/refusal";
import { type Cell, quoted } from "./cells";
import { QUANTITIES, type Quantity, unitOf } from "./quantities";

const DECIMAL = String.raw`[+-]?\d+(?:[.,]\d+)?(?:[eE][+-]?\d+)?`;
const FRACTION = String.raw`(\d+)\s*[/⁄]\s*(\d+)`;
const PLAIN = new RegExp(`^(${DECIMAL})\\s*(.*)$`);
const SIMPLE_FRACTION = new RegExp(`^([+-]?)${FRACTION}\\s*(.*)$`);
const MIXED_FRACTION = new RegExp(`^([+-]?)(\\d+)(?:\\s+|\\s*-\\s*)${FRACTION}\\s*(.*)$`);

interface Reading {
  readonly value: number;
  readonly unit: string;
  readonly isFraction: boolean;
}

/**
 * A typed quantity as a number in `unit`: "400 °F", "1-1/4 in", "0,8", "90 min".
 *
 * @param text - What the cell holds; decimal point or comma.
 * @param quantity - What the argument measures; a unit of another kind is refused.
 * @param unit - Unit of a bare number and of the result.
 * @throws InvalidValue saying what was given and what is accepted.
 */
export function parseMeasure(text: string, quantity: Quantity, unit: string): number {
  refuseThousands(text);
  const reading = split(text);
  const { noun, shown } = QUANTITIES[quantity];
  if (reading === undefined)
    throw new InvalidValue(`${quoted(text)} is not ${noun}: give for example ${shown}`);
  if (isAbsurd(reading.value))
    throw new InvalidValue(`${quoted(text)} is too large for ${noun}: give for example ${shown}`);
  if (reading.unit === "") return bare(reading, text, quantity);
  const typed = unitOf(quantity, reading.unit);
  const wanted = unitOf(quantity, folded(unit));
  if (typed === undefined) {
    throw new InvalidValue(
      `"${text}": "${reading.unit}" is not a unit of ${noun.replace(/^an? /, "")}; give for example ${shown}`,
    );
  }
  const [factor, offset = 0] = typed;
  const [wantedFactor, wantedOffset = 0] = wanted ?? [1];
  return toSignificant((reading.value * factor + offset - wantedOffset) / wantedFactor);
}

/** Whether a unit is written beside a figure: a bare 400 may be meant as °F, "400 °C" and "400F" are not. */
export function hasUnit(cell: Cell): boolean {
  return typeof cell === "string" && /\p{L}\.?\s*$/u.test(cell);
}

/** 1,200 is 1.2 in one country and 1200 in another. */
const THOUSANDS = /^[+-]?([1-9]\d{0,2}),(\d{3})(?![\d.,])/;

function refuseThousands(text: string): void {
  const [, whole = "", rest = ""] = THOUSANDS.exec(text.trim()) ?? [];
  if (whole === "") return;
  const decimal = Number(`${whole}.${rest}`);
  throw new InvalidValue(
    `${quoted(text)} reads as ${whole}${rest} or as ${decimal}: write ${whole}${rest} or ${decimal}`,
  );
}

/** 3/16 in is 4.7625 mm and not 4.762499999999999: binary arithmetic leaves the last digits. */
function toSignificant(value: number): number {
  return Number(value.toPrecision(14));
}

const FARTHEST = 1e15;

/** No figure of a workshop is this large; text can even name a number that no cell can hold. */
export function isAbsurd(value: number): boolean {
  return Math.abs(value) > FARTHEST;
}

/** A number without a unit is in the argument's own unit; a bare fraction may be inches or a date, so it is refused. */
function bare(reading: Reading, text: string, quantity: Quantity): number {
  if (!reading.isFraction) return reading.value;
  const hint = quantity === "length" ? `: write "${text} in" if inches are meant` : "";
  throw new InvalidValue(`"${text}" is a fraction without a unit${hint}`);
}

function split(text: string): Reading | undefined {
  const tidy = text.replace(/[  ]/g, " ").trim();
  const mixed = MIXED_FRACTION.exec(tidy);
  if (mixed !== null) {
    const [, sign = "", whole = "", top = "", bottom = "", unit = ""] = mixed;
    return fraction(sign, Number(whole), top, bottom, unit);
  }
  const simple = SIMPLE_FRACTION.exec(tidy);
  if (simple !== null) {
    const [, sign = "", top = "", bottom = "", unit = ""] = simple;
    return fraction(sign, 0, top, bottom, unit);
  }
  const plain = PLAIN.exec(tidy);
  if (plain === null) return undefined;
  const [, digits = "", unit = ""] = plain;
  return { value: Number(digits.replace(",", ".")), unit: folded(unit), isFraction: false };
}

function fraction(
  sign: string,
  whole: number,
  top: string,
  bottom: string,
  unit: string,
): Reading | undefined {
  if (Number(bottom) === 0) return undefined;
  const size = whole + Number(top) / Number(bottom);
  return { value: sign === "-" ? -size : size, unit: folded(unit), isFraction: true };
}

/** Unit spellings are compared without case, spaces and full stops; º is often typed for °. */
function folded(unit: string): string {
  return unit.toLowerCase().replace(/[\s.]/g, "").replace("º", "°").replace("μ", "µ");
}
