import { beforeAll, describe, expect, it } from "vitest";
import { bandFor } from "../../src/core/blade/band-by-steel";
import { usualReach } from "../../src/core/blade/band-candidates";
import { findUse, USES, type Use } from "../../src/core/blade/bands";
import { type Choice, type ChoiceQuestion, steelsFor } from "../../src/core/blade/choice";
import { CHOICE_ORDER, CRITERIA } from "../../src/core/blade/choice-order";
import { isNamedFor, namedItems } from "../../src/core/blade/named-steels";
import { findQuench } from "../../src/core/hardening/quench-media";
import { findSteel } from "../../src/core/steel/find";
import type { Steel } from "../../src/core/steel/steel";
import { SHOP_NEEDS } from "../../src/core/steel/traits";
import { isNearBrittle } from "../../src/core/tempering/embrittlement";
import { temperedHardness } from "../../src/core/tempering/tempered";
import sold from "../../src/data/blade/sold-widely.json";
import { STEELS_FOR } from "../../src/functions/blade";
import { answer } from "../steel/answer";

const ask = (use: string, rest: Omit<ChoiceQuestion, "use"> = {}) =>
  steelsFor({ use: findUse(use), ...rest });
const firstNames = (choices: readonly Choice[], count = 5) =>
  choices.slice(0, count).map(({ names }) => names[0]);
const placeOf = (choices: readonly Choice[], name: string) =>
  choices.findIndex(({ names }) => names.includes(findSteel(name).name));
const choiceOf = (choices: readonly Choice[], name: string) => choices[placeOf(choices, name)] as Choice;

/** Items of the trade's list for a use that have no steel in the first half of what is put forward. */
function missing(use: Use, choices: readonly Choice[]): string[] {
  const half = choices.slice(0, Math.ceil(choices.length / 2));
  return namedItems(use).filter(
    (item) => !half.some(({ steel }) => isNamedFor({ ...use, steels: item }, steel)),
  );
}

describe("steels that the trade names for each use come in the first half of the list", () => {
  // "Steels that suit" of the compilation of uses (common practice and the sources of each row).
  const misses = (given: (use: Use) => Use) =>
    USES.flatMap((use) => {
      const lacking = missing(use, steelsFor({ use: given(use) }));
      return lacking.length === 0 ? [] : [`${use.word}: ${lacking.join(", ")}`];
    });

  it("for every use", () => {
    expect(misses((use) => use)).toEqual([]);
  });

  it("for 36 of 37 where the order may not look at those names, but at what is sold widely", () => {
    expect(misses((use) => ({ ...use, steels: "" }))).toEqual(["Throwing knife: 420"]);
  });

  it("for 32 of 37 and more where it may look at neither", () => {
    const blind = USES.flatMap((use) => {
      const nameless = { ...use, steels: "" };
      // Of a list that is given all can be had.
      const offered = steelsFor({ use: nameless }).map(({ steel }) => ({ steel }));
      const lacking = missing(use, steelsFor({ use: nameless }, offered));
      return lacking.length === 0 ? [] : [`${use.word}: ${lacking.join(", ")}`];
    });
    console.info(`looking at neither: ${blind.join("; ")}`);
    expect(blind.length).toBeLessThanOrEqual(5);
  });
});

describe("questions as a smith would put them (common practice, no source)", () => {
  const fastOil = findQuench("fast oil");

  it("a sword to be abused, fast oil", () => {
    const found = ask("Heavy cutting sword", { thickness: 6, length: 800, quench: fastOil });
    expect(firstNames(found, 1)).toEqual(["5160"]);
    expect(choiceOf(found, "51CrV4").status).toBe("uncertain");
    // Short of the band outside its brittle range: likelier steels that can be bought stand before it.
    const short = found.findIndex(({ status }) => status === "too soft");
    // What is hardly to be bought stands behind what every dealer has.
    expect(firstNames(found, 5)).not.toContain("SUP13");
    expect(short).toBeGreaterThan(placeOf(found, "51CrV4"));
    for (const barred of ["D2", "440C", "X50CrMoV15", "O1", "52100", "1095", "304", "M42"]) {
      expect(["ruled out", "does not harden"], barred).toContain(choiceOf(found, barred).status);
    }
    // 6 mm of plain steel is marginal in fast oil at best.
    expect(choiceOf(found, "1060").givesUp).toMatch(/^Not hard through at 6 mm: to about 4.3 mm/);
    // Outside the brittle range 1060 gives 58 or 47 HRC: of the two the softer, which bends and does not break.
    expect(choiceOf(found, "1060")).toMatchObject({ status: "too soft", temperC: 376 });
    expect(choiceOf(found, "9260")).toMatchObject({ status: "too soft", temperC: 456 });
    // It hardens in air, which every shop has.
    expect(choiceOf(found, "S7").why).toContain("hardens about 64 mm in still air");
    expect(choiceOf(found, "S7").givesUp).toMatch(
      /^Not in fast oil, which may crack it: cool it in still air/,
    );
    expect(choiceOf(found, "C70U").why).toMatch(/does not harden through/);
  });

  it("a stainless fillet knife", () => {
    const found = ask("Fillet", { thickness: 2, stainless: true });
    expect(found.slice(0, 10).every(({ traits }) => traits.rust === "stainless")).toBe(true);
    expect(firstNames(found, 7)).toContain("X50CrMoV15");
    expect(choiceOf(found, "304").status).toBe("does not harden");
    expect(choiceOf(found, "52100").why).toMatch(/clad/);
    // Of the class that is named, this one comes out too hard: it is not a steel usually named for fillet knives.
    expect(choiceOf(found, "X65Cr13")).toMatchObject({ status: "too hard", isNamed: false });
    for (const likelier of ["X55CrMo14", "X46Cr13", "X50CrMoV15", "X90CrMoV18"])
      expect(placeOf(found, "X65Cr13"), likelier).toBeGreaterThan(placeOf(found, likelier));
    // Coarse carbide in a thin flexible edge.
    expect(placeOf(found, "440C")).toBeGreaterThan(placeOf(found, "X50CrMoV15"));
  });

  it("a camp chopper, fast oil", () => {
    const found = ask("Large camp chopper", { thickness: 5, quench: fastOil });
    // Outside its brittle range 5160 gives 59 or 51 HRC: of a short blade the smaller miss, and it says so.
    const spring = choiceOf(found, "5160");
    expect(spring).toMatchObject({ status: "too hard", temperC: 224, isNamed: true });
    expect(spring.givesUp).toMatch(/^2 HRC above the band; 230 °C .* to 370 °C .* is avoided as brittle/);
    expect(placeOf(found, "5160")).toBeLessThan(5);
    expect(choiceOf(found, "9260").temperC).toBe(306);
  });

  it("a thin kitchen knife without a kiln", () => {
    const found = ask("Chef knife thin", { thickness: 2.5, quench: fastOil, kiln: false });
    expect(found.slice(0, 8).every(({ traits }) => traits.need === "forge or kiln")).toBe(true);
    expect(firstNames(found, 5)).toEqual(["1080", "1084", "1095", "80CrV2", "75Ni8"]);
    expect(placeOf(found, "52100")).toBeGreaterThan(placeOf(found, "1084"));
    for (const barred of ["X65Cr13", "440C", "D2", "A2", "M42"]) {
      expect(choiceOf(found, barred).why, barred).toMatch(/wants more than a forge/);
    }
  });

  it("a machete of 3 mm in a shop without water", () => {
    const found = ask("Machete light", { thickness: 3, length: 450, quench: findQuench("medium oil") });
    expect(firstNames(found, 1)).toEqual(["5160"]);
    expect(found[0]?.why).toContain("14 mm in medium oil (figure of slow oil)");
    expect(choiceOf(found, "65Mn").givesUp).toMatch(/^Little margin in the quench: 3.3 mm for 3 mm/);
    // Shallow steel is marginal at 3 mm in such oil, and stainless breaks.
    expect(placeOf(found, "1075")).toBeGreaterThan(placeOf(found, "5160"));
    expect(choiceOf(found, "420").status).toBe("ruled out");
  });

  it("a differentially hardened sword", () => {
    const found = ask("Differential", { thickness: 6.5, length: 720, quench: findQuench("agitated water") });
    for (const choice of found.slice(0, 8))
      expect(choice.traits.kind).toMatch(/plain high carbon|medium carbon/);
    // What hardens shallower than the blade is thick stands before what only the clay keeps soft.
    expect(firstNames(found, 4)).toEqual(["1095", "W1-9.5", "W2", "1075"]);
    expect(choiceOf(found, "1095").givesUp).toContain("cool fast: 0.4 s to pass the nose");
    expect(choiceOf(found, "5160").status).toBe("ruled out");
    // Manganese hardens the body as well.
    expect(placeOf(found, "1084")).toBeGreaterThan(placeOf(found, "W1-9.5"));
  });

  it("a felling axe", () => {
    const found = ask("Felling axe", { thickness: 20, quench: fastOil });
    expect(firstNames(found, 2)).toEqual(["1055", "1065"]);
    expect(choiceOf(found, "D2").status).toBe("ruled out");
    // A bit need not harden through.
    expect(found[0]?.givesUp).toMatch(/^Hard only where the bit is under about 4 mm thick/);
  });
});

/** What the tempers of a steel give that lie outside its brittle ranges, HRC. */
function blandHardnesses(steel: Steel): number[] {
  const { coolestC, hottestC } = usualReach(steel, { hours: 2, cycles: 1 });
  return Array.from({ length: Math.floor(hottestC - coolestC) + 1 }, (_, i) => coolestC + i)
    .filter((celsius) => !isNearBrittle(steel, celsius))
    .map((celsius) => temperedHardness(steel, celsius, { hours: 2, cycles: 1 }));
}

describe("struck blades outside their brittle range", () => {
  const struck = USES.filter(({ service }) => service === "impact");

  it.each(struck.map((use) => [use.word, use] as const))(
    "%s: none harder than its band where a softer temper is bland, but a short one by 2 HRC where all softer miss it by more",
    (_, use) => {
      const hard = steelsFor({ use }).filter(
        ({ status, temperC }) => temperC !== undefined && status === "too hard",
      );
      for (const { steel, likely = Number.NaN } of hard) {
        const softer = blandHardnesses(steel).filter((hrc) => hrc < use.high + 0.5);
        const above = Math.round(likely) - use.high;
        if (softer.length > 0) expect(above, steel.name).toBeLessThanOrEqual(use.group === "sword" ? 0 : 2);
        expect(use.low - Math.max(...softer), steel.name).toBeGreaterThan(above - 0.5);
      }
    },
  );
});

describe("the list", () => {
  let sword: readonly Choice[];
  beforeAll(() => {
    sword = ask("European sword sharp", { thickness: 5, length: 800, quench: findQuench("fast oil") });
  });

  it("holds each steel once, twins in one row", () => {
    const names = sword.flatMap((choice) => choice.names);
    expect(new Set(names).size).toBe(names.length);
    expect(choiceOf(sword, "5160").names).toEqual(expect.arrayContaining(["SUP9A", "51B60"]));
    expect(choiceOf(sword, "6150").names).toContain("51CrV4");
    // Of higher manganese by their standards, GB/T 699 and SAE J403: not twins of the ordinary steel of that carbon.
    expect(choiceOf(sword, "60Mn").names).not.toContain("1060");
    expect(choiceOf(sword, "60Mn").names).toContain("1561");
    expect(choiceOf(sword, "65Mn").names).toContain("1566");
  });

  it("puts what cannot be last, each with its reason", () => {
    const barred = sword.map(({ status }) =>
      ["ruled out", "does not harden", "out of reach"].includes(status),
    );
    expect(barred.indexOf(true)).toBeGreaterThan(0);
    expect(barred.slice(barred.indexOf(true)).every(Boolean)).toBe(true);
    for (const { why, names } of sword) {
      expect(why, names[0]).toMatch(/^\S.*\.$/);
      expect(why.split(" ").length, why).toBeLessThanOrEqual(40);
    }
  });

  it("puts the cheaper of equals first, and the cheaper twin's name", () => {
    const use = findUse("Practice longsword blunt");
    const offers = (first: number, second: number) =>
      steelsFor({ use }, [
        { steel: findSteel("5160"), price: first },
        { steel: findSteel("6150"), price: second },
        { steel: findSteel("SUP9A"), price: 3 },
      ]);
    expect(offers(9, 4).map(({ names, price }) => [names.join(", "), price])).toEqual([
      ["SUP9A, 5160", 3],
      ["6150", 4],
    ]);
    expect(offers(9, 2)[0]?.names).toEqual(["6150"]);
  });
});

/** The declared list: common practice, no source. */
const SOLD = new Set(sold.rows.flat());

const isBarred = ({ status }: Choice) => ["ruled out", "does not harden", "out of reach"].includes(status);

/** Steps of the margin in the quench: 1.5 times what has to be hard, just enough, less; of an edge 2 mm. */
function margin({ hardensMm = -1 }: Choice, { use, thickness }: ChoiceQuestion): number {
  if (thickness === undefined) return 0;
  const wanted = use.part === "whole" ? thickness : Math.min(thickness, 2);
  return [1.5, 1].filter((times) => hardensMm < times * wanted).length;
}

/** Whether a hardness in whole points misses the band of the use for this steel by 2 HRC at most. */
function isNear({ steel, likely = Number.NaN }: Choice, { use }: ChoiceQuestion): boolean {
  const { low, high } = bandFor(use, steel);
  return Math.round(likely) >= low - 2 && Math.round(likely) <= high + 2;
}

/** What the help says that steels are compared by, read off a row and the question once more. */
function compared(choice: Choice, question: ChoiceQuestion): number[] {
  const barred = isBarred(choice);
  const need = SHOP_NEEDS.indexOf(choice.traits.need);
  const chance = ["inside", "likely inside", "uncertain"].indexOf(choice.status);
  const suits = ["best", "good", "fair", "caution", "no"].indexOf(choice.suits);
  return [
    barred ? choice.barred : 0,
    suits > 2 ? 1 : 0,
    chance < 0 && !isNear(choice, question) ? 1 : 0,
    choice.names.some((name) => SOLD.has(name)) ? 0 : 1,
    question.kiln === false && !barred ? need : 0,
    suits,
    chance < 0 ? 3 : chance,
    margin(choice, question),
    choice.isNamed ? 0 : 1,
    need,
  ];
}

describe("steels that are sold widely", () => {
  it("are grades of the library under the name that they are listed by", () => {
    for (const name of SOLD) expect(findSteel(name).name).toBe(name);
  });

  it("do not count where a list is given: all of that can be had", () => {
    const given = ["58CrV4", "80CrV2"].map((name) => ({ steel: findSteel(name) }));
    const question = { use: findUse("Heavy cutting sword"), thickness: 6, quench: findQuench("fast oil") };
    expect(firstNames(steelsFor(question, given), 2)).toEqual(["58CrV4", "80CrV2"]);
    const all = steelsFor(question);
    expect(placeOf(all, "80CrV2")).toBeLessThan(placeOf(all, "58CrV4"));
  });
});

describe("the order is that of the help, row by row", () => {
  const ordered = (one: number[], other: number[]) => {
    const at = one.findIndex((step, i) => step !== other[i]);
    return at < 0 || (one[at] as number) < (other[at] as number);
  };
  // Clay turns the margin round, which the words of the help leave to the row: those uses are left out here.
  const questions = USES.filter(({ part, group }) => !(group === "sword" && part === "edge")).map(
    (use, at): ChoiceQuestion => ({
      use,
      thickness: [undefined, 2.5, 6][at % 3],
      quench: at % 2 === 0 ? findQuench("fast oil") : undefined,
      kiln: at % 4 === 0 ? false : undefined,
    }),
  );

  it.each(questions.map((question) => [question.use.word, question] as const))("%s", (_, question) => {
    const rows = steelsFor(question);
    rows.slice(1).forEach((row, at) => {
      const before = rows[at] as Choice;
      const holds = ordered(compared(before, question), compared(row, question));
      expect(holds, `${before.names[0]} before ${row.names[0]}`).toBe(true);
    });
  });

  it("the help names the criteria in their order", () => {
    const places = [
      "usual",
      "band",
      "sold widely",
      "suitability",
      "chance outside the brittle range",
      "margin in the quench",
      "named",
      "ease",
      "price",
    ].map((word) => STEELS_FOR.summary.indexOf(word));
    expect(places.every((place, at) => place > (places[at - 1] ?? 0))).toBe(true);
    for (const { told } of CRITERIA) expect(CHOICE_ORDER.locator).toContain(told);
  });
});

describe("STEELS_FOR", () => {
  it("takes several steels from one cell", () => {
    const rows = answer(STEELS_FOR, "European sword sharp", 5, "fast oil", 800, null, "6150, 5160; Nonesuch");
    expect(rows.map(([steel]) => steel)).toEqual(["5160", "6150", ""]);
  });

  it("says in its first row what to do where nothing can be", () => {
    const rows = answer(STEELS_FOR, "Fillet", 2, null, null, "yes", null, null, null, "no");
    expect(rows[0]?.slice(0, 2)).toEqual(["", "ruled out"]);
    expect(rows[0]?.[11]).toMatch(
      /^Without a kiln above 900 °C .* send the blades out, or clad a plain edge/,
    );
    for (const row of rows.slice(1)) expect(row[8]).toBe("stainless");
  });

  it("tells the quench that is taken where none is given, and the band", () => {
    const [row] = answer(STEELS_FOR, "Fillet", 2, null, null, "yes");
    expect(row?.[11]).toContain("in still air, its usual quench");
    expect(row?.[11]).toContain("band 54 to 58 HRC");
  });

  it("leads a row of twins by the name that the trade uses", () => {
    const names = steelsFor({ use: findUse("Felling axe") }).map((choice) => choice.names);
    for (const name of ["1060", "1075", "1084", "1095", "5160", "52100"])
      expect(
        names.some(([first]) => first === name),
        name,
      ).toBe(true);
    expect(names.find(([first]) => first === "1065")).not.toContain("1566");
  });

  it("shows 8 rows, or as many as asked", () => {
    expect(answer(STEELS_FOR, "Wood carving")).toHaveLength(8);
    expect(answer(STEELS_FOR, "Wood carving", null, null, null, null, null, null, 3)).toHaveLength(3);
  });

  it("gives an unknown name its own row and loses nothing else", () => {
    const rows = answer(STEELS_FOR, "Wood carving", null, null, null, null, [
      ["O1"],
      ["Nonesuch"],
      [null],
      ["1095"],
    ]);
    // The trade names both; a forge hardens 1095, and O1 wants a steady kiln.
    expect(rows.map(([steel]) => steel)).toEqual(["1095", "O1", ""]);
    expect(rows[2]?.[11]).toMatch(/"Nonesuch" is not in the grade table/);
  });

  it("refuses prices without steels, a word that is neither yes nor no, and columns of unequal length", () => {
    const said = (...given: unknown[]) =>
      String(answer(STEELS_FOR, ...given)[0]?.find((cell) => cell !== ""));
    expect(said("Wood carving", null, null, null, null, null, [[3]])).toMatch(/prices given without steels/);
    expect(said("Wood carving", null, null, null, "maybe")).toMatch(/give yes, no or either/);
    expect(said("Wood carving", null, null, null, null, [["O1"], ["1095"], ["A2"]], [[3], [4]])).toMatch(
      /price kg: 2 cells/,
    );
  });
});
