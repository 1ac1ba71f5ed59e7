import { quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";

/** Like pieces that get one heat treatment. */
export interface LoadLine {
  /** Steel, window and temper in the shop's own words. */
  readonly recipe: string;
  readonly pieces: number;
  /** Of one piece, kg. */
  readonly mass: number;
}

/** What a furnace holds at a time; Infinity where there is no limit. */
export interface LoadLimits {
  readonly pieces: number;
  /** kg */
  readonly mass: number;
}

export interface Load {
  readonly recipe: string;
  readonly pieces: number;
  /** kg */
  readonly mass: number;
}

/** A sum of masses that meets the limit exactly must not spill over by rounding. */
const ROUNDING = 1e-9;

function checkPiece({ recipe, mass }: LoadLine, limits: LoadLimits): void {
  if (mass <= limits.mass * (1 + ROUNDING)) return;
  throw new InvalidValue(
    `"${recipe}": one piece of ${quantityText(mass, "kg")} is heavier than a load, ${quantityText(limits.mass, "kg")}`,
  );
}

/** Pieces of a mass that still fit a load. */
function room(load: Load, mass: number, limits: LoadLimits): number {
  const byMass =
    mass > 0 ? Math.floor(((limits.mass - load.mass) / mass) * (1 + ROUNDING) + ROUNDING) : Infinity;
  return Math.min(limits.pieces - load.pieces, byMass);
}

function placed(loads: readonly Load[], { recipe, pieces, mass }: LoadLine, limits: LoadLimits): Load[] {
  let left = pieces;
  const filled = loads.map((load) => {
    const taken = Math.max(0, Math.min(left, room(load, mass, limits)));
    left -= taken;
    return { ...load, pieces: load.pieces + taken, mass: load.mass + taken * mass };
  });
  while (left > 0) {
    const empty = { recipe, pieces: 0, mass: 0 };
    const taken = Math.max(1, Math.min(left, room(empty, mass, limits)));
    filled.push({ recipe, pieces: taken, mass: taken * mass });
    left -= taken;
  }
  return filled;
}

/**
 * Furnace loads: same recipe together, heaviest pieces first, each piece in one load.
 *
 * @param lines - Pieces by line; recipes are compared without case and spaces at the ends.
 * @param limits - What the furnace holds at a time.
 * @returns Loads in the order in which the recipes first appear.
 * @throws InvalidValue for a piece heavier than a load.
 */
export function furnaceLoads(lines: readonly LoadLine[], limits: LoadLimits): Load[] {
  const groups = new Map<string, LoadLine[]>();
  for (const line of lines) {
    checkPiece(line, limits);
    const key = line.recipe.trim().toLowerCase();
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  return [...groups.values()].flatMap((group) => {
    const recipe = group[0]?.recipe.trim() ?? "";
    const heaviestFirst = [...group].sort((a, b) => b.mass - a.mass);
    return heaviestFirst.reduce<Load[]>((loads, line) => placed(loads, { ...line, recipe }, limits), []);
  });
}
