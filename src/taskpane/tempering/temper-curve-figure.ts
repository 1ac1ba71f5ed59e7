import { quantityText } from "../../core/quantity-text";
import { attempt, attemptOr, Refusal } from "../../core/refusal";
import { findSteel } from "../../core/steel/find";
import type { Steel } from "../../core/steel/steel";
import { brittleRanges } from "../../core/tempering/embrittlement";
import { type FittedCurve, fittedCurves } from "../../core/tempering/fits";
import { oxideColours } from "../../core/tempering/oxide-colour";
import { temperSpan } from "../../core/tempering/temper-limits";
import { temperModel } from "../../core/tempering/tempering-model";
import type { BandChart, BandPoint, Dot, NamedLine, WantedStretch, WaryStretch } from "../charts/band-chart";
import type { ColourStretch } from "../charts/frame";
import { readChart } from "../charts/read-chart";
import { ask, cellText, firstRow } from "../parts/ask";
import { temperatureReading } from "../parts/reading";
import { disclosure, refusalNote, table } from "../parts/tables";
import { wholeFahrenheit } from "../parts/words";
import { allHours, type Recipe, temperOf } from "./temper-recipe";
import { temperScales } from "./temper-scales";
import { usualTempers } from "./temper-table";

/** What a curve is held against. */
export interface Against {
  /** A use, whose band is the stripe; "" for none. */
  readonly use: string;
  /** Other steels, as typed. */
  readonly others: readonly string[];
  /** Readings of one's own. */
  readonly own: readonly Dot[];
}

/** More lines than this are not told apart. */
export const MOST_OTHERS = 2;

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

/** The rows of TEMPER_CURVE over the usual tempers of a steel, or its refusal. */
function curveRows(steel: string, hours: number): readonly (readonly string[])[] | string {
  const asked = attempt(() => ask("TEMPER_CURVE", steel, null, lastTemper(steel, hours), STEP_C, hours));
  if (asked instanceof Refusal) return asked.message;
  return asked.refusal ?? asked.rows.map((row) => row.map(cellText));
}

/** The band of the use and the hardness aimed at. */
function wantedStretch(use: string, target: string): WantedStretch | undefined {
  const aim = target === "" || Number.isNaN(Number(target)) ? undefined : Number(target);
  const band = use === "" ? undefined : ask("BAND", use);
  if (band === undefined || band.refusal !== null)
    return aim === undefined ? undefined : { aim, name: `aim ${aim}` };
  const [low, , high] = firstRow(band).map(Number);
  return { low, high, aim, name: `${use} ${low}–${high}${aim === undefined ? "" : `, aim ${aim}`}` };
}

/** Colours that a short temper in air leaves; stainless and high-alloy steels show them far hotter. */
const SHOWS_COLOURS: readonly string[] = ["plain carbon", "low alloy"];

function colourStretches({ family }: Steel): ColourStretch[] {
  if (!SHOWS_COLOURS.includes(family)) return [];
  return oxideColours().map(({ colour, low, high }) => ({ name: colour, from: low, to: high }));
}

interface Others {
  readonly lines: readonly NamedLine[];
  /** Why a steel has none. */
  readonly refusals: readonly string[];
}

/** Lines of other steels over the tempers of the first, which keeps its width. */
function otherLines(others: readonly string[], hours: number, shown: readonly BandPoint[]): Others {
  const found = others.slice(0, MOST_OTHERS).map((name) => ({ name, rows: curveRows(name, hours) }));
  const lines = found.flatMap(({ name, rows }) =>
    typeof rows === "string" || points(rows).filter(({ x }) => within(shown, x)).length < 2
      ? []
      : [
          {
            name: attemptOr(name, () => findSteel(name).name),
            points: points(rows)
              .filter(({ x }) => within(shown, x))
              .map(({ x, likely }) => ({ x, y: likely })),
          },
        ],
  );
  return { lines, refusals: found.flatMap(({ rows }) => (typeof rows === "string" ? [rows] : [])) };
}

interface Drawn {
  readonly chart: BandChart;
  readonly caption: string;
}

/** How to read the chart: only what is in it. */
function captionOf(chart: BandChart, hours: number, words: string): string {
  const { dots = [], own = [], wary = [], colours = [], beside } = chart;
  return [
    `${quantityText(hours, "h")} in all. Line: likely. Band: nine blades in ten${beside === undefined ? "" : ` of ${beside.name}`}.`,
    dots.length === 0 && words.startsWith(" Rings") ? "" : words.trim(),
    own.length === 0 ? "" : "Filled dots: your own readings.",
    wary.length === 0
      ? ""
      : "Hatched: tempers that cost toughness; sources differ about their ends by 30 to 50 °C (54 to 90 °F).",
    colours.length === 0
      ? ""
      : "Colours: what a short temper leaves on clean carbon steel in daylight, no measurement.",
  ]
    .filter((part) => part !== "")
    .join(" ");
}

function chartOf(
  recipe: Recipe,
  against: Against,
  shown: readonly BandPoint[],
  lines: readonly NamedLine[],
): Drawn {
  const hours = allHours(recipe);
  const steel = findSteel(recipe.steel);
  const { dots, words } = published(steel, hours);
  const wary = waryStretches(steel);
  const here = temperOf(recipe);
  const [first, last] = [shown[0], shown.at(-1)];
  const ranges = wary.map(({ from, to, name }) => `${name} from ${from} to ${to} °C`).join(", ");
  const wanted = wantedStretch(against.use, recipe.target);
  const chart: BandChart = {
    title: `Tempering curve of ${steel.name}`,
    description: `Hardness falls from about ${first?.likely} HRC at ${first?.x} °C to ${last?.likely} HRC at ${last?.x} °C. ${ranges}. Every figure is in the table below.`,
    points: shown,
    xName: "temper",
    yName: "HRC",
    xScales: temperScales(),
    colours: colourStretches(steel),
    wary,
    wanted,
    beside: lines.length === 0 ? undefined : { name: steel.name, lines },
    dots: dots.filter(({ x }) => within(shown, x)),
    own: against.own.filter(({ x }) => within(shown, x)),
    here: here === undefined ? undefined : { at: here, text: `${Math.round(here)} °C` },
  };
  return { chart, caption: captionOf(chart, hours, words) };
}

/** What is read at one temper. */
function toldAt({ points: shown, beside, wanted, wary = [], colours = [] }: BandChart, at: number): string {
  const point = shown[at];
  if (point === undefined) return "";
  const { x, low, likely, high } = point;
  const inside = ({ from, to }: { readonly from: number; readonly to: number }) => x >= from && x <= to;
  const others = (beside?.lines ?? []).flatMap(({ name, points: line }) =>
    line.filter((one) => one.x === x).map(({ y }) => `${name} ${y.toFixed(1)}`),
  );
  return [
    `likely ${likely.toFixed(1)} HRC, nine blades in ten ${low.toFixed(1)} to ${high.toFixed(1)}`,
    ...others,
    wanted?.low === undefined || wanted.high === undefined
      ? ""
      : placeInBand(likely, wanted.low, wanted.high),
    ...wary.filter(inside).map(({ name }) => name),
    colours.find(inside)?.name ?? "",
  ]
    .filter((part) => part !== "")
    .join("; ");
}

function placeInBand(likely: number, low: number, high: number): string {
  if (likely < low) return "likely under the band";
  return likely > high ? "likely over the band" : "likely in the band";
}

function startOf(shown: readonly BandPoint[], recipe: Recipe): number {
  const here = temperOf(recipe) ?? 0;
  const away = shown.map(({ x }) => Math.abs(x - here));
  return away.indexOf(Math.min(...away));
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

function curveOf(recipe: Recipe, against: Against): HTMLElement[] {
  const hours = allHours(recipe);
  const rows = curveRows(recipe.steel, hours);
  if (typeof rows === "string") return [refusalNote(rows)];
  const shown = points(rows);
  const { lines, refusals } = otherLines(against.others, hours, shown);
  const { chart, caption } = chartOf(recipe, against, shown, lines);
  const words = {
    name: chart.title,
    start: startOf(shown, recipe),
    place: (at: number) => temperatureReading(shown[at]?.x ?? 0),
    told: (at: number) => toldAt(chart, at),
  };
  return [
    readChart(chart, caption, words),
    ...refusals.map((sentence) => refusalNote(sentence)),
    disclosure("The same figures in a table", () => [curveTable(rows, hours)]),
  ];
}

/** The tempering curve of a steel with its band, what is published, what it is held against, and the tempers to be wary of. */
export function temperCurveFigure(recipe: Recipe, against: Against): HTMLElement[] {
  const curve = attempt(() => curveOf(recipe, against));
  return curve instanceof Refusal ? [refusalNote(curve.message)] : curve;
}
