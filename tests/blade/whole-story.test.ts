import { expect, test } from "vitest";
import { bandFor } from "../../src/core/blade/band-by-steel";
import { findUse, USES, type Use } from "../../src/core/blade/bands";
import { chanceInBand } from "../../src/core/blade/chance";
import { steelsFor } from "../../src/core/blade/choice";
import { isNamedFor } from "../../src/core/blade/named-steels";
import type { BladeStory } from "../../src/core/blade/question";
import { missOf, TESTER_HRC } from "../../src/core/blade/status";
import { bladeStory } from "../../src/core/blade/story";
import { QUENCH_MEDIA, type QuenchMedium } from "../../src/core/hardening/quench-media";
import { Refusal } from "../../src/core/refusal";
import { findSteel, steelOf } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";
import type { Steel } from "../../src/core/steel/steel";
import type { QuenchedSection } from "../../src/core/tempering/section-effect";
import { KNOWN_HALF_WIDTH, temperedRange } from "../../src/core/tempering/tempered-range";
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
  // Where the use wants no more than a hard edge, 2 mm of it are judged: common practice.
  const section = { quench, thicknessMm: use.part === "whole" ? thickness : Math.min(thickness, 2) };
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

/** The trade's own steels of every use, five a use at most. */
const PAIRS = USES.flatMap((use) =>
  steelsFor({ use })
    .map(({ steel }) => steel)
    .filter((steel) => isNamedFor(use, steel))
    .slice(0, 5)
    .map((steel) => ({ use, steel, story: bladeStory({ steel, use, treatment: USUAL }) })),
);

test("the chance is what drawing blades and readings gives, for the trade's steels of each use", () => {
  const normal = normals(20_261);
  const differences = PAIRS.filter(
    ({ story }) => story.estimate !== undefined && story.status !== "out of reach",
  ).map(({ use, steel, story }) =>
    Math.abs(simulated(bandFor(use, steel), story, normal) - (story.chance ?? 0)),
  );
  const worst = Math.max(...differences);
  console.info(
    `${PAIRS.length} pairs of use and steel: largest difference of the chance ${worst.toFixed(3)}`,
  );
  expect(PAIRS.length).toBeGreaterThan(60);
  expect(worst).toBeLessThan(0.03);
}, 300_000);

test("of the trade's own pairs those too soft or too hard are so because a brittle range is kept out of", () => {
  const share = new Map<string, number>();
  for (const { story } of PAIRS) share.set(story.status, (share.get(story.status) ?? 0) + 1);
  const outside = PAIRS.filter(({ story }) => /^too/.test(story.status));
  const told = [...share].map(([status, n]) => `${status} ${n}`).join(", ");
  const lost = outside.map(({ story }) => story.best?.avoided?.chance ?? 0).sort((a, b) => a - b);
  console.info(
    `${PAIRS.length} pairs: ${told}; inside the brittle range the ${outside.length} would have a chance of ` +
      `${lost[0]?.toFixed(2)} to ${lost.at(-1)?.toFixed(2)}, ${lost[Math.floor(lost.length / 2)]?.toFixed(2)} in the middle`,
  );
  console.log(
    outside
      .filter(({ story }) => !story.best?.avoided)
      .map(({ use, steel, story }) =>
        [
          use.word,
          steel.name,
          story.temperC,
          story.estimate?.likely,
          story.chance,
          use.low,
          use.high,
          story.status,
        ].join(" "),
      ),
  );
  // Each has a temper that would lead into the band and is not taken, or stands within 2 HRC of it at its hardest.
  for (const { use, steel, story } of outside) {
    const isNear = Math.abs(missOf(use, story.estimate?.likely ?? Number.NaN)) <= 2;
    const avoided = story.best?.avoided?.chance ?? Number(isNear);
    expect(avoided, `${use.word}, ${steel.name}`).toBeGreaterThan(story.chance ?? 0);
  }
  expect(outside.length / PAIRS.length).toBeLessThan(0.23);
  for (const { story } of PAIRS)
    expect(["not known", "out of reach", "does not harden"]).not.toContain(story.status);
});

/**
 * The share of blades that read inside the band where a coupon of the heat is read first and the temper set by it:
 * the heat lies off the curve by what a reading takes away from the band, the blade by what it leaves.
 */
function afterCoupon({ use, steel, story }: (typeof PAIRS)[number], normal: () => number): number {
  const { estimate, temperC } = story;
  if (estimate === undefined || temperC === undefined) return Number.NaN;
  const band = bandFor(use, steel);
  const half = estimate.high - estimate.likely;
  const heatSd = Math.sqrt(Math.max(0, half ** 2 - KNOWN_HALF_WIDTH ** 2)) / 1.645;
  let inside = 0;
  const heats = 60;
  const blades = 100;
  for (let heat = 0; heat < heats; heat++) {
    // Stratified over the heats, so that few of them do.
    const hrc = estimate.likely + heatSd * quantile((heat + 0.5) / heats);
    const set = bladeStory({ steel, use, treatment: { ...USUAL, known: { celsius: temperC, hrc } } });
    const likely = set.estimate?.likely ?? Number.NaN;
    for (let i = 0; i < blades; i++) {
      const reading = likely + (normal() * KNOWN_HALF_WIDTH) / 1.645 + (normal() * TESTER_HRC) / 1.645;
      if (reading >= band.low && reading <= band.high) inside++;
    }
  }
  return inside / (heats * blades);
}

/** Quantile of the normal distribution, by Acklam's centre and tails cut to what is asked: bisection of its share. */
function quantile(share: number): number {
  let [low, high] = [-6, 6];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (chanceInBand({ low: -99, high: middle }, STANDARD) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** An estimate that with the tester's own error has a standard deviation of 1. */
const SIDE = Math.sqrt(1.645 ** 2 - TESTER_HRC ** 2);
const STANDARD = { low: -SIDE, likely: 0, high: SIDE };

test("what one coupon is said to be worth is what reading one and tempering by it gives", () => {
  const normal = normals(4_711);
  const advised = PAIRS.filter(({ story }) => /one coupon would raise/.test(story.next));
  const differences = advised.map((pair) =>
    Math.abs(afterCoupon(pair, normal) - (pair.story.best?.withCoupon ?? 0)),
  );
  const mean = differences.reduce((sum, each) => sum + each, 0) / differences.length;
  console.info(
    `${differences.length} of ${advised.length} coupons advised: difference ${mean.toFixed(3)} in the mean, ${Math.max(...differences).toFixed(3)} at most`,
  );
  expect(differences.length).toBeGreaterThan(10);
  expect(Math.max(...differences)).toBeLessThan(0.03);
}, 300_000);

// A short struck blade whose softer tempers miss the band by more takes the smaller miss above it, before a coupon and
// after one alike: bars of a heat are read and tempered anew here as the advice says.
test.each([
  ["throwing knife", "1050"],
  ["meat cleaver", "1055"],
  ["camp chopper", "6150"],
  ["felling axe", "1065"],
])("a coupon's chance for a %s of %s counts the smaller miss above the band", (word, name) => {
  const [use, steel] = [findUse(word), findSteel(name)];
  const story = bladeStory({ steel, use, treatment: USUAL });
  const chance = afterCoupon({ use, steel, story }, normals(4_711));
  expect(story.best?.withCoupon).toBeGreaterThan(story.chance ?? 1);
  expect(Math.abs(chance - (story.best?.withCoupon ?? 0))).toBeLessThan(0.03);
});
