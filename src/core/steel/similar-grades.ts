import table from "../../data/steel/nearness.json";
import { relation } from "../relation";
import { number, oneOf, records } from "../table";
import { type SteelAsked, steelAsked } from "./asked";
import { boundsOf } from "./bounds";
import { ELEMENTS, type Element } from "./composition";
import { steelOf } from "./find";
import { allGrades } from "./grades";
import type { Grade, Steel } from "./steel";

/** A grade near a steel, and where the two part most. */
export interface SimilarGrade {
  readonly grade: Grade;
  /** Element that differs most; null where the middles of all limits agree. */
  readonly element: Element | null;
  /** Middle of the limits of the near grade less that of the steel asked about [mass %]. */
  readonly difference: number;
}

const STEPS = records(table, { element: oneOf(ELEMENTS), step: number, share: number });

/** How grades are compared: by the middles of their limits, each element in steps that matter. */
export const NEARNESS = relation({
  title: "grades ordered by the difference of their contents",
  source: "common",
  locator:
    "middle of the limits, half of a maximum alone; C, Si, Mn, Cr, Ni, Mo, V, W, Co, N in steps of what matters",
  evidence: "common practice",
  inputs: {},
  output: { label: "difference of the middles", unit: "mass %" },
  error: {
    size: null,
    unit: "mass %",
    kind: "near is never the same steel: a heat may lie anywhere within its limits",
  },
});

/** A maximum alone of so many steps leaves room for an addition; a lower one only caps a residual. */
const ROOM = 2;

/** Middle of the limits as a comparison needs it: a minimum alone as it stands, a maximum alone half where it leaves room. */
function middleOf(steel: Steel, element: Element, step: number): number {
  const { low, high } = boundsOf(steel, element);
  if (high === null) return low ?? steel.composition[element];
  if (low !== null) return (low + high) / 2;
  const counts = element === "C" || element === "Si" || element === "Mn" || high > ROOM * step;
  return counts ? high / 2 : 0;
}

interface Gap {
  readonly element: Element;
  readonly difference: number;
  readonly steps: number;
}

/** Differences of the middles of two steels, element by element. */
function gaps(steel: Steel, other: Steel): Gap[] {
  return STEPS.map(({ element, step, share }) => {
    const [mine, theirs] = [middleOf(steel, element, step), middleOf(other, element, step)];
    const difference = Number((theirs - mine).toFixed(4));
    return { element, difference, steps: Math.abs(difference) / (step + (share * (mine + theirs)) / 2) };
  });
}

/** Bare name of a grade sold in classes: M2 for M2 (high C), W1 for W1-8. */
function root(designation: string): string {
  return designation.replace(/ \(.+\)$/, "").replace(/^(W\d)-.+$/, "$1");
}

function isSame(steel: Steel, grade: Grade): boolean {
  return steel.grade !== null && root(steel.grade.designation) === root(grade.designation);
}

/** Furthest apart that still counts as near: 3 steps taken over all elements. */
const FURTHEST = 3;

/** Differences that twins may show: little carbon, in the middle of the limits and in the name, and little in all else. */
const TWIN = { middleCarbon: 0.04, carbon: 0.035, steps: 0.45 };

/** Carbon steels that their standards sort apart as of higher manganese, which hardens deeper: SAE 15xx, GB 65Mn, GOST 65Г. */
const HIGH_MANGANESE = /^15\d\d$|(Mn|Г)$/;

function isHighManganese({ family, grade }: Steel): boolean {
  return family === "plain carbon" && HIGH_MANGANESE.test(grade?.designation ?? "");
}

/**
 * Whether two steels are one for a smith: the same composition under the names of two standards.
 *
 * @returns True where carbon differs by hardly 0.04 % and the other elements by less than what counts, of carbon
 *   steel both of ordinary or both of higher manganese.
 */
export function areTwins(steel: Steel, other: Steel): boolean {
  if (steel === other) return true;
  if (steel.family !== other.family || isHighManganese(steel) !== isHighManganese(other)) return false;
  const each = gaps(steel, other);
  const carbon = each.find(({ element }) => element === "C");
  if (Math.abs(carbon?.difference ?? 1) > TWIN.middleCarbon) return false;
  if (Math.abs(steel.composition.C - other.composition.C) > TWIN.carbon) return false;
  const rest = each.reduce((sum, { element, steps }) => (element === "C" ? sum : sum + steps * steps), 0);
  return rest <= TWIN.steps ** 2;
}

function nearness(steel: Steel, grade: Grade) {
  const each = gaps(steel, steelOf(grade));
  const distance = Math.sqrt(each.reduce((sum, { steps }) => sum + steps * steps, 0));
  const widest = each.reduce((most, gap) => (gap.steps > most.steps ? gap : most));
  const element = widest.difference === 0 ? null : widest.element;
  return { grade, distance, element, difference: widest.difference };
}

/**
 * Grades of the table whose contents lie nearest, best first; none of them is the same steel.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param count - How many at most.
 * @returns Grades with the element that differs most [mass %]; empty where none is near.
 * Limits: nothing is refused. Error and source: {@link NEARNESS}.
 */
export function similarGrades(steel: SteelAsked, count = 10): readonly SimilarGrade[] {
  steel = steelAsked(steel);
  return allGrades()
    .filter((grade) => !isSame(steel, grade))
    .map((grade) => nearness(steel, grade))
    .filter(({ distance }) => distance <= FURTHEST)
    .sort((a, b) => a.distance - b.distance)
    .slice(0, count)
    .map(({ grade, element, difference }) => ({ grade, element, difference }));
}
