import { describe, expect, test } from "vitest";
import { findUse } from "../../src/core/blade/bands";
import { CANNOT, CRITERIA, inOrder } from "../../src/core/blade/choice-order";
import type { Choice, ChoiceQuestion } from "../../src/core/blade/choice-row";
import { givesUpText, type Told, whyText } from "../../src/core/blade/choice-words";
import { findSteel } from "../../src/core/steel/find";

/* What is said for and against a steel, and which of two stands first: common practice, no source, put together by hand. */

const SWORD = findUse("European sword sharp");
const KNIFE = findUse("Fillet flexible");
const BIT = findUse("Hatchet bit");
const CLAY = findUse("Differential edge Japanese style");

const TRAITS = {
  ratings: undefined,
  rust: "rusts",
  need: "steady kiln",
} as unknown as Told["traits"];

const TOLD: Told = {
  use: { ...SWORD, low: 50, high: 54 },
  suits: "good",
  isNamed: false,
  traits: TRAITS,
  chance: 0.9,
  hardensMm: undefined,
  thickness: 6,
  bath: "fast oil",
  noseS: undefined,
  miss: 0,
  brittle: "",
  harsh: "",
};
const rated = (toughness: number, wear: number, more: object = {}) =>
  ({ ...TRAITS, ratings: { toughness, wear }, ...more }) as Told["traits"];

const why = (more: Partial<Told> = {}) => whyText({ ...TOLD, ...more });
const lacks = (more: Partial<Told> = {}) => givesUpText({ ...TOLD, ...more });

describe("what speaks for a steel", () => {
  test("its name or its kind, and the band", () => {
    expect(why()).toBe("Its kind suits this use; band 50 to 54 HRC.");
    expect(why({ suits: "best" })).toBe("Its kind suits this use best; band 50 to 54 HRC.");
    expect(why({ suits: "fair" })).toBe("Its kind serves, others suit better; band 50 to 54 HRC.");
    expect(why({ suits: "caution" })).toBe("Its kind is not usual for this use; band 50 to 54 HRC.");
    expect(why({ isNamed: true })).toBe("Usually named for this use; band 50 to 54 HRC.");
  });

  test("toughness where it is struck, wear and brightness where it is not", () => {
    expect(why({ traits: rated(6, 9, { rust: "stainless" }) })).toBe(
      "Its kind suits this use; band 50 to 54 HRC; tough.",
    );
    expect(why({ traits: rated(5.9, 9) })).not.toContain("tough");
    const knife = (traits: Told["traits"]) => why({ use: KNIFE, traits });
    expect(knife(rated(9, 5))).toBe("Its kind suits this use; band 54 to 58 HRC; holds its edge.");
    expect(knife(rated(9, 4.9))).toBe("Its kind suits this use; band 54 to 58 HRC.");
    for (const rust of ["stainless", "slow to rust"])
      expect(knife(rated(5, 4, { rust }))).toMatch(`${rust}.`);
    expect(why({ traits: rated(5, 9, { rust: "stainless" }) })).not.toContain("stainless");
  });

  test("how deep it hardens, in two places, and that a forge will do; five reasons at most", () => {
    expect(why({ hardensMm: 12.34 })).toContain("hardens about 12 mm in fast oil");
    const forge = { ...TRAITS, need: "forge or kiln" } as Told["traits"];
    expect(why({ traits: forge })).toBe("Its kind suits this use; band 50 to 54 HRC; a forge will do.");
    const all = why({
      use: KNIFE,
      hardensMm: 3.456,
      traits: rated(5, 5, { rust: "stainless", need: "forge or kiln" }),
    });
    expect(all).toBe(
      "Its kind suits this use; band 54 to 58 HRC; holds its edge; stainless; hardens about 3.5 mm in fast oil.",
    );
  });
});

describe("what is given up with a steel", () => {
  const quiet = { traits: rated(5, 4, { rust: "stainless" }) };
  const said = (more: Partial<Told>) => lacks({ ...quiet, ...more });

  test("nothing where there is nothing", () => {
    expect(said({ hardensMm: 9, traits: rated(5, 4, { rust: "stainless", need: "forge or kiln" }) })).toBe(
      "",
    );
  });

  test("the margin in the quench: half as much again is clear, as much is little, less is not through", () => {
    expect(said({ hardensMm: 9 })).toBe("Wants a steady kiln.");
    expect(said({ hardensMm: 8.9 })).toBe(
      "Little margin in the quench: 8.9 mm for 6 mm; wants a steady kiln.",
    );
    expect(said({ hardensMm: 6 })).toBe("Little margin in the quench: 6 mm for 6 mm; wants a steady kiln.");
    expect(said({ hardensMm: 5.9 })).toBe("Not hard through at 6 mm: to about 5.9 mm; wants a steady kiln.");
    expect(said({ hardensMm: 5.9, thickness: undefined })).toBe("Wants a steady kiln.");
  });

  test("of an edge or a bit only what is too thick to get hard", () => {
    const bit = { use: BIT, thickness: 20 };
    expect(said({ ...bit, hardensMm: 20 })).toBe("Wants a steady kiln.");
    expect(said({ ...bit, hardensMm: 4 })).toBe(
      "Hard only where the bit is under about 4 mm thick; wants a steady kiln.",
    );
    expect(said({ ...bit, use: findUse("Heavy chopper golok kukri"), hardensMm: 2 })).toBe(
      "Hard only where it is under about 2 mm thick; wants a steady kiln.",
    );
    expect(said({ ...bit, hardensMm: 1.9 })).toBe("Shallow even for an edge: 1.9 mm; wants a steady kiln.");
  });

  test("under clay a steel may be too deep, not too shallow", () => {
    expect(said({ use: CLAY, hardensMm: 5.9 })).toBe("Wants a steady kiln.");
    expect(said({ use: CLAY, hardensMm: 6 })).toMatch(
      /^Hardens deeper than the blade is thick: the clay has to do it all/,
    );
  });

  test("haste under a second, in one place", () => {
    expect(said({ noseS: 0.64 })).toBe("Cool fast: 0.6 s to pass the nose; wants a steady kiln.");
    expect(said({ noseS: 1 })).toBe("Wants a steady kiln.");
  });

  test("toughness and wear that are little", () => {
    expect(said({ traits: rated(4, 4, { rust: "stainless" }) })).toBe("Chips sooner; wants a steady kiln.");
    expect(said({ traits: rated(4.1, 1, { rust: "stainless" }) })).toBe("Wants a steady kiln.");
    const knife = (toughness: number, wear: number, use = KNIFE) =>
      said({ use, traits: rated(toughness, wear, { rust: "stainless" }) });
    expect(knife(4, 3)).toBe("Wants a steady kiln; little toughness; the edge wears sooner.");
    expect(knife(5, 3.1)).toBe("Wants a steady kiln.");
    expect(knife(5, 3, { ...KNIFE, angleLow: null })).toBe("Wants a steady kiln.");
  });

  test("a miss of the band, the brittle range, else a chance under 60 %", () => {
    expect(said({ miss: 2 })).toBe("2 HRC above the band; wants a steady kiln.");
    expect(said({ miss: -3, chance: 0.1 })).toBe("3 HRC below the band; wants a steady kiln.");
    expect(said({ brittle: "within its range", chance: 0.1 })).toBe("Within its range; wants a steady kiln.");
    expect(said({ chance: 0.59 })).toBe("Only 59 % sure of the band; wants a steady kiln.");
    expect(said({ chance: 0.6 })).toBe("Wants a steady kiln.");
    expect(said({ chance: undefined })).toBe("Wants a steady kiln.");
  });

  test("what it needs and that it rusts; the bath first", () => {
    const needs = (need: string) =>
      lacks({ harsh: "not in water", traits: { ...TRAITS, need } as Told["traits"] });
    expect(needs("outside heat treater")).toBe("Not in water; wants an outside heat treater; rusts.");
    expect(needs("kiln above 900 °C (1652 °F)")).toBe(
      "Not in water; wants a kiln above 900 °C (1652 °F); rusts.",
    );
    expect(needs("forge or kiln")).toBe("Not in water; rusts.");
    expect(lacks({ use: KNIFE })).toBe("Wants a steady kiln; rusts.");
  });
});

describe("which of two steels stands first", () => {
  const CHOICE: Choice = {
    steel: findSteel("5160"),
    names: ["5160"],
    status: "likely inside",
    barred: 0,
    temperC: 400,
    likely: 52,
    chance: 0.7,
    hardensMm: 12,
    traits: TRAITS as Choice["traits"],
    price: 5,
    suits: "good",
    isNamed: false,
    isSold: true,
    why: "",
    givesUp: "",
  };
  const firstOf = (
    better: Partial<Choice>,
    worse: Partial<Choice>,
    question: Partial<ChoiceQuestion> = {},
  ) => {
    const [good, bad] = [
      { ...CHOICE, ...better },
      { ...CHOICE, ...worse },
    ];
    const asked = { use: SWORD, thickness: 6, ...question };
    const both = [inOrder([good, bad], asked), inOrder([bad, good], asked)];
    return both.every(([first]) => first === good);
  };
  const need = (word: string) => ({ traits: { ...TRAITS, need: word } as Choice["traits"] });

  // Each pair is against the next criterion, so that the order of the two decides.
  test.each<[string, Partial<Choice>, Partial<Choice>, Partial<ChoiceQuestion>]>([
    ["what can be", { suits: "caution" }, { barred: 1 }, {}],
    ["what is easily mended", { barred: 1 }, { barred: 2 }, {}],
    ["one that serves", { suits: "fair", status: "too soft", likely: 40 }, { suits: "caution" }, {}],
    [
      "a near miss",
      { status: "too soft", likely: 48, isSold: false },
      { status: "too soft", likely: 47 },
      {},
    ],
    [
      "a known miss",
      { status: "too soft", likely: 48, isSold: false },
      { status: "too soft", likely: undefined },
      {},
    ],
    ["what is sold", { suits: "fair" }, { isSold: false, suits: "best" }, {}],
    ["all of a list is to be had", { suits: "best", isSold: false }, { suits: "good" }, { isOffered: true }],
    [
      "a forge without a kiln",
      { ...need("forge or kiln"), suits: "fair" },
      need("steady kiln"),
      { kiln: false },
    ],
    [
      "the better kind with a kiln",
      need("steady kiln"),
      { ...need("forge or kiln"), suits: "fair" },
      { kiln: true },
    ],
    ["the better kind", { suits: "best", status: "uncertain" }, { status: "inside" }, {}],
    ["a shallow body under clay", { hardensMm: 5.9, status: "uncertain" }, { hardensMm: 6 }, { use: CLAY }],
    ["no body without clay", { hardensMm: 9.1, isNamed: false }, { hardensMm: 5.9, isNamed: true }, {}],
    ["the likelier", { status: "inside", hardensMm: 1 }, {}, {}],
    ["the likely before the uncertain", { hardensMm: 1 }, { status: "uncertain" }, {}],
    ["margin", { hardensMm: 9 }, { hardensMm: 8.9, isNamed: true }, {}],
    ["just enough", { hardensMm: 6 }, { hardensMm: 5.9, isNamed: true }, {}],
    [
      "a known depth counts no more than too little",
      { hardensMm: 5, isNamed: true },
      { hardensMm: undefined },
      {},
    ],
    ["a depth before none", { hardensMm: 6 }, { hardensMm: undefined, isNamed: true }, {}],
    [
      "without a thickness no margin",
      { hardensMm: 1, isNamed: true },
      { hardensMm: 90 },
      { thickness: undefined },
    ],
    ["the named", { isNamed: true, ...need("outside heat treater") }, {}, {}],
    ["what needs less", { ...need("forge or kiln"), price: 9 }, need("steady kiln"), {}],
    ["the cheaper", { price: 4 }, { price: 5 }, {}],
    ["a price before none", { price: 400 }, { price: undefined }, {}],
    ["the oftener named", { steel: findSteel("5160"), chance: 0.6 }, { steel: findSteel("SUP13") }, {}],
    ["the higher chance", { chance: 0.71 }, { chance: 0.7 }, {}],
    ["a chance before none", { chance: 0.1 }, { chance: undefined }, {}],
  ])("%s", (_name, better, worse, question) => {
    expect(firstOf(better, worse, question)).toBe(true);
  });

  test("what nothing tells apart stays as it stood", () => {
    const twins = [1, 2, 3].map((at) => ({ ...CHOICE, names: [`${at}`] }));
    expect(inOrder(twins, { use: SWORD }).map(({ names: [name] }) => name)).toEqual(["1", "2", "3"]);
    expect(inOrder([], { use: SWORD })).toEqual([]);
  });

  test("what bars a steel is told by three words, and every criterion is told", () => {
    expect(CANNOT).toEqual(["ruled out", "does not harden", "out of reach"]);
    for (const { told } of CRITERIA) expect(told.length).toBeGreaterThan(4);
  });
});
