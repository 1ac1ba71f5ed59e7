import { describe, expect, test } from "vitest";
import type { BandTemper } from "../../src/core/blade/band-temper";
import { findUse } from "../../src/core/blade/bands";
import { caution } from "../../src/core/blade/caution";
import { isBandBeyond, isKeptSoft, nextStep, nextStepInShort } from "../../src/core/blade/next-step";
import type { BladeQuestion, BladeStory } from "../../src/core/blade/question";
import { findQuench } from "../../src/core/hardening/quench-media";
import { findSteel } from "../../src/core/steel/find";

/* What a smith is told to do, situation by situation: common practice, no source. Each situation is put together by hand. */

const SWORD = findUse("European sword sharp");
const KNIFE = findUse("Chef knife thin hard");

const QUESTION: BladeQuestion = { steel: findSteel("5160"), use: SWORD, treatment: {} };

const REACH = {
  coolestC: 150,
  hottestC: 600,
  lowest: 35.2,
  lowestError: 3,
  highest: 60.6,
  highestError: 2,
  highestBelowUsual: 61,
};

const BEST: BandTemper = {
  celsius: 420,
  chance: 0.7,
  avoided: undefined,
  flat: undefined,
  withCoupon: undefined,
};

const STORY = {
  hardening: { word: "hardens through", sentence: "" },
  asQuenched: 62,
  reach: REACH,
  temperC: undefined,
  estimate: undefined,
  basis: "",
  taken: "",
  plan: undefined,
  missing: undefined,
  chance: undefined,
  status: "inside",
  best: undefined,
  isForBand: false,
} as unknown as BladeStory;

const read = (low: number, high = low) => ({ reading: { low, high } });
const next = (
  question: Partial<BladeQuestion>,
  story: Partial<BladeStory>,
  cautions: ReturnType<typeof caution>[] = [],
) => nextStep({ ...QUESTION, ...question }, { ...STORY, ...story }, cautions);

describe("a blade that was read", () => {
  test("inside the band: go on", () => {
    for (const status of ["inside", "likely inside"] as const) {
      expect(next(read(52), { status })).toBe("Go on, and read each blade of the lot.");
    }
  });

  test("too hard: temper on, as far as the best temper where one is known", () => {
    expect(next(read(57), { status: "too hard" })).toBe(
      "Temper further before the finish grind, in small steps, and read again.",
    );
    expect(next(read(57), { status: "too hard", best: BEST })).toBe(
      "Temper further before the finish grind, up to 420 °C (788 °F), and read again.",
    );
  });

  test("too soft: nothing but hardening again helps", () => {
    expect(next(read(45), { status: "too soft" })).toBe("Harden again: a temper only softens.");
    // Above 375 °C slow cooling embrittles 5160 (ASM note of the compilation).
    expect(next(read(45), { status: "too soft", best: BEST })).toBe(
      "Harden again, then temper 1 × 2 h at 420 °C (788 °F), cool fast from it: a temper only softens.",
    );
    const low = { ...BEST, celsius: 200 };
    expect(
      next({ ...read(45), treatment: { hours: 1.5, cycles: 2 } }, { status: "too soft", best: low }),
    ).toBe("Harden again, then temper 2 × 1.5 h at 200 °C (392 °F): a temper only softens.");
  });

  test("uncertain: a reading is read again, a wide estimate is tried on a coupon", () => {
    const again = "Read again on a ground spot, three readings at least; in doubt take the softer side.";
    expect(next(read(54), { status: "uncertain" })).toBe(again);
    expect(next(read(53, 55), { status: "uncertain" })).toBe(again);
    const wide = "Test a coupon of this heat: the estimate is wider than the band can hold.";
    expect(next(read(53, 55.1), { status: "uncertain" })).toBe(wide);
    // Three points more are worth a coupon, fewer are not.
    const worth = (withCoupon: number) =>
      next(read(50, 56), { status: "uncertain", chance: 0.5, best: { ...BEST, withCoupon } });
    expect(worth(0.54)).toBe(
      "Test a coupon of this heat: one coupon would raise the chance from 50 % to 54 %.",
    );
    expect(worth(0.52)).toBe(wide);
  });

  test("what is dangerous comes first, what spoils the blade where it is not uncertain", () => {
    const danger = caution("danger", "a", "A.", "Do not.");
    const spoils = caution("spoils the blade", "b", "B.", "Do this first.");
    const note = caution("note", "c", "C.", "Never mind.");
    const silent = caution("danger", "d", "D.");
    expect(next(read(52), { status: "inside" }, [silent, spoils, danger, note])).toBe("Do not.");
    expect(next(read(52), { status: "inside" }, [silent, note, spoils])).toBe("Do this first.");
    expect(next(read(52), { status: "inside" }, [silent, note])).toBe(
      "Go on, and read each blade of the lot.",
    );
    expect(next(read(54), { status: "uncertain" }, [spoils, danger])).toBe("Do not.");
    expect(next(read(54), { status: "uncertain" }, [spoils])).toMatch(/^Read again/);
  });
});

describe("a blade that is planned", () => {
  const PLANNED: Partial<BladeStory> = {
    status: "likely inside",
    temperC: 420,
    estimate: { low: 49.6, likely: 52, high: 54.4 },
    chance: 0.7,
    isForBand: true,
    best: BEST,
  };
  const first = "Temper one, 1 × 2 h at 420 °C (788 °F), cool fast from it, expect 50 to 54 HRC";

  test("one is tempered first, its hardness in whole points", () => {
    expect(next({}, PLANNED)).toBe(`${first}.`);
    expect(next({ use: undefined }, { ...PLANNED, status: "" })).toBe(`${first}.`);
    expect(next({ use: undefined }, { ...PLANNED, status: "", estimate: undefined })).toBe("");
    for (const missing of [{ temperC: undefined }, { estimate: undefined }]) {
      expect(next({}, { ...PLANNED, ...missing })).toBe("Test a coupon of this heat before the run.");
    }
  });

  test("a flat curve, a brittle range left out and a coupon are told of a temper that was chosen here", () => {
    const best = {
      ...BEST,
      flat: [400, 440] as const,
      avoided: { celsius: 330, chance: 0.85 },
      withCoupon: 0.8,
    };
    const told = (more: Partial<BandTemper>) => next({}, { ...PLANNED, best: { ...BEST, ...more } });
    expect(told({ flat: best.flat })).toBe(
      `${first}; any from 400 °C (752 °F) to 440 °C (824 °F) gives it within the error.`,
    );
    expect(told({ avoided: best.avoided })).toBe(
      `${first}; 330 °C (626 °F) would give 85 %, but is brittle.`,
    );
    // Together they would be over 40 words: the weightiest stays.
    expect(told(best)).toBe(told({ flat: best.flat }));
    expect(next({}, { ...PLANNED, best, isForBand: false })).toBe(
      `${first}; one coupon would raise the chance from 70 % to 80 %.`,
    );
  });

  test("a temper that was typed is held against the best one, from three points of chance on", () => {
    const better = (chance: number) =>
      next({ temperC: 420 }, { ...PLANNED, chance, best: { ...BEST, celsius: 440 } });
    expect(better(0.6)).toBe(`${first}; 440 °C (824 °F) would give the band at 70 %, this 60 %.`);
    expect(better(0.68)).toBe(`${first}.`);
    expect(next({ target: 55 }, { ...PLANNED, chance: 0.2 })).toContain(
      "would give the band at 70 %, this 20 %",
    );
    expect(next({}, { ...PLANNED, chance: 0.2 })).toBe(`${first}.`);
  });

  test("soft to stay out of the brittle range is said where it is so", () => {
    const avoided = { celsius: 330, chance: 0.9 };
    const kept = { ...PLANNED, status: "too soft", best: { ...BEST, avoided } } as Partial<BladeStory>;
    const is = (story: Partial<BladeStory>) => isKeptSoft({ ...STORY, ...story });
    expect(next({}, kept)).toContain("expect 50 to 54 HRC, soft to avoid the brittle range; 330 °C");
    expect(is({ ...kept, status: "uncertain" })).toBe(true);
    expect(is({ ...kept, status: "inside" })).toBe(false);
    expect(is({ ...kept, status: "too hard" })).toBe(false);
    expect(is({ ...kept, isForBand: false })).toBe(false);
    expect(is({ ...kept, best: BEST })).toBe(false);
    expect(is({ ...kept, best: undefined })).toBe(false);
    // Harder than what was avoided it is not kept soft by it.
    expect(is({ ...kept, best: { ...BEST, avoided: { celsius: 420, chance: 0.9 } } })).toBe(false);
  });
});

describe("a temper in the brittle range of a struck blade, 230 to 370 °C for 5160 (pmpa.org and the ASM note)", () => {
  const BRITTLE: Partial<BladeStory> = {
    status: "likely inside",
    temperC: 330,
    estimate: { low: 51, likely: 53, high: 55 },
    chance: 0.6,
    best: BEST,
  };

  test("the best temper outside it is put in its place, with what it gives", () => {
    expect(next({ temperC: 330 }, BRITTLE)).toBe(
      "Temper one, 1 × 2 h at 420 °C (788 °F), cool fast from it, for a chance of 70 %: 330 °C (626 °F) lies in the brittle range.",
    );
    expect(next({ temperC: 330 }, { ...BRITTLE, chance: 0.8 })).toBe(
      "Temper one, 1 × 2 h at 420 °C (788 °F), cool fast from it, chance 70 % and tougher; 330 °C (626 °F) has 80 %, but lies in the brittle range.",
    );
  });

  test("a blade that was read is tempered on, or hardened again where the best temper is cooler", () => {
    expect(next({ temperC: 330, ...read(53) }, BRITTLE)).toMatch(/^Temper on, 1 × 2 h at 420 °C/);
    expect(next({ temperC: 330, ...read(53) }, { ...BRITTLE, best: { ...BEST, celsius: 200 } })).toBe(
      "Harden again, then temper 1 × 2 h at 200 °C (392 °F): 330 °C (626 °F) lies in the brittle range.",
    );
  });

  test("where nothing outside it is likely, the choice is left to the smith", () => {
    expect(next({ temperC: 330 }, { ...BRITTLE, best: { ...BEST, chance: 0.3 } })).toBe(
      "Temper one, 1 × 2 h at 330 °C (626 °F), chance 60 % in the brittle range; 420 °C (788 °F) is tougher, but has 30 %.",
    );
  });

  test("a knife that strikes nothing, a temper outside the range and the best one itself are left alone", () => {
    const trial = /^Temper one, 1 × 2 h at 3\d\d °C .* expect 51 to 55 HRC/;
    expect(next({ use: KNIFE, temperC: 330 }, BRITTLE)).toMatch(trial);
    expect(next({ temperC: 330 }, { ...BRITTLE, best: { ...BEST, celsius: 330 } })).toMatch(trial);
    expect(next({ temperC: 330 }, { ...BRITTLE, best: { ...BEST, celsius: 300 } })).toMatch(trial);
    expect(next({ temperC: 330 }, { ...BRITTLE, best: undefined })).toMatch(trial);
    expect(next({ temperC: 390 }, { ...BRITTLE, temperC: 390 })).toMatch(trial);
  });
});

describe("a band that a steel does not reach", () => {
  const out = (question: Partial<BladeQuestion>, reach: Partial<typeof REACH> = {}) =>
    next(question, { status: "out of reach", reach: { ...REACH, ...reach } });
  const tooSoft = "Take a steel with more carbon: no temper of this one is hard enough.";

  test("too soft a steel wants more carbon", () => {
    // Even with its error it gives 49 HRC: the sword wants 50.
    expect(out({}, { highest: 47 })).toBe(tooSoft);
    // Nearly enough with the error, but what is wanted lies over it.
    expect(out({ target: 53 }, { highest: 49.5 })).toBe(tooSoft);
  });

  test("too high a target comes down to what the steel gives, too low a one up", () => {
    expect(out({ target: 65 })).toBe("Aim no higher than 60 HRC, or take a steel with more carbon.");
    expect(out(read(64, 66))).toBe("Aim no higher than 60 HRC, or take a steel with more carbon.");
    expect(out({ target: 30 })).toBe("Aim no lower than 36 HRC.");
    expect(out({}, { lowest: 58 })).toBe(
      "Take a steel that tempers softer: no published temper of this one is soft enough.",
    );
    expect(next({ use: undefined }, { status: "out of reach" })).toBe("Take another steel.");
    expect(next({}, { status: "out of reach", reach: undefined })).toBe("Take another steel.");
  });

  test("the stated error counts at both ends", () => {
    const band = { ...SWORD, low: 50, high: 54 };
    const beyond = (reach: Partial<typeof REACH>) => isBandBeyond(band, { ...REACH, ...reach });
    expect(beyond({})).toBe(false);
    expect(beyond({ highest: 48, highestError: 2 })).toBe(false);
    expect(beyond({ highest: 47.9, highestError: 2 })).toBe(true);
    expect(beyond({ lowest: 57, lowestError: 3 })).toBe(false);
    expect(beyond({ lowest: 57.1, lowestError: 3 })).toBe(true);
  });
});

describe("a blade that does not harden", () => {
  const soft = (question: Partial<BladeQuestion>) => next(question, { status: "does not harden" });

  test("a steel without martensite is changed, a slow bath for oil", () => {
    expect(soft({ steel: findSteel("1018") })).toBe(
      "Take a steel that hardens: quenching does not harden 1018.",
    );
    expect(soft({ steel: findSteel("1095"), quench: findQuench("still air") })).toMatch(
      /^Quench 1095 in fast oil, which hardens about \d\.\d mm\.$/,
    );
    expect(soft({ steel: findSteel("1095"), quench: findQuench("fast oil") })).toMatch(
      /^Quench 1095 in a faster bath/,
    );
    expect(soft({ steel: findSteel("1095"), quench: findQuench("still air"), thickness: 30 })).toBe(
      "Grind thinner before the quench, or take a steel that hardens deeper.",
    );
  });
});

test("what nothing is known of is read or tried", () => {
  const missing = { message: "no curve" } as BladeStory["missing"];
  expect(next({}, { status: "not known" })).toBe(
    "Read the blade, or give its temper: nothing else tells its hardness.",
  );
  expect(next({}, { status: "not known", missing })).toBe(
    "Test a coupon: harden and temper a piece of 5160 and read it.",
  );
});

test.each([
  ["Harden again: a temper only softens.", "Harden again"],
  ["Temper one, 1 × 2 h at 420 °C (788 °F), expect 50 to 54 HRC.", "Temper one, 1 × 2 h at 420 °C (788 °F)"],
  [
    "Temper one, 1 × 2 h at 200 °C (392 °F), for a chance of 70 %: why.",
    "Temper one, 1 × 2 h at 200 °C (392 °F)",
  ],
  ["Go on, and read each blade of the lot.", "Go on, and read each blade of the lot"],
  ["First; then.", "First"],
  ["", ""],
])("in short: %s", (sentence, short) => {
  expect(nextStepInShort(sentence)).toBe(short);
});
