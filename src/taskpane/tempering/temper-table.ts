import { attemptOr, Refusal } from "../../core/refusal";
import { findSteel } from "../../core/steel/find";
import type { Cell } from "../../functions/cells";
import { ask, cellText } from "../parts/ask";
import { element } from "../parts/dom";
import { preferences } from "../parts/preferences";
import { caution, disclosure, note, refusalNote, table } from "../parts/tables";
import { runsText, spanText, wholeFahrenheit } from "../parts/words";

/** °C: the tempers of blades. */
const TEMPERS = [150, 175, 200, 225, 250, 275, 300, 325, 350, 375, 400, 425];

/** °C: added for steels that keep or gain hardness there. */
const HIGH_TEMPERS = [450, 475, 500, 525, 550, 575, 600, 625, 650];

const HIGH_TEMPERED: readonly string[] = ["cold work", "hot work", "high speed", "martensitic stainless"];

interface TemperRow {
  readonly celsius: number;
  readonly texts: readonly string[];
  readonly refusal: string | null;
}

/** Tempers as a column of an argument, with their unit: a bare figure is remarked where it may have been meant as °F. */
export const temperColumn = (tempers: readonly number[]): string[][] =>
  tempers.map((temper) => [`${temper} °C`]);

/** The tempers of blades of a steel, °C, rising. */
export function usualTempers(steel: string): readonly number[] {
  const family = attemptOr("", () => findSteel(steel).family);
  return HIGH_TEMPERED.includes(family) ? [...TEMPERS, ...HIGH_TEMPERS] : TEMPERS;
}

/** Time at temperature and number of tempers as typed; empty for the functions' own defaults. */
export interface TemperTime {
  readonly hours: string;
  readonly cycles: string;
}

function temperRows(steel: string, { hours, cycles }: TemperTime): TemperRow[] {
  const tempers = usualTempers(steel);
  const { rows } = ask("TEMPERED_RANGE", steel, temperColumn(tempers), hours, cycles);
  return tempers.map((celsius, at) => {
    const cells: readonly Cell[] = rows[at] ?? rows[0] ?? [];
    const refused = cells.find((cell) => cell instanceof Refusal);
    return {
      celsius,
      texts: cells.map(cellText),
      refusal: refused instanceof Refusal ? refused.message : null,
    };
  });
}

/** Sentences with the tempers they hold for, since most of them hold for several. */
function bySentence(
  rows: readonly TemperRow[],
  sentencesOf: (row: TemperRow) => readonly string[],
): string[] {
  const places = new Map<string, number[]>();
  for (const [at, row] of rows.entries()) {
    for (const sentence of sentencesOf(row)) places.set(sentence, [...(places.get(sentence) ?? []), at]);
  }
  const tempers = rows.map(({ celsius }) => celsius);
  return [...places].map(([sentence, at]) =>
    at.length === rows.length ? sentence : `${runsText(tempers, at)}: ${sentence}`,
  );
}

/** A cell joins its cautions with semicolons; each may hold for other tempers. */
function parts(text: string): string[] {
  return text.split("; ").filter((part) => part !== "");
}

function captionOf({ hours, cycles }: TemperTime): string {
  const time = /^[\d.,]+$/.test(hours) ? `${hours} h` : hours || "2 h";
  const times = cycles === "" || cycles === "1" ? "one temper" : `${cycles} tempers`;
  return `Hardness after ${times} of ${time}; nine blades in ten fall in the range`;
}

function figures(rows: readonly TemperRow[], time: TemperTime): HTMLElement {
  const scales = preferences().temperature === "°F" ? ["°F", "°C"] : ["°C", "°F"];
  const headings = [...scales, "HRC", "likely"].map((text) => ({ text, isFigure: true }));
  const cells = rows.map(({ celsius, texts: [low = "", likely = "", high = ""] }) => [
    ...scales.map((scale) => String(scale === "°C" ? celsius : wholeFahrenheit(celsius))),
    spanText(low, high, ""),
    likely,
  ]);
  return table(captionOf(time), headings, cells);
}

/** Words that belong to the figures: what they stand on, and what to be wary of at which tempers. */
function wordsOf(answered: readonly TemperRow[]): { basis: string[]; cautions: string[] } {
  return {
    basis: bySentence(answered, ({ texts }) => [texts[3] ?? ""]),
    cautions: bySentence(answered, ({ texts }) => parts(texts[4] ?? "")),
  };
}

/** The words of the table as lines, for a copy of its figures elsewhere. */
export function temperLines(steel: string, time: TemperTime): string[] {
  const { basis, cautions } = wordsOf(temperRows(steel, time).filter(({ refusal }) => refusal === null));
  return [
    captionOf(time),
    ...basis.map((text) => `Basis: ${text}`),
    ...cautions.map((text) => `Caution: ${text}`),
  ];
}

/** Hardness after temper over the usual tempers, with basis and cautions. */
export function temperTable(steel: string, time: TemperTime = { hours: "", cycles: "" }): HTMLElement {
  const rows = temperRows(steel, time);
  const answered = rows.filter(({ refusal }) => refusal === null);
  const refused = rows.filter(({ refusal }) => refusal !== null);
  if (answered.length === 0) return refusalNote(rows[0]?.refusal ?? "no figure");
  const { basis, cautions } = wordsOf(answered);
  const unanswered = () =>
    bySentence(refused, ({ refusal }) => [refusal ?? ""]).map((text) => element("p", {}, text));
  return element(
    "div",
    {},
    figures(answered, time),
    ...basis.map((text) => note(`Basis: ${text}`)),
    cautions.length > 0 ? caution(cautions) : null,
    refused.length > 0 ? disclosure("Tempers without a figure", unanswered) : null,
  );
}
