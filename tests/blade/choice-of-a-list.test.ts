import { describe, expect, test } from "vitest";
import { findUse } from "../../src/core/blade/bands";
import { type Choice, steelsFor } from "../../src/core/blade/choice";
import { nothingFits } from "../../src/core/blade/choice-bars";
import type { ChoiceAsked } from "../../src/core/blade/choice-row";
import { isNamedFor, mentionsOf, namedByDesignation, namedItems } from "../../src/core/blade/named-steels";
import { findSteel } from "../../src/core/steel/find";

/* The same answers as of the whole table, asked of lists of a few steels; facts of the trade, common practice, no source. */

const list = (...names: string[]) => names.map((name) => ({ steel: findSteel(name) }));

/** The rows of a list by the name that stands first. */
function rowsOf(question: ChoiceAsked, ...names: string[]): Map<string | undefined, Choice> {
  return new Map(steelsFor(question, list(...names)).map((choice) => [choice.names[0], choice]));
}

describe("a sword of 6 mm in fast oil", () => {
  const question = { use: "European sword sharp", thickness: 6, length: 800, quench: "fast oil" };
  const rows = rowsOf(question, "304", "440C", "1095", "D2", "S7", "1060", "5160", "O1", "C70U", "1018");

  test("spring steel first; what cannot be stands last with its reason and without figures", () => {
    expect([...rows.keys()][0]).toBe("5160");
    const barred = [...rows].filter(([, { barred: step }]) => step > 0).map(([name]) => name);
    expect(barred.sort()).toEqual(["1018", "1095", "304", "440C", "C70U", "D2", "O1"].sort());
    for (const name of barred) {
      expect(rows.get(name)).toMatchObject({ temperC: undefined, likely: undefined, givesUp: "" });
      expect(rows.get(name)?.why).toMatch(/^[A-Z0-9].*\.$/);
    }
    expect(rows.get("304")).toMatchObject({ status: "does not harden", suits: "no" });
    expect(rows.get("D2")).toMatchObject({
      status: "ruled out",
      why: "High-chromium cold-work steel is not the trade's choice for this use.",
    });
    expect(rows.get("440C")?.why).toBe("Martensitic stainless steel is not the trade's choice for this use.");
  });

  test("what fits has its temper, chance and depth", () => {
    const { status, temperC, likely, chance, hardensMm, why, isNamed, isSold } = rows.get("5160") as Choice;
    expect(status).toBe("likely inside");
    expect(temperC).toBeGreaterThan(370);
    expect(likely).toBeGreaterThan(49);
    expect(chance).toBeGreaterThan(0.6);
    expect(hardensMm).toBeGreaterThan(9);
    expect([isNamed, isSold]).toEqual([true, true]);
    expect(why).toMatch(
      /^Usually named for this use; band 50 to 54 HRC; tough; hardens about \d+ mm in fast oil/,
    );
  });

  test("a shallow steel is told so, an air-hardening one is cooled in air", () => {
    expect(rows.get("1060")?.givesUp).toMatch(/^Not hard through at 6 mm: to about 4.3 mm; cool fast: /);
    expect(rows.get("S7")?.givesUp).toMatch(/^Not in fast oil, which may crack it: cool it in still air/);
    expect(rows.get("S7")?.why).toContain("in still air");
    expect(rows.get("5160")?.givesUp).not.toMatch(/crack|not hard through/i);
  });
});

test("water cracks: an alloyed steel is barred from it, a plain one is started more often, without a quench nothing is said", () => {
  const question = { use: "Felling axe bit", thickness: 20 };
  const inWater = rowsOf({ ...question, quench: "brine" }, "5160", "1055", "O1");
  expect(inWater.get("1055")?.givesUp).toMatch(/brine cracks some blades: start more/i);
  expect(inWater.get("5160")).toMatchObject({
    status: "ruled out",
    why: "Likely to crack in brine: quench it in oil.",
  });
  const open = rowsOf(question, "5160", "1055");
  expect([...open.values()].every(({ givesUp }) => !/cracks/.test(givesUp))).toBe(true);
  expect(open.get("1055")?.why).toMatch(/, its usual quench/);
});

describe("stainless, or not", () => {
  const names = ["X50CrMoV15", "1095", "52100", "440C", "D2"];

  test("asked for, nothing else fits; where only the edge cuts a plain edge may be clad", () => {
    const rows = rowsOf({ use: "Fillet flexible", thickness: 2, stainless: true }, ...names);
    const fits = [...rows].filter(([, { barred }]) => barred === 0).map(([name]) => name);
    expect(fits.sort()).toEqual(["440C", "X50CrMoV15"]);
    expect(rows.get("1095")?.why).toMatch(
      /^Not stainless; clad with soft stainless its sides do not rust, its edge still does/,
    );
    expect(rows.get("52100")?.why).toMatch(/clad with soft stainless/);
    expect(rows.get("D2")?.why).toMatch(/^Not stainless: /);
  });

  test("not wanted, it is ruled out", () => {
    const rows = rowsOf({ use: "Fillet flexible", thickness: 2, stainless: false }, ...names);
    expect(rows.get("X50CrMoV15")).toMatchObject({
      status: "ruled out",
      why: "Stainless, and none is wanted.",
    });
    expect(rows.get("52100")?.status).not.toBe("ruled out");
  });

  test("a blade that is struck is not clad", () => {
    const rows = rowsOf({ use: "Large camp chopper", thickness: 5, stainless: true }, "1095");
    expect(rows.get("1095")?.why).toMatch(/^Not stainless: /);
  });
});

describe("a shop without a kiln", () => {
  const question = { use: "Chef knife thin hard", thickness: 2.5, kiln: false };

  test("hardens carbon steel, not what wants over 900 °C", () => {
    const rows = rowsOf(question, "X50CrMoV15", "440C", "1095", "1084", "A2");
    expect([...rows.keys()].slice(0, 2).sort()).toEqual(["1084", "1095"]);
    for (const name of ["X50CrMoV15", "440C", "A2"]) {
      expect(rows.get(name), name).toMatchObject({ status: "ruled out" });
      expect(rows.get(name)?.why, name).toMatch(/^Hardening wants more than a forge: /);
    }
    for (const kiln of [true, undefined]) {
      expect(rowsOf({ ...question, kiln }, "X50CrMoV15").get("X50CrMoV15")?.barred).toBe(0);
    }
  });

  test("what to do where nothing fits, by what bars the first", () => {
    const said = (asked: ChoiceAsked, ...names: string[]) => nothingFits(steelsFor(asked, list(...names)));
    expect(said(question, "X50CrMoV15", "440C")).toMatch(
      /^Without a kiln above 900 °C \(1652 °F\) none of these can be hardened: send the blades out, or clad a plain edge/,
    );
    expect(said(question, "A2", "M2")).toMatch(/send the blades out, or take another steel\.$/);
    expect(said({ use: "Felling axe bit", thickness: 20, quench: "brine" }, "5160", "6150")).toBe(
      "None of these can be hardened in this bath without cracks to be feared: quench in oil.",
    );
    expect(said({ use: "European sword sharp" }, "D2", "O1")).toBe(
      "None of these fits what was asked: each row says why.",
    );
    expect(said({ use: "European sword sharp" }, "D2")).toBe("");
    expect(said({ use: "European sword sharp" }, "D2", "5160")).toBe("");
    expect(nothingFits([])).toBe("");
  });
});

test("twins stand as one at the lowest price, no price after any", () => {
  const priced = (...offers: [string, number | undefined][]) =>
    steelsFor(
      { use: "Practice longsword blunt" },
      offers.map(([name, price]) => ({ steel: findSteel(name), price })),
    ).map(({ names, price }) => [names.join(" "), price]);
  expect(priced(["5160", 9], ["6150", 4], ["SUP9A", 3])).toEqual([
    ["SUP9A 5160", 3],
    ["6150", 4],
  ]);
  expect(priced(["SUP9A", undefined], ["5160", 3])).toEqual([["5160 SUP9A", 3]]);
  expect(priced(["5160", undefined], ["SUP9A", undefined])).toEqual([["5160 SUP9A", undefined]]);
});

test("a band that no temper reaches is said with what they give", () => {
  const rows = rowsOf({ use: "Wood carving", thickness: 3 }, "SUS431", "1045", "O1");
  expect([...rows.keys()][0]).toBe("O1");
  const [low] = [...rows].filter(([, { status }]) => status === "out of reach");
  expect(low?.[1].why).toMatch(/tempers give \d+ to \d+ HRC, the use asks for 58 to 62\.$/);
});

describe("steels that the trade names for a use", () => {
  const named = (steels: string, name: string) =>
    isNamedFor({ ...findUse("Wood carving"), steels }, findSteel(name));

  test.each([
    ["O1, 1095", ["O1", "1095"], ["5160", "1084"]],
    ["1060 to 1075", ["1060", "1070", "1075"], ["1055", "1084", "5160"]],
    [
      "plain 0.6-0.9 % C",
      ["1060", "1084", "C 0.60 Mn 0.7", "C 0.90 Mn 0.7"],
      ["1095", "1055", "C 0.59 Mn 0.7", "C 0.91 Mn 0.7", "5160"],
    ],
    ["plain 0.6-0.9 % C", ["C 0.7 Mn 1.09"], ["C 0.7 Mn 1.10"]],
    ["stainless", ["440C", "X50CrMoV15"], ["D2", "304L", "1095"].slice(0, 1)],
    ["13-15 % Cr stainless", ["X50CrMoV15"], ["440C", "1095", "D2"]],
    ["12-14 % Cr stainless of 0.4 % C and more", ["X46Cr13"], ["410", "440C", "52100"]],
    ["", [], ["5160", "440C"]],
  ] as const)("%s", (steels, yes, no) => {
    for (const name of yes) expect(named(steels, name), name).toBe(true);
    for (const name of no) expect(named(steels, name), name).toBe(false);
  });

  test("classes are left out where only designations are to count", () => {
    const use = {
      ...findUse("Wood carving"),
      steels: "O1, 13-15 % Cr stainless, stainless, 1060 to 1075, plain 0.6-0.9 % C",
    };
    expect(namedItems(use)).toHaveLength(5);
    expect(namedByDesignation(use).steels).toBe("O1, 1060 to 1075");
    expect(namedItems({ ...use, steels: "" })).toEqual([]);
  });

  test("a grade is counted once a list that calls it by its own name", () => {
    expect(mentionsOf(findSteel("5160"))).toBeGreaterThan(mentionsOf(findSteel("9260")));
    expect(mentionsOf(findSteel("SUP13"))).toBe(0);
  });
});
