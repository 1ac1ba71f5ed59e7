import { describe, expect, test } from "vitest";
import { lowerCritical } from "../../src/core/hardening/critical";
import { decarbDepth, grindAllowance } from "../../src/core/hardening/decarb";
import { maxSection } from "../../src/core/hardening/max-section";
import { findQuench } from "../../src/core/hardening/quench-media";
import { quenchSection, type SectionBand, type SectionInputs } from "../../src/core/hardening/section-quench";
import { hardenedMm } from "../../src/core/hardening/section-report";
import { sectionVerdict } from "../../src/core/hardening/section-verdict";
import { sectionWord } from "../../src/core/hardening/section-word";
import { attempt, Refusal } from "../../src/core/refusal";
import { findSteel } from "../../src/core/steel/find";
import { COMMON_STEELS } from "../steel/common-steels";
import { randomFrom } from "../stock/brute-force";
import { sectionOf } from "./sections";

const BATHS = ["fast oil", "agitated water"] as const;
const LIQUIDS = ["fast oil", "oil A", "slow oil", "agitated water", "brine"];

function plate(steel: string, bath: string, thicknessMm: number) {
  const inputs = sectionOf(steel, thicknessMm, {
    edgeMm: thicknessMm,
    clayLineMm: 20,
    quench: findQuench(bath),
  });
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

describe("the word for a section and its hardened depth", () => {
  const CLAYS = [0, 0, 0, 0.0008, 0.0016];

  /** Sections of any shape and steel, most of them as MAX_SECTION takes them. */
  const drawn = (count: number) => {
    const random = randomFrom(21);
    const between = (low: number, high: number) => low + random() * (high - low);
    return Array.from({ length: count }, (): SectionInputs => {
      const spineMm = between(1.5, 10);
      const clay = CLAYS[Math.floor(random() * CLAYS.length)] as number;
      return {
        steel: findSteel(COMMON_STEELS[Math.floor(random() * COMMON_STEELS.length)] as string),
        quench: findQuench(LIQUIDS[Math.floor(random() * LIQUIDS.length)] as string),
        widthMm: between(Math.max(8, spineMm / 2), 60),
        spineMm,
        edgeMm: between(0.3, spineMm),
        clay,
        clayLineMm: between(3, 20),
        below: clay / 8,
        transferS: random() < 0.2 ? between(0, 3) : 0,
        bathFactor: random() < 0.2 ? between(0.5, 2) : 1,
        startC: undefined,
      };
    });
  };

  /** The word and the depth of a section, and the depth within its band. */
  function expectOneAnswer(inputs: SectionInputs, band: SectionBand, word: string): void {
    const { widthMm, spineMm, edgeMm, quench, steel, clay } = inputs;
    const depth = hardenedMm(inputs, band);
    const what = `${steel.name} ${quench.word} ${widthMm} ${spineMm} ${edgeMm} ${clay}: ${word}, ${depth}`;
    if (word !== "marginal") expect(depth < widthMm, what).toBe(word.startsWith("does not harden"));
    expect(depth, what).toBeGreaterThanOrEqual(Math.min(band.soft.depthMm, band.likely.depthMm) - 1e-9);
    expect(depth, what).toBeLessThanOrEqual(band.hard.depthMm + 1e-9);
  }

  // No source is needed: what is hard from the edge to the spine hardens through, and what does not is not. What is
  // marginal may come out either way: the plate and the section are each good to a factor of 1.5.
  test("a section hard to the spine is never called one that does not harden through, nor the other way round", () => {
    const met = new Map<string, number>();
    for (const inputs of drawn(900)) {
      const band = attempt(() => quenchSection(inputs));
      if (band instanceof Refusal) continue;
      const word = sectionWord(inputs, band);
      met.set(word, (met.get(word) ?? 0) + 1);
      expectOneAnswer(inputs, band, word);
    }
    for (const word of ["hardens through", "marginal", "does not harden through"])
      expect(met.get(word), word).toBeGreaterThan(20);
  });

  test("no thicker spine is hardened deeper", () => {
    for (const [name, bath, widthMm] of [
      ["1095", "fast oil", 40.5],
      ["GOST 65", "oil A", 28.5],
      ["C70U", "brine", 37],
    ] as const) {
      const depths = Array.from({ length: 24 }, (_, at) => {
        const inputs = sectionOf(name, 3 + at / 2, { widthMm, edgeMm: 1.2, quench: findQuench(bath) });
        return hardenedMm(inputs, quenchSection(inputs));
      });
      expect(depths[0]).toBe(widthMm);
      expect(depths.at(-1)).toBeLessThan(0.9 * widthMm);
      for (const [at, depth] of depths.entries())
        expect(depth, `${name}, ${at}`).toBeLessThanOrEqual((depths[at - 1] ?? widthMm) + 0.5);
    }
  });
});
