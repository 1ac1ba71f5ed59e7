import { expect, test } from "vitest";
import { COMMON_STEELS, QUESTIONS, unanswered } from "./common-steels";

/** Steels of the 52 that each function must answer for; before the relations of stainless and tool steel 32, 31, 38, 25, 21, 4 and 8. */
const LEAST: Readonly<Record<string, number>> = {
  TEMPERED_RANGE: 50,
  QUENCHED_HRC: 50,
  HARDENING: 52,
  MAX_SECTION: 50,
  SECTION_QUENCH: 45,
  DECARB: 45,
  JOMINY: 25,
};

test("52 steels, none twice", () => {
  expect(new Set(COMMON_STEELS).size).toBe(52);
});

test.each(Object.keys(QUESTIONS))("%s answers for the steels that a smith buys", (name) => {
  const missing = unanswered(name);
  expect(COMMON_STEELS.length - missing.length, missing.join(" ")).toBeGreaterThanOrEqual(LEAST[name] ?? 52);
});
