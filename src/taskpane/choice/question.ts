import { attemptOr } from "../../core/refusal";
import { functionNamed } from "../../functions/catalogue";
import type { ExampleArgument } from "../../functions/declare";
import { parseMeasure } from "../../functions/measure";
import { formulaOf, withoutEmptyEnd } from "../parts/formula";

/** What the four questions of the page come to. */
export interface Asked {
  readonly use: string;
  readonly thickness: string;
  readonly length: string;
  /** Empty where it is not settled. */
  readonly quench: string;
  readonly kiln: "yes" | "no";
  readonly stainless: string;
  /** One steel a line, a price a kg behind it where there is one. */
  readonly rack: string;
}

interface Racked {
  readonly steel: string;
  readonly price: number | null;
}

/** "5160 4.20" and "80CrV2; 6,50" as a steel with its price; an analysis has its price behind a semicolon. */
function racked(line: string): Racked {
  const priced = /^([^;]+?)\s*;\s*(\d+(?:[.,]\d+)?)$/.exec(line) ?? /^(\S+)\s+(\d+(?:[.,]\d+)?)$/.exec(line);
  if (priced === null) return { steel: line, price: null };
  return { steel: priced[1] ?? "", price: Number((priced[2] ?? "").replace(",", ".")) };
}

export function rackOf({ rack }: Pick<Asked, "rack">): readonly Racked[] {
  return rack
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "")
    .map(racked);
}

/** A length as a bare number of mm where it can be read, so that the formula holds a number; else as typed. */
function millimetres(text: string): string | number | null {
  const trimmed = text.trim();
  return trimmed === "" ? null : attemptOr(trimmed, () => parseMeasure(trimmed, "length", "mm"));
}

/** Rows that the page reads; the first are told in sentences. */
export const ROWS = 20;

/** The arguments of STEELS_FOR for what was asked; nothing left out at the end. */
export function argumentsOf(asked: Asked, rows = ROWS): readonly ExampleArgument[] {
  const rack = rackOf(asked);
  const isPriced = rack.some(({ price }) => price !== null);
  const given: ExampleArgument[] = [
    asked.use,
    millimetres(asked.thickness),
    asked.quench === "" ? null : asked.quench,
    millimetres(asked.length),
    asked.stainless === "either" ? null : asked.stainless,
    rack.length === 0 ? null : rack.map(({ steel }) => steel),
    isPriced ? rack.map(({ price }) => price) : null,
    rows,
    asked.kiln === "no" ? "no" : null,
  ];
  return withoutEmptyEnd(given, (argument) => argument === null);
}

/** The same question as a formula of the sheet. */
export function formulaFor(asked: Asked): string {
  const fn = functionNamed("STEELS_FOR");
  return fn === undefined ? "" : formulaOf(fn, argumentsOf(asked));
}
