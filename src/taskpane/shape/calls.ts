import { functionNamed } from "../../functions/catalogue";
import type { ExampleArgument } from "../../functions/declare";
import { ask, type Reply } from "../parts/ask";
import { formulaOf, withoutEmptyEnd } from "../parts/formula";
import type { BladeInput } from "./blade-form";

/** A formula for the sheet, with what it gives. */
export type Offered = readonly [what: string, formula: string];

/** What was asked, with the answer and the formula that asks the same in a cell. */
export interface Asked {
  readonly reply: Reply;
  readonly formula: string;
}

const orNothing = (figure: number) => (figure === 0 ? null : figure);

const listOrNothing = (list: readonly number[]) => (list.every((figure) => figure === 0) ? null : list);

/** The arguments by which every function takes a measured blade. */
export function bladeArguments(blade: BladeInput): readonly ExampleArgument[] {
  const { x, width, thickness, grind, edge, steel, bevelHeight, curve, fullerWidth, fullerDepth } = blade;
  return [
    ...[x, width, thickness, grind.word],
    orNothing(edge),
    steel === "" ? null : steel,
    ...[bevelHeight, curve].map(orNothing),
    ...[fullerWidth, fullerDepth].map(listOrNothing),
  ];
}

/** A list goes into a call as a column. */
const asCells = (argument: ExampleArgument) =>
  Array.isArray(argument) ? argument.map((cell) => [cell]) : argument;

/** A figure as typed: a number where it is one, else the text with its unit; nothing where the field is empty. */
export function typedArgument(text: string): string | number | null {
  if (text === "") return null;
  return /^-?\d*\.?\d+$/.test(text) ? Number(text) : text;
}

/** Asks a function; what is left out at the end stays out of the formula. */
export function asked(name: string, arguments_: readonly ExampleArgument[]): Asked {
  const given = withoutEmptyEnd(arguments_, (argument) => argument === null);
  const fn = functionNamed(name);
  return { reply: ask(name, ...given.map(asCells)), formula: fn === undefined ? "" : formulaOf(fn, given) };
}
