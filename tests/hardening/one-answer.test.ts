import { describe, expect, test } from "vitest";
import { lowerCritical } from "../../src/core/hardening/critical";
import { decarbDepth, grindAllowance } from "../../src/core/hardening/decarb";
import { maxSection } from "../../src/core/hardening/max-section";
import { findQuench } from "../../src/core/hardening/quench-media";
import { quenchSection } from "../../src/core/hardening/section-quench";
import { sectionVerdict } from "../../src/core/hardening/section-verdict";
import { sectionWord } from "../../src/core/hardening/section-word";
import { findSteel } from "../../src/core/steel/find";
import { COMMON_STEELS } from "../steel/common-steels";

const BATHS = ["fast oil", "agitated water"] as const;

function plate(steel: string, bath: string, thicknessMm: number) {
  const shape = { widthMm: 30, spineMm: thicknessMm, edgeMm: thicknessMm, clay: 0, clayLineMm: 20, below: 0 };
  const rest = { transferS: 0, bathFactor: 1, startC: undefined };
  const inputs = { steel: findSteel(steel), quench: findQuench(bath), ...shape, ...rest };
  return sectionWord(inputs, quenchSection(inputs));
}

/** Steels whose plates of this thickness are worked by both ways. */
const SHALLOW = COMMON_STEELS.filter((name) => !/^(4140|4340|O6|S5)$/.test(name)).flatMap((name) =>
  BATHS.flatMap((bath) => {
    const section = maxSection(findSteel(name), bath);
    const isWorked = section.fullyHardMm < section.halfHardMm && section.halfHardMm < 30;
    return isWorked ? [[name, bath, section] as const] : [];
  }),
);

describe("SECTION_QUENCH and MAX_SECTION give one answer to the same plate", () => {
  test("enough steels are worked by both", () => {
    expect(SHALLOW.length).toBeGreaterThan(25);
  });

  test.each(SHALLOW)("%s in %s", (name, bath, { fullyHardMm, halfHardMm }) => {
    const steel = findSteel(name);
    const word = (mm: number) => sectionVerdict(steel, mm, findQuench(bath)).verdict;
    for (const mm of [fullyHardMm / 2, 0.99 * fullyHardMm, (fullyHardMm + halfHardMm) / 2, 1.1 * halfHardMm])
      expect(plate(name, bath, mm), `${mm} mm`).toBe(word(mm));
    expect(word(fullyHardMm / 2)).toBe("hardens through");
    expect(word(1.1 * halfHardMm)).toBe("does not harden through");
  });

  test("W2 of 4 mm in fast oil does not harden through by either, and its clay-hardened edge does", () => {
    expect(plate("W2", "fast oil", 4)).toBe("does not harden through");
    expect(sectionVerdict(findSteel("W2"), 4, findQuench("fast oil")).verdict).toBe(
      "does not harden through",
    );
    expect(maxSection(findSteel("W2"), "fast oil").fullyHardMm).toBeCloseTo(1.9, 1);
  });
});

describe("skin loss from Ac1 up", () => {
  test.each(["1095", "W2", "O1", "52100", "5160", "80CrV2"])("%s answers from its Ac1, not below", (name) => {
    const steel = findSteel(name);
    const ac1 = Math.ceil(lowerCritical(steel.composition));
    expect(decarbDepth(steel, ac1 + 1, 10)).toBeGreaterThan(0.02);
    expect(grindAllowance(steel, ac1 + 1, 10, 1).skinMm).toBeGreaterThan(decarbDepth(steel, ac1 + 1, 10));
    expect(() => decarbDepth(steel, ac1 - 15, 10)).toThrow("lower critical temperature");
  });
});
