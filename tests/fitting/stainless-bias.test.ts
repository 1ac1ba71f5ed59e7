import { expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { temperPlan } from "../../src/core/tempering/temper-plan";
import { temperedHardness } from "../../src/core/tempering/tempered";
import { BLADE_TEMPER_C, fitStainless, missesLeftOut, missOf, STAINLESS_ROWS } from "./fit-stainless";

const fit = fitStainless(STAINLESS_ROWS);

function bias(isIn: (hrc: number) => boolean): number {
  const rows = STAINLESS_ROWS.filter(({ temperC, hrc }) => temperC <= BLADE_TEMPER_C && isIn(hrc));
  return rows.reduce((sum, row) => sum + missOf(fit, row), 0) / rows.length;
}

/** With carbide counted in proportion the three stood at +0.16, +0.93 and -0.75. */
test.each([
  ["soft, to 49", (hrc: number) => hrc < 49],
  ["of 49 to 54", (hrc: number) => hrc >= 49 && hrc < 54],
  ["hard, from 54", (hrc: number) => hrc >= 54],
])("blade tempers of rows %s HRC are met without a bias of 0.8 HRC", (_, isIn) => {
  expect(Math.abs(bias(isIn))).toBeLessThan(0.8);
});

test("series that a fit knows nothing of are met better than with carbide in proportion, 1.43 HRC rms", () => {
  const misses = missesLeftOut().map(({ miss }) => miss);
  expect(Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length)).toBeLessThan(1.3);
});

// Two kitchen knife makers' pages give 54-57 and 55-57 for blades of this kind (read): no row of the fit.
test("X50CrMoV15 comes to what knife makers print", () => {
  const hrc = temperedHardness(findSteel("X50CrMoV15"), 180, { hours: 2, cycles: 1 });
  expect(hrc).toBeGreaterThan(54.5);
  expect(hrc).toBeLessThan(57);
});

test("a hardness beyond the middle of the window names what the top of it gives", () => {
  const { flag, caution } = temperPlan(findSteel("X50CrMoV15"), 58, { hours: 2, cycles: 1 });
  expect(flag).toBe("out of reach");
  // 56 HRC, which makers print for it, is missed by less than the error: it is planned, not refused.
  const usual = temperPlan(findSteel("X50CrMoV15"), 56, { hours: 2, cycles: 1 });
  expect([usual.flag, usual.likelyC]).toEqual(["at the limit", 150]);
  expect(caution).toMatch(/the highest .* is 55\.\d HRC \(hardened from 1050 °C .* 57\.\d HRC\)/);
});
