import { numberText } from "../quantity-text";
import { InvalidValue, NotAvailable } from "../refusal";

/** A hardness requirement as a drawing states it, HRC. */
export interface HardnessBand {
  /** Lower end [HRC]. */
  readonly low: number;
  /** What to aim for, within the band [HRC]. */
  readonly aim: number;
  /** Upper end [HRC]. */
  readonly high: number;
}

const LOWEST = 20;
const HIGHEST = 68;
/** A whole number this large is a day of the calendar: what "5-8" typed bare turns into. */
const DATE_FROM = 20_000;

const NUMBER = String.raw`(\d{1,9}(?:\.\d+)?)`;
const SINGLE = new RegExp(`^${NUMBER}$`);
const SPAN = new RegExp(`^${NUMBER} ?(?:-|to|\\.\\.) ?${NUMBER}$`);
const EITHER_WAY = new RegExp(`^${NUMBER} ?(?:±|\\+ ?[-/]+ ?) ?${NUMBER}$`);
const PLUS_MINUS = new RegExp(`^${NUMBER} ?\\+ ?${NUMBER} ?[/,]? ?- ?${NUMBER}$`);
const OTHER_SCALE = /(?:\b|\d)(hv|hbw?|hr[abd]|hr\d\dn|mpa|n\/mm2)/;
const OPEN_ENDED = /\b(min|max|from|under|over|least|most)\b|[<>≥≤]/;
const SHAPES = '"58-60", "60 ±1", "60 +1/-2" or "59"';

function tidy(given: string): string {
  return given
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[‐-―−]/g, "-")
    .replace(/(\d),(\d)/g, "$1.$2")
    .replace(/(\d)(?:hrc|rc)\b|\b(?:hrc|rc|rockwell c)\b/g, "$1 ")
    .replace(/\s+/g, " ")
    .trim();
}

function numbersOf(match: RegExpExecArray): number[] {
  return match.slice(1).map(Number);
}

function parse(text: string): HardnessBand | undefined {
  const single = SINGLE.exec(text);
  if (single !== null) {
    const [value = 0] = numbersOf(single);
    return { low: value, aim: value, high: value };
  }
  const span = SPAN.exec(text);
  if (span !== null) {
    const [low = 0, high = 0] = numbersOf(span);
    return { low, aim: (low + high) / 2, high };
  }
  const match = EITHER_WAY.exec(text) ?? PLUS_MINUS.exec(text);
  if (match === null) return undefined;
  const [aim = 0, plus = 0, minus = plus] = numbersOf(match);
  return { low: aim - minus, aim, high: aim + plus };
}

/** Whether a text states a span of hardness rather than one figure. */
export function isHardnessSpan(given: string): boolean {
  const band = parse(tidy(given));
  return band !== undefined && band.low !== band.high;
}

function refuse(given: string, text: string): never {
  if (OTHER_SCALE.test(text)) {
    throw new InvalidValue(`"${given}" is not in Rockwell C: convert it with HARDNESS first`);
  }
  if (OPEN_ENDED.test(text)) {
    throw new InvalidValue(`"${given}" gives one end only: state both, for example ${SHAPES}`);
  }
  throw new InvalidValue(`"${given}" is not a hardness: give for example ${SHAPES}`);
}

function check({ low, high }: HardnessBand, given: string): void {
  if (low > high) throw new InvalidValue(`"${given}" gives the higher end first: write low to high`);
  if (low >= LOWEST && high <= HIGHEST) return;
  throw new NotAvailable(
    `"${given}" reaches ${numberText(low < LOWEST ? low : high)} HRC, outside ${LOWEST} to ${HIGHEST} HRC, the span of the Rockwell C scale in use`,
  );
}

/**
 * Reads a hardness requirement.
 *
 * @param given - "58-60", "60 ±1", "60 +1/-2", "59", with or without HRC; or a number.
 * @returns Low, aim and high [HRC]; the aim of a span is its middle.
 * @throws InvalidValue for anything else, for another scale and for a requirement with one end;
 *   NotAvailable outside 20 to 68 HRC.
 * Error: none, the figures are those given. Source: common practice of drawings.
 */
export function readHardness(given: string | number): HardnessBand {
  if (typeof given === "number" && given >= DATE_FROM) {
    throw new InvalidValue(
      `${given} looks like a date: a span was typed without quotes, format the cell as text and type ${SHAPES}`,
    );
  }
  const text = tidy(String(given));
  const band = parse(text) ?? refuse(String(given), text);
  check(band, String(given));
  return band;
}
