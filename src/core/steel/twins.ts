import { mentionsOf } from "../blade/named-steels";
import { steelOf } from "./find";
import { allGrades, classesOf } from "./grades";
import { areTwins } from "./similar-grades";
import type { Steel } from "./steel";

/** Steels that are one for a smith, the first of them standing for all. */
export interface TwinGroup {
  readonly first: Steel;
  readonly all: readonly Steel[];
}

/**
 * Steels gathered into groups of twins, in the order given: each joins the first group whose leader is
 * its twin.
 */
export function twinGroups(steels: readonly Steel[]): readonly TwinGroup[] {
  const groups: { first: Steel; all: Steel[] }[] = [];
  for (const steel of steels) {
    const group = groups.find(({ first }) => areTwins(first, steel));
    if (group === undefined) groups.push({ first: steel, all: [steel] });
    else if (!group.all.includes(steel)) group.all.push(steel);
  }
  return groups;
}

let gathered: readonly TwinGroup[] | undefined;

/** Every grade of the table in groups of twins, led by the name that the trade uses most; a bare name sold in carbon classes stands aside for its classes. */
export function allTwins(): readonly TwinGroup[] {
  gathered ??= twinGroups(
    allGrades()
      .filter((grade) => classesOf(grade).length === 0)
      .map(steelOf)
      .sort((one, other) => mentionsOf(other) - mentionsOf(one)),
  );
  return gathered;
}

let homes: ReadonlyMap<Steel, TwinGroup> | undefined;

/** How many systems of designation carry a steel or a twin of it: the more, the easier it is to buy. */
export function systemsCarrying(steel: Steel): number {
  homes ??= new Map(allTwins().flatMap((group) => group.all.map((each) => [each, group] as const)));
  const { all } = homes.get(steel) ?? { all: [steel] };
  return new Set(all.map(({ grade }) => grade?.system)).size;
}
