import { beforeAll, describe, expect, it } from "vitest";
import { findUse, USES, type Use } from "../../src/core/blade/bands";
import { type Choice, type ChoiceQuestion, steelsFor } from "../../src/core/blade/choice";
import { isNamedFor, namedItems } from "../../src/core/blade/named-steels";
import { findQuench } from "../../src/core/hardening/quench-media";
import { findSteel } from "../../src/core/steel/find";
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

  it("for 33 of 37 where the order may not look at those names", () => {
    const blind = misses((use) => ({ ...use, steels: "" }));
    expect(blind).toEqual([
      "Field camp bushcraft: 5160",
      "Military utility: 5160",
      "Throwing knife: 420",
      "Broadhead or skiver: 1075",
    ]);
  });
});

describe("questions as a smith would put them (common practice, no source)", () => {
  const fastOil = findQuench("fast oil");

  it("a sword to be abused, fast oil", () => {
    const found = ask("Heavy cutting sword", { thickness: 6, length: 800, quench: fastOil });
    expect(firstNames(found, 2)).toEqual(["5160", "6150"]);
    for (const barred of ["D2", "440C", "X50CrMoV15", "O1", "52100", "1095", "304", "M42"]) {
      expect(["ruled out", "does not harden"], barred).toContain(choiceOf(found, barred).status);
    }
    // 6 mm of plain steel is marginal in fast oil at best.
    expect(choiceOf(found, "1060").givesUp).toMatch(/^Little margin in the quench: 3.6 mm for 6 mm/);
    expect(choiceOf(found, "C70U").why).toMatch(/does not harden through/);
  });

  it("a stainless fillet knife", () => {
    const found = ask("Fillet", { thickness: 2, stainless: true });
    expect(found.slice(0, 10).every(({ traits }) => traits.rust === "stainless")).toBe(true);
    expect(firstNames(found, 7)).toContain("X50CrMoV15");
    expect(choiceOf(found, "304").status).toBe("does not harden");
    expect(choiceOf(found, "52100").why).toMatch(/clad/);
    // Coarse carbide in a thin flexible edge.
    expect(placeOf(found, "440C")).toBeGreaterThan(placeOf(found, "X50CrMoV15"));
  });

  it("a thin kitchen knife without a kiln", () => {
    const found = ask("Chef knife thin", { thickness: 2.5, quench: fastOil, kiln: false });
    expect(found.slice(0, 8).every(({ traits }) => traits.need === "forge or kiln")).toBe(true);
    expect(placeOf(found, "1084")).toBeLessThan(5);
    expect(placeOf(found, "52100")).toBeGreaterThan(placeOf(found, "1084"));
    for (const barred of ["X65Cr13", "440C", "D2", "A2", "M42"]) {
      expect(choiceOf(found, barred).why, barred).toMatch(/wants more than a forge/);
    }
  });

  it("a machete of 3 mm in a shop without water", () => {
    const found = ask("Machete light", { thickness: 3, length: 450, quench: findQuench("medium oil") });
    expect(found[0]?.names).toContain("65Mn");
    expect(firstNames(found, 5)).toContain("5160");
    // Shallow steel is marginal at 3 mm in such oil, and stainless breaks.
    expect(placeOf(found, "1075")).toBeGreaterThan(placeOf(found, "5160"));
    expect(choiceOf(found, "420").status).toBe("ruled out");
  });

  it("a differentially hardened sword", () => {
    const found = ask("Differential", { thickness: 6.5, length: 720, quench: findQuench("agitated water") });
    for (const choice of found.slice(0, 8))
      expect(choice.traits.kind).toMatch(/plain high carbon|medium carbon/);
    expect(placeOf(found, "W2")).toBeLessThan(10);
    expect(placeOf(found, "1095")).toBeLessThan(10);
    expect(choiceOf(found, "5160").status).toBe("ruled out");
    // Manganese hardens the body as well.
    expect(placeOf(found, "1084")).toBeGreaterThan(placeOf(found, "W1-9.5"));
  });

  it("a felling axe", () => {
    const found = ask("Felling axe", { thickness: 20, quench: fastOil });
    expect(firstNames(found, 3)).toEqual(["1055", "1059", "1065"]);
    expect(choiceOf(found, "D2").status).toBe("ruled out");
  });
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

describe("STEELS_FOR", () => {
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
