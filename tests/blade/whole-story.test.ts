import { expect, test } from "vitest";
import { bandFor } from "../../src/core/blade/band-by-steel";
import { USES, type Use } from "../../src/core/blade/bands";
import { steelsFor } from "../../src/core/blade/choice";
import { isNamedFor } from "../../src/core/blade/named-steels";
import type { BladeStory } from "../../src/core/blade/question";
import { TESTER_HRC } from "../../src/core/blade/status";
import { bladeStory } from "../../src/core/blade/story";
import { QUENCH_MEDIA, type QuenchMedium } from "../../src/core/hardening/quench-media";
import { Refusal } from "../../src/core/refusal";
import { steelOf } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";
import type { Steel } from "../../src/core/steel/steel";
import type { QuenchedSection } from "../../src/core/tempering/section-effect";
import { temperedRange } from "../../src/core/tempering/tempered-range";
import { evaluate } from "../../src/functions/evaluate";
import { RECIPE } from "../../src/functions/run";

const USUAL = { hours: 2, cycles: 1 };
const THICKNESSES = [1.5, 3, 6, 12];
const words = (text: string) => text.split(/\s+/).length;

/** The figures that contradict their own words; the shares are those of the status words. */
function ofWords({ status, chance, hardening, temperC, estimate }: BladeStory): [boolean, string][] {
  const isSoft = /^does not harden/.test(hardening.word);
  const share = chance ?? Number.NaN;
  return [
    [isSoft === (status === "does not harden"), `${hardening.word} but ${status}`],
    [chance === undefined ? status === "not known" : share >= 0 && share <= 1, `chance ${chance}`],
    [(status === "inside") === share >= 0.9, `${status} at ${chance}`],
    [(status === "likely inside") === (share >= 0.6 && share < 0.9), `${status} at ${chance}`],
    [!isSoft || (temperC === undefined && estimate === undefined), "soft, yet it has a temper"],
  ];
}

/** Sentences and short forms no longer than a cell may hold, and no advice that stands already. */
function ofSentences({ next, cautions }: BladeStory, quench: QuenchMedium): [boolean, string][] {
  return [
    [words(next) <= 40, `next step of ${words(next)} words`],
    [quench.kind !== "oil" || !/in oil:/.test(next), next],
    ...cautions.map(({ short }): [boolean, string] => [short.length <= 60, `short caution: ${short}`]),
  ];
}

/** Whether TEMPERED_RANGE gives what the story expects. */
function ofRange({ temperC, estimate }: BladeStory, steel: Steel, section: QuenchedSection) {
  if (temperC === undefined || estimate === undefined) return [];
  const { low, likely } = temperedRange(steel, temperC, USUAL, section);
  const same = Math.abs(likely - estimate.likely) < 1e-9 && Math.abs(low - estimate.low) < 1e-9;
  return [[same, "TEMPERED_RANGE gives another hardness"] as [boolean, string]];
}

/** What a story says against itself or against the function whose part it is; empty where it agrees. */
function contradictions(steel: Steel, use: Use, quench: QuenchMedium, thickness: number): string[] {
  const story = bladeStory({ steel, use, quench, thickness, treatment: USUAL });
  const [[recipe] = []] = evaluate(RECIPE, [steel.name, null, quench.word]);
  const refused = recipe instanceof Refusal;
  const section = { quench, thicknessMm: use.part === "whole" ? thickness : undefined };
  const claims: [boolean, string][] = [
    ...ofWords(story),
    [refused === (story.hardening.word === "does not harden"), "RECIPE differs"],
    ...ofRange(story, steel, section),
    ...ofSentences(story, quench),
  ];
  const place = `${steel.name}, ${use.word}, ${quench.word}, ${thickness} mm`;
  return claims.filter(([holds]) => !holds).map(([, what]) => `${place}: ${what}`);
}

test("every steel in every quench, four thicknesses, uses in turn: the parts of a story agree", () => {
  let count = 0;
  const found = allGrades().flatMap((grade) =>
    QUENCH_MEDIA.flatMap((quench) =>
      THICKNESSES.flatMap((thickness) =>
        contradictions(steelOf(grade), USES[count++ % USES.length] as Use, quench, thickness),
      ),
    ),
  );
  console.info(`${count} stories, ${found.length} contradictions`);
  expect(found.slice(0, 20)).toEqual([]);
}, 300_000);

/** A generator of equal shares from 0 to 1 that gives the same row every time (Park and Miller 1988). */
function* shares(seed: number) {
  let state = seed;
  for (;;) {
    state = (state * 48_271) % 2_147_483_647;
    yield state / 2_147_483_647;
  }
}

/** Standard normal values by Box and Muller (1958). */
function normals(seed: number): () => number {
  const source = shares(seed);
  return () => {
    const [u, v] = [source.next().value as number, source.next().value as number];
    return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * v);
  };
}

/** 90 % of a normal distribution lie within 1.645 standard deviations: any table. */
function simulated({ low, high }: Use, { estimate }: BladeStory, normal: () => number): number {
  if (estimate === undefined) return Number.NaN;
  let inside = 0;
  for (let i = 0; i < 4000; i++) {
    const blade = estimate.likely + (normal() * (estimate.high - estimate.likely)) / 1.645;
    const reading = blade + (normal() * TESTER_HRC) / 1.645;
    if (reading >= low && reading <= high) inside++;
  }
  return inside / 4000;
}

test("the chance is what drawing blades and readings gives, for the trade's steels of each use", () => {
  const normal = normals(20_261);
  const share = new Map<string, number>();
  let [pairs, worst] = [0, 0];
  for (const use of USES) {
    const steels = steelsFor({ use })
      .map(({ steel }) => steel)
      .filter((steel) => isNamedFor(use, steel))
      .slice(0, 5);
    for (const steel of steels) {
      const story = bladeStory({ steel, use, treatment: USUAL });
      pairs++;
      share.set(story.status, (share.get(story.status) ?? 0) + 1);
      if (story.estimate === undefined || story.status === "out of reach") continue;
      worst = Math.max(worst, Math.abs(simulated(bandFor(use, steel), story, normal) - (story.chance ?? 0)));
    }
  }
  const told = [...share].map(([status, n]) => `${status} ${((100 * n) / pairs).toFixed(0)} %`).join(", ");
  console.info(
    `${pairs} pairs of use and steel: ${told}; largest difference of the chance ${worst.toFixed(3)}`,
  );
  expect(pairs).toBeGreaterThan(60);
  expect(worst).toBeLessThan(0.03);
}, 300_000);
