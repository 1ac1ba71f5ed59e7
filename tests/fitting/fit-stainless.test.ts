import { expect, test } from "vitest";
import { STAINLESS_FIT } from "../../src/core/hardening/stainless-fit";
import { findSteel } from "../../src/core/steel/find";
import { temperedHardness } from "../../src/core/tempering/tempered";
import { fitStainless, missesLeftOut, STAINLESS_ROWS } from "./fit-stainless";
import { fitToolSteels } from "./fit-tool-steels";

test("the coefficients of the stainless relation are those that the rows give", () => {
  const fit = fitStainless(STAINLESS_ROWS);
  STAINLESS_FIT.level.forEach((value, i) => {
    expect(value).toBeCloseTo(fit.level[i] as number, 2);
  });
  STAINLESS_FIT.softening.forEach(([, hrc], i) => {
    expect(hrc).toBeCloseTo(fit.softening[i]?.[1] as number, 2);
  });
});

test("9 in 10 rows of series that a fit knows nothing of lie within the half-width", () => {
  const misses = missesLeftOut().map(({ miss }) => Math.abs(miss));
  const inside = misses.filter((miss) => miss <= STAINLESS_FIT.halfWidth).length;
  expect(misses.length).toBe(STAINLESS_ROWS.length);
  expect(inside / misses.length, `${inside} of ${misses.length}`).toBeGreaterThanOrEqual(0.9);
});

test("the curves of the tool steels are those that their rows give", () => {
  for (const [name, coefficients] of fitToolSteels()) {
    const [a = 0, b = 0, c = 0, d = 0] = coefficients;
    // 300 °C for 2 h: p = 573.15 (18 + log 2) / 1000 = 10.489.
    const x = 10.4892 - 12;
    const answer = temperedHardness(findSteel(name), 300, { hours: 2, cycles: 1 });
    expect(answer, name).toBeCloseTo(a + x * (b + x * (c + x * d)), 1);
  }
});
