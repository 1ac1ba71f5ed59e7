import { quantityText } from "../../core/quantity-text";
import { attempt, Refusal } from "../../core/refusal";
import { findSteel } from "../../core/steel/find";
import type { Steel } from "../../core/steel/steel";
import { brittleRanges } from "../../core/tempering/embrittlement";
import { type FittedCurve, fittedCurves } from "../../core/tempering/fits";
import { temperSpan } from "../../core/tempering/temper-limits";
import { temperModel } from "../../core/tempering/tempering-model";
import { type BandChart, type BandPoint, bandChart, type WaryStretch } from "../charts/band-chart";
import { figure } from "../charts/figure";
import { ask, cellText, firstRow } from "../parts/ask";
import { element } from "../parts/dom";
import { disclosure, refusalNote, table } from "../parts/tables";
import { wholeFahrenheit } from "../parts/words";
import { allHours, type Recipe, temperOf } from "./temper-recipe";
import { usualTempers } from "./temper-table";

/** Fine enough to be drawn as a curve; every fifth point stands in the table. */
const STEP_C = 5;
const TABLE_STEP = 5;
/** Where TEMPER_CURVE ends by itself, °C. */
const USUAL_END_C = 425;

/** The last temper asked for; nothing where the function's own end will do. */
function lastTemper(steel: string, hours: number): number | null {
  const highest = usualTempers(steel).at(-1) ?? USUAL_END_C;
  if (highest <= USUAL_END_C) return null;
  const [, most] = temperSpan(temperModel(findSteel(steel)), hours);
  return Math.min(highest, Math.floor(most));
}

const points = (rows: readonly (readonly string[])[]): BandPoint[] =>
  rows.map((row) => {
    const [x = 0, low = 0, likely = 0, high = 0] = row.map(Number);
    return { x, low, likely, high };
  });

function waryStretches(steel: Steel): WaryStretch[] {
  return brittleRanges(steel).map(({ low, high, bySlowCooling }) => ({
    from: low,
    to: high,
    name: bySlowCooling === true ? "cool fast" : "brittle",
  }));
}

interface Published {
  readonly dots: readonly { readonly x: number; readonly y: number }[];
  readonly words: string;
}

const NONE: Published = { dots: [], words: "" };

/** The temper that softens as much in another time; the same where the time is the same. */
function equivalentTemperature(celsius: number, hours: number, newHours: number): number {
  if (hours === newHours) return celsius;
  const [same = ""] = firstRow(ask("SAME_TEMPER", celsius, hours, newHours));
  return same === "" ? Number.NaN : Number(same);
}

/** The printed figures behind a curve that is one steelmaker's table; of a fitted curve, how well it fits. */
function published(steel: Steel, hours: number): Published {
  const fits: readonly FittedCurve[] = fittedCurves(steel.grade?.designation ?? "");
  const [fit] = fits;
  if (fit === undefined || fits.length > 1) return NONE;
  if (fit.form === "cubic") {
    return { dots: [], words: ` Fitted to ${fit.rows} published readings, ${fit.rms} HRC about the line.` };
  }
  const dots = fit.knots.map(([celsius, y]) => ({ x: equivalentTemperature(celsius, fit.hours, hours), y }));
  const carried =
    fit.hours === hours ? "" : `, carried from ${quantityText(fit.hours, "h")} to the time above`;
  return { dots, words: ` Rings: the published table${carried}.` };
}

const within = (shown: readonly BandPoint[], x: number) =>
  x >= (shown[0]?.x ?? 0) && x <= (shown.at(-1)?.x ?? 0);

function chartOf(
  recipe: Recipe,
  shown: readonly BandPoint[],
  hours: number,
): BandChart & { caption: string } {
  const steel = findSteel(recipe.steel);
  const { dots, words } = published(steel, hours);
  const wary = waryStretches(steel);
  const here = temperOf(recipe);
  const [first, last] = [shown[0], shown.at(-1)];
  const ranges = wary.map(({ from, to, name }) => `${name} from ${from} to ${to} °C`).join(", ");
  return {
    title: `Tempering curve of ${steel.name}`,
    description: `Hardness falls from about ${first?.likely} HRC at ${first?.x} °C to ${last?.likely} HRC at ${last?.x} °C. ${ranges}. Every figure is in the table below.`,
    points: shown,
    xName: "temper: °C, below it °F",
    yName: "HRC",
    xAlso: (celsius) => String(wholeFahrenheit(celsius)),
    wary,
    dots: dots.filter(({ x }) => within(shown, x)),
    here: here === undefined ? undefined : { at: here, text: `${Math.round(here)} °C` },
    caption: `${quantityText(hours, "h")} in all. Line: likely. Band: nine blades in ten.${dots.length === 0 && words.startsWith(" Rings") ? "" : words}${wary.length === 0 ? "" : " Hatched: tempers that cost toughness; sources differ about their ends by 30 to 50 °C (54 to 90 °F)."}`,
  };
}

function curveTable(rows: readonly (readonly string[])[], hours: number): HTMLElement {
  const shown = rows.filter((_, at) => at % TABLE_STEP === 0 || at === rows.length - 1);
  const cells = shown.map(([celsius = "", ...hrc]) => [
    celsius,
    String(wholeFahrenheit(Number(celsius))),
    ...hrc,
  ]);
  const headings = ["°C", "°F", "low", "likely", "high"].map((text) => ({ text, isFigure: true }));
  return table(`Tempering curve in HRC, ${quantityText(hours, "h")} in all`, headings, cells);
}

function curveOf(recipe: Recipe): HTMLElement[] {
  const hours = allHours(recipe);
  const reply = ask("TEMPER_CURVE", recipe.steel, null, lastTemper(recipe.steel, hours), STEP_C, hours);
  if (reply.refusal !== null) return [refusalNote(reply.refusal)];
  const rows = reply.rows.map((row) => row.map(cellText));
  const { caption, ...chart } = chartOf(recipe, points(rows), hours);
  return [
    figure((width) => bandChart(chart, width), caption),
    disclosure("The same figures in a table", () => [curveTable(rows, hours)]),
  ];
}

/** The tempering curve of a steel with its band, what is published, and the tempers to be wary of. */
export function temperCurveFigure(recipe: Recipe): HTMLElement[] {
  const title = element("h3", {}, "Tempering curve");
  const curve = attempt(() => curveOf(recipe));
  return curve instanceof Refusal ? [title, refusalNote(curve.message)] : [title, ...curve];
}
