import { expect, test } from "vitest";
import { quenchedHardness } from "../../src/core/hardening/quenched";
import { retainedAt } from "../../src/core/hardening/retained";
import { subZeroGain } from "../../src/core/hardening/sub-zero";
import { findSteel } from "../../src/core/steel/find";
import { type Treatment, temperedHardness } from "../../src/core/tempering/tempered";
import { temperedRange } from "../../src/core/tempering/tempered-range";

const STAINLESS = findSteel("440C");
const once = (more: Partial<Treatment>): Treatment => ({ hours: 2, cycles: 1, ...more });

test("the gain is 0.15 HRC for each % of austenite that turns, the same in every function", () => {
  const turned = retainedAt(STAINLESS, 1038, 20) - retainedAt(STAINLESS, 1038, -80);
  const gain = 0.15 * turned;
  expect(gain).toBeGreaterThan(0.3);
  // Common figure from memory: 1 to 2 HRC for 440C.
  expect(gain).toBeLessThan(2);
  const quenched = (to?: number) => quenchedHardness(STAINLESS, 1038, to).hrc;
  expect(quenched(-80) - quenched()).toBeCloseTo(gain, 9);
  const tempered = (quenchToC?: number) =>
    temperedHardness(STAINLESS, 200, once({ hardenC: 1038, quenchToC }));
  expect(tempered(-80) - tempered()).toBeCloseTo(gain, 9);
});

test("a lean steel keeps it at 180 °C and has lost it at 320 °C, where the austenite turns anyway", () => {
  const steel = findSteel("52100");
  const at = (celsius: number, quenchToC?: number) => temperedHardness(steel, celsius, once({ quenchToC }));
  expect(at(180, -80) - at(180)).toBeGreaterThan(0.3);
  expect(at(320, -80) - at(320)).toBeCloseTo(0, 9);
});

test("it is said, also where it cannot be counted", () => {
  expect(temperedRange(STAINLESS, 200, once({ quenchToC: -80 })).caution).toContain("of austenite turned");
  expect(subZeroGain(findSteel("H13"), undefined, -80)).toMatchObject({
    hrc: 0,
    caution: expect.stringContaining("not counted, its retained austenite is not known"),
  });
  expect(subZeroGain(STAINLESS, undefined, 20)).toEqual({ hrc: 0, caution: "" });
});
