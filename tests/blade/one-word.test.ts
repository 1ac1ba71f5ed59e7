import { expect, test } from "vitest";
import { findUse, USES } from "../../src/core/blade/bands";
import { bladeStory } from "../../src/core/blade/story";
import { findQuench } from "../../src/core/hardening/quench-media";
import { findSteel } from "../../src/core/steel/find";
import { SECTION_QUENCH } from "../../src/functions/hardening";
import { TREATMENT } from "../../src/functions/run";
import { plan } from "../run/run";
import { answer } from "../steel/answer";
import { COMMON_STEELS } from "../steel/common-steels";

const QUENCHES = ["fast oil", "oil A", "slow oil", "agitated water", "brine", "still air"];
const THICKNESSES = [1.5, 2, 3, 4, 6, 12];
const THROUGH = TREATMENT.result.findIndex(({ label }) => label === "through-hardens");
const SWORD = "European sword sharp";

/** The word that a verdict begins with. */
const wordOf = (verdict: unknown) =>
  /^(hardens through|marginal|does not harden through|does not harden)(?=[:;,.]|$)/.exec(
    String(verdict),
  )?.[1];

const BLADES = COMMON_STEELS.flatMap((steel) =>
  QUENCHES.flatMap((quench) => THICKNESSES.map((thickness) => ({ steel, quench, thickness }))),
);

test("one word for whether a blade hardens through, in RUN_PLAN, TREATMENT, SECTION_QUENCH and the story", () => {
  const lines = plan(
    BLADES.map((blade, at) => ({ line: `${at}`, use: SWORD, good: 1, yield: 0.9, ...blade })),
  );
  let judged = 0;
  const differing = BLADES.flatMap(({ steel, quench, thickness }, at) => {
    const story = bladeStory({
      steel: findSteel(steel),
      use: findUse(SWORD),
      quench: findQuench(quench),
      thickness,
      treatment: { hours: 2, cycles: 1 },
    }).hardening.word;
    const told = [
      story,
      lines[at]?.["through-hardens"],
      answer(TREATMENT, steel, SWORD, null, quench, thickness)[0]?.[THROUGH],
    ];
    const section = wordOf(answer(SECTION_QUENCH, steel, 30, thickness, 0.5, quench)[0]?.[4]);
    // A section that the calculation refuses, or a plate that no table judges, has one word less.
    if (section !== undefined && story !== "not judged") {
      judged++;
      told.push(section);
    }
    return new Set(told).size === 1 ? [] : [`${thickness} mm ${steel}, ${quench}: ${told.join(" | ")}`];
  });
  console.info(`${BLADES.length} blades, ${judged} with a section worked out: ${differing.length} differ`);
  expect(judged).toBeGreaterThan(1400);
  expect(differing).toEqual([]);
}, 300_000);

test("a use that wants a hard edge alone is judged by its edge, in every word", () => {
  const told = USES.filter(({ part }) => part !== "whole").map(({ word: use }) => {
    const [row = []] = answer(TREATMENT, "C60", use, null, "fast oil", 20);
    return [use, row[THROUGH]];
  });
  // 20 mm of C60 is fully hard to about 4 mm in fast oil by the table of plates: 2 mm of edge are, the rest is not.
  expect(told.length).toBeGreaterThan(5);
  for (const [use, word] of told) expect(word, String(use)).toBe("edge only");
  // C80U is fully hard to under 2 mm in slow oil, half martensite or less: the edge itself may stay soft.
  const [row = []] = answer(TREATMENT, "C80U", "Hatchet bit", null, "slow oil", 20);
  expect(row[THROUGH]).toMatch(/^marginal|^does not harden through/);
});
