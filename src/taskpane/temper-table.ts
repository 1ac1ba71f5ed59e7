import type { Refusal } from "../core/refusal";
import type { Cell } from "../functions/cells";
import { ask, cellText } from "./ask";
import { element } from "./dom";
import { caution, disclosure, refusalNote, table } from "./tables";
import { fahrenheit, spanText } from "./words";

/** °C: every 25 degrees over the tempers of blades, wider apart where only tool steels are tempered. */
const TEMPERS = [150, 175, 200, 225, 250, 275, 300, 325, 350, 375, 400, 425, 450, 500, 550, 600, 650];

interface TemperRow {
  readonly celsius: number;
  readonly texts: readonly string[];
  readonly refusal: string | null;
}

function temperRows(steel: string, hours: string): TemperRow[] {
  const { rows } = ask(
    "TEMPERED_RANGE",
    steel,
    TEMPERS.map((temper) => [temper]),
    hours,
  );
  return TEMPERS.map((celsius, at) => {
    const cells: readonly Cell[] = rows[at] ?? rows[0] ?? [];
    const refused = cells.find((cell): cell is Refusal => cell instanceof Error);
    return { celsius, texts: cells.map(cellText), refusal: refused?.message ?? null };
  });
}

/** Sentences with the tempers they hold for, since most of them hold for several. */
function bySentence(rows: readonly TemperRow[], sentenceOf: (row: TemperRow) => string): string[] {
  const tempers = new Map<string, number[]>();
  for (const row of rows) {
    const sentence = sentenceOf(row);
    if (sentence !== "") tempers.set(sentence, [...(tempers.get(sentence) ?? []), row.celsius]);
  }
  return [...tempers].map(([sentence, at]) =>
    at.length === rows.length ? sentence : `${placesText(at)}: ${sentence}`,
  );
}

function placesText(celsius: readonly number[]): string {
  const first = celsius[0] ?? 0;
  const last = celsius.at(-1) ?? first;
  const from = `${first} °C (${fahrenheit(first)} °F)`;
  return first === last ? from : `${from} to ${last} °C (${fahrenheit(last)} °F)`;
}

/**
 * Hardness after temper over the usual tempers, with basis and cautions.
 *
 * @param hours - As typed; empty for the function's own default.
 */
export function temperTable(steel: string, hours = ""): HTMLElement {
  const rows = temperRows(steel, hours);
  const answered = rows.filter(({ refusal }) => refusal === null);
  const refused = rows.filter(({ refusal }) => refusal !== null);
  if (answered.length === 0) return refusalNote(rows[0]?.refusal ?? "no figure");
  const figures = answered.map(({ celsius, texts: [low = "", likely = "", high = ""] }) => [
    String(celsius),
    String(fahrenheit(celsius)),
    spanText(low, high, ""),
    likely,
  ]);
  const headings = ["°C", "°F", "HRC", "likely"].map((text) => ({ text, isFigure: true }));
  const title = `Hardness after temper, ${hours === "" ? "2 h" : hours}; nine blades in ten fall in the range`;
  const unanswered = bySentence(refused, ({ refusal }) => refusal ?? "").map((sentence) =>
    element("p", {}, sentence),
  );
  return element(
    "div",
    {},
    table(title, headings, figures),
    ...bySentence(answered, ({ texts }) => texts[3] ?? "").map((basis) =>
      element("p", { class: "basis" }, `Basis: ${basis}`),
    ),
    ...bySentence(answered, ({ texts }) => texts[4] ?? "").map(caution),
    ...(unanswered.length > 0 ? [disclosure("Tempers without a figure", () => unanswered)] : []),
  );
}
