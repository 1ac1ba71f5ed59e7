import { describe, expect, test } from "vitest";
import { FAMILIES } from "../../src/core/steel/steel";
import { functionNamed } from "../../src/functions/catalogue";
import { nothingFound, type SteelQuestion, steelsFound } from "../../src/taskpane/steels/steel-search";

const ALL: SteelQuestion = { name: "", family: "", use: "", quench: "" };

describe("steels by what one knows of them", () => {
  test("by part of the name, and by a name of the trade", () => {
    expect(steelsFound({ ...ALL, name: "X50" })).toContain("X50CrMoV15");
    // Silver steel is 115CrV3 (1.2210) in EN ISO 4957; common practice of the trade.
    expect(steelsFound({ ...ALL, name: "silver steel" })).toContain("115CrV3");
    expect(steelsFound({ ...ALL, name: "no such thing" })).toEqual([]);
  });

  test("by quench: the letter of a tool steel of ASTM A681 and A686 names it", () => {
    // O is oil, A is air, W is water hardening.
    const by = (quench: string) => steelsFound({ ...ALL, quench });
    expect(by("oil")).toEqual(expect.arrayContaining(["O1", "52100"]));
    expect(by("air")).toContain("A2");
    expect(by("air")).not.toContain("O1");
    expect(by("water").some((name) => name.startsWith("W1"))).toBe(true);
    expect(by("water")).not.toContain("A2");
  });

  test("by family and use together: each narrows", () => {
    const [stainless = ""] = FAMILIES.filter((family) => /martensitic/i.test(family));
    const use = "Fillet flexible";
    const inFamily = steelsFound({ ...ALL, family: stainless });
    const both = steelsFound({ ...ALL, family: stainless, use });
    expect(both.length).toBeGreaterThan(0);
    expect(both.length).toBeLessThan(inFamily.length);
    for (const name of both) expect(inFamily).toContain(name);
  });

  test("nothing found is told with what was asked", () => {
    const sentence = nothingFound({ name: "O1", family: "x", use: "", quench: "air" });
    expect(sentence).toBe(
      'No grade of the table has "O1" in its name, family x, quench in air: ask for less at once.',
    );
  });

  test("the quench stands where it is looked for", () => {
    const fn = functionNamed("HARDENING");
    expect(fn?.shape === "row" || fn?.shape === "table" ? fn.result[6]?.label : "").toBe("quench");
  });
});
