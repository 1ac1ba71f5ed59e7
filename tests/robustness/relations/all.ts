import { randomFrom } from "../../stock/brute-force";
import { drawFrom, type MetamorphicRelation } from "./mechanism";
import { RUN_RELATIONS } from "./of-run";
import { SHAPE_RELATIONS } from "./of-shape";
import { STEEL_RELATIONS } from "./of-steel";
import { TEMPERING_RELATIONS } from "./of-tempering";

/** What must hold between answers of the functions, a row a relation. */
export const RELATIONS: readonly MetamorphicRelation[] = [
  ...STEEL_RELATIONS,
  ...TEMPERING_RELATIONS,
  ...SHAPE_RELATIONS,
  ...RUN_RELATIONS,
];

export interface Tried {
  readonly runs: number;
  /** Questions that were answered; the others were refused. */
  readonly asked: number;
  /** What was told where the relation does not hold. */
  readonly contradictions: readonly string[];
}

/** Asks a relation so many times with figures drawn from a seed. */
export function tried({ holds }: MetamorphicRelation, runs: number, seed: number): Tried {
  const draw = drawFrom(randomFrom(seed));
  const told = Array.from({ length: runs }, () => holds(draw)).filter((one) => one !== undefined);
  return { runs, asked: told.length, contradictions: told.filter((one) => one !== "") };
}
