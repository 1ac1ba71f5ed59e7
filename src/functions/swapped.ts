import { InvalidValue, Refusal } from "../core/refusal";
import { findSteel } from "../core/steel/find";
import { type Argument, guarded } from "./arguments";
import { quoted, toCells } from "./cells";
import type { WorksheetFunction } from "./declare";

/** The only cell of an argument, where it is one. */
function onlyCell(raw: unknown): string | number | undefined {
  const [[cell] = [], ...others] = toCells(raw);
  return others.length === 0 && (typeof cell === "string" || typeof cell === "number") ? cell : undefined;
}

const isSteel = (cell: string | number) => !(guarded(() => findSteel(cell)) instanceof Refusal);

/** The argument that holds a steel where something else belongs. */
function steelElsewhere(args: readonly Argument[], raw: readonly unknown[]): number {
  return args.findIndex(({ parameter, values }, at) => {
    if (parameter.kind === "steel" || values.length !== 1 || !(values[0] instanceof Refusal)) return false;
    const cell = onlyCell(raw[at]);
    return cell !== undefined && isSteel(cell);
  });
}

/**
 * Notices a steel that stands in another argument's place while what stands in its own is none, and says so in
 * place of two sentences about each.
 *
 * @param raw - The arguments as they were given.
 * @returns The arguments; where they are swapped, with the sentence in the steel's place.
 */
export function withSwapTold(
  { name, parameters }: WorksheetFunction,
  args: readonly Argument[],
  raw: readonly unknown[],
): readonly Argument[] {
  const own = args.findIndex(({ parameter }) => parameter.kind === "steel");
  const given = args[own];
  if (given === undefined || given.values.length !== 1 || !(given.values[0] instanceof Refusal)) return args;
  const at = steelElsewhere(args, raw);
  const other = args[at];
  if (other === undefined) return args;
  const order = Object.values(parameters)
    .slice(0, Math.max(own, at) + 1)
    .map(({ label }) => label);
  const told = new InvalidValue(
    `${quoted(onlyCell(raw[at]) ?? null)} stands where ${other.parameter.label} belongs: the order is ${name}(${order.join(", ")})`,
  );
  return args.map((each, index) => (index === own || index === at ? { ...each, values: [told] } : each));
}
