import type { Relation } from "../../core/relation";
import { sourceText } from "../../core/sources";
import { findSteel } from "../../core/steel/find";
import type { Steel } from "../../core/steel/steel";
import { functionNamed } from "../../functions/catalogue";
import type { Cell, Cells } from "../../functions/cells";
import { type Column, relationsOf } from "../../functions/declare";
import { errorText } from "../../functions/evidence";
import type { Block, LineChart } from "../../host/port";
import { type TemperTime, temperColumn, temperLines, usualTempers } from "../tempering/temper-table";
import { ask, cellText, firstRow, list } from "./ask";
import { wholeFahrenheit } from "./words";

/** A table about a steel that can be put into a sheet, with the chart that goes with it. */
export interface SteelBlock {
  /** Also the name of a sheet made for it. */
  readonly title: string;
  readonly block: Block;
  readonly chart?: LineChart;
}

/** What a block is made for. */
export interface BlockOf extends TemperTime {
  readonly steel: string;
}

type Row = readonly (number | string)[];

const plain = (cell: Cell | undefined): number | string =>
  typeof cell === "number" ? cell : cellText(cell ?? null);

/** Where the figures come from, below them: a table that travels must say so by itself. */
function footing(functions: readonly string[], steel: Steel): Row[] {
  const relations = functions.flatMap((name) => {
    const fn = functionNamed(name);
    return fn === undefined ? [] : relationsOf(fn, steel);
  });
  const lines = new Set(relations.map(relationLine));
  const [version = ""] = firstRow(ask("VERSION"));
  return [
    ...[...lines].map((line) => [line]),
    [`${version}; figures as they were when put here, they follow no other cell`],
  ];
}

function relationLine(relation: Relation): string {
  return `${relation.title}: ${sourceText(relation.source)}, ${relation.locator}; expected error ${errorText(relation)}`;
}

/** Title, headings, figures and footing, every row as long as the headings. */
function blockOf(title: string, headings: Row, figures: readonly Row[], foot: readonly Row[]): Block {
  const rows = [[title], headings, ...figures, ...foot];
  return { rows: rows.map((row) => headings.map((_, at) => row[at] ?? "")), heading: 1 };
}

function refuse(sentence: string): never {
  throw new Error(sentence);
}

/** The answer of a function, or its sentence as an error. */
function answered(name: string, ...given: readonly unknown[]): Cells {
  const { rows, refusal } = ask(name, ...given);
  return refusal === null ? rows : refuse(refusal);
}

function compositionBlock({ steel }: BlockOf): SteelBlock {
  const found = findSteel(steel);
  const title = `Composition of ${found.name}`;
  const headings = ["element", "low, mass %", "high, mass %", "typical, mass %"];
  const figures = answered("COMPOSITION", steel).map((row) => row.slice(0, 4).map(plain));
  return { title, block: blockOf(title, headings, figures, footing(["COMPOSITION"], found)) };
}

function hardeningRow({ label, unit }: Column, cell: Cell | undefined): Row {
  const figure = plain(cell);
  const inFahrenheit = unit === "°C" && typeof figure === "number" ? wholeFahrenheit(figure) : "";
  return [label, figure, unit === "text" ? "" : unit, inFahrenheit];
}

/** The thickest section that each quench hardens through; quenches without a figure are left out. */
function sectionRows(steel: string): Row[] {
  return list(ask("QUENCHES")).flatMap((quench) => {
    const { rows, refusal } = ask("MAX_SECTION", steel, quench);
    return refusal === null ? [[`fully hard up to, ${quench}`, plain(rows[0]?.[0]), "mm", ""]] : [];
  });
}

function hardeningBlock({ steel }: BlockOf): SteelBlock {
  const found = findSteel(steel);
  const title = `Hardening of ${found.name}`;
  const fn = functionNamed("HARDENING");
  const columns = fn === undefined || fn.shape === "scalar" ? [] : fn.result;
  const [cells = []] = answered("HARDENING", steel);
  const figures = columns
    .map((column, at) => hardeningRow(column, cells[at]))
    .filter(([, figure]) => figure !== "");
  const headings = ["step", "figure", "unit", "in °F"];
  const foot = footing(["HARDENING", "MAX_SECTION"], found);
  return { title, block: blockOf(title, headings, [...figures, ...sectionRows(steel)], foot) };
}

const TEMPER_HEADINGS = ["temper, °C", "temper, °F", "low, HRC", "likely, HRC", "high, HRC"];

function temperBlock({ steel, hours, cycles }: BlockOf): SteelBlock {
  const found = findSteel(steel);
  const tempers = usualTempers(steel);
  const { rows, refusal } = ask("TEMPERED_RANGE", steel, temperColumn(tempers), hours, cycles);
  const figures = tempers.flatMap((temper, at) => {
    const cells = rows[at]?.slice(0, 3) ?? [];
    const isWhole = cells.length === 3 && cells.every((cell) => typeof cell === "number");
    return isWhole ? [[temper, wholeFahrenheit(temper), ...cells.map(plain)]] : [];
  });
  if (figures.length === 0) refuse(refusal ?? "there is no figure for any temper");
  const title = `Temper curve of ${found.name}`;
  const words = temperLines(steel, { hours, cycles }).map((line) => [line]);
  const foot = [...words, ...footing(["TEMPERED_RANGE"], found)];
  const chart: LineChart = {
    title,
    horizontal: "temper, °C",
    vertical: "HRC",
    columns: [0, 2, 3, 4],
    rows: [2, figures.length + 1],
  };
  return { title, block: blockOf(title, TEMPER_HEADINGS, figures, foot), chart };
}

/** The tables that can be put into a sheet, by what a smith calls them. */
export const STEEL_BLOCKS = {
  "Temper curve": temperBlock,
  "Hardening sheet": hardeningBlock,
  Composition: compositionBlock,
} as const satisfies Record<string, (made: BlockOf) => SteelBlock>;
