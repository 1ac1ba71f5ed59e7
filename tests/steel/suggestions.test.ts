import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";
import { familiesNamed, listGrades, systemsNamed } from "../../src/core/steel/list";
import { editDistance, nearestDesignations } from "../../src/core/steel/name-suggestions";

/** The distance by its definition (Levenshtein 1966): the cheapest of replacing, leaving out and putting in. */
function byDefinition(a: string, b: string): number {
  if (a === "" || b === "") return a.length + b.length;
  const isSlip = `${a[0]}${b[0]}` === "O0" || `${a[0]}${b[0]}` === "0O";
  const replaced = a[0] === b[0] ? 0 : isSlip ? 0.1 : 1;
  return Math.min(
    replaced + byDefinition(a.slice(1), b.slice(1)),
    1 + byDefinition(a.slice(1), b),
    1 + byDefinition(a, b.slice(1)),
  );
}

describe("how far two names lie apart", () => {
  const name = fc
    .array(fc.constantFrom("O", "0", "D", "2", "1"), { maxLength: 5 })
    .map((letters) => letters.join(""));

  test("is the edit distance, a letter O and a zero counting as nearly the same", () => {
    expect(editDistance("KITTEN", "SITTING")).toBe(3);
    expect(editDistance("O1", "01")).toBe(0.1);
    expect(editDistance("1O95", "1095")).toBe(0.1);
    expect(editDistance("D2", "O2")).toBe(1);
    expect(editDistance("O2", "O")).toBe(1);
    fc.assert(
      fc.property(name, name, (a, b) => {
        expect(editDistance(a, b)).toBeCloseTo(byDefinition(a, b), 9);
      }),
      { numRuns: 60 },
    );
  });

  test("is told up to a limit, itself included, and is beyond it otherwise", () => {
    fc.assert(
      fc.property(name, name, fc.integer({ min: 0, max: 4 }), (a, b, limit) => {
        const distance = byDefinition(a, b);
        if (distance <= limit) expect(editDistance(a, b, limit)).toBeCloseTo(distance, 9);
        else expect(editDistance(a, b, limit)).toBeGreaterThan(limit);
      }),
      { numRuns: 100 },
    );
    expect(editDistance("AAAA", "BBBB", 2)).toBe(Number.POSITIVE_INFINITY);
  });
});

/** Steels for no blade: not hardened by a quench, or with less than 0.30 % C and not stainless (common practice). */
const SOFT = new Set(
  allGrades()
    .filter(({ family, limits: { C } }) => {
      if (family === "austenitic stainless" || family === "ferritic stainless") return true;
      return family !== "martensitic stainless" && typeof C?.high === "number" && C.high < 0.3;
    })
    .map(({ designation }) => designation),
);

describe("designations that a slip may have meant", () => {
  const SLIPS = [
    ..."1094 1O95 5161 1018x 1021 304x 431x D9 A22 O8 W11 M22 S77 8621 430x 12L14 80CrV3".split(" "),
  ];

  test.each(SLIPS)("%s: steels for a blade first", (slip) => {
    const near = nearestDesignations(slip, 40);
    const soft = near.map((label) => SOFT.has(label.replace(/^(1\.\d{4}|[A-Z]\d{5}) /, "")));
    expect(soft).toEqual([...soft].sort((a, b) => Number(a) - Number(b)));
  });

  it("both kinds are met among them", () => {
    const labels = SLIPS.flatMap((slip) => nearestDesignations(slip, 40));
    expect(labels.filter((label) => SOFT.has(label)).length).toBeGreaterThan(3);
    expect(labels.filter((label) => !SOFT.has(label)).length).toBeGreaterThan(20);
  });

  it("of the same kind the nearer stands first, three where no count is given, none twice", () => {
    for (const slip of SLIPS) {
      const near = nearestDesignations(slip, 40);
      expect(nearestDesignations(slip)).toEqual(near.slice(0, 3));
      expect(new Set(near).size).toBe(near.length);
    }
    expect(nearestDesignations("1094")[0]).toBe("1095");
    expect(nearestDesignations("5161")[0]).toBe("5160");
    expect(nearestDesignations("1O95")[0]).toBe("1095");
    expect(nearestDesignations("80CrV3")[0]).toBe("80CrV2");
  });

  it("numbers of a register are compared with that register alone, and shown with the name", () => {
    expect(nearestDesignations("1.2378")[0]).toMatch(/^1\.237\d \S/);
    expect(nearestDesignations("1.2378", 40).every((label) => /^1\.\d{4} /.test(label))).toBe(true);
    expect(nearestDesignations("G10951", 40).every((label) => /^[A-Z]\d{5} /.test(label))).toBe(true);
    expect(nearestDesignations("G10951")).toContain("G10950 1095");
    expect(nearestDesignations("1094", 40).some((label) => /^1\.\d{4} /.test(label))).toBe(false);
  });

  it("what is spelt like nothing has none, however short or long", () => {
    for (const text of ["qqqqqqqqqqqqqqqqqq", "", "ЖЖЖЖЖЖЖЖ", "zzzzzz"])
      expect(nearestDesignations(text)).toEqual([]);
    // A name of two letters may be out by one, one of six by three.
    for (const near of nearestDesignations("Q9", 40)) expect(near.length).toBeLessThanOrEqual(3);
  });
});

describe("lists by family and system", () => {
  it("an exact word gives its own, a part all that hold it, in either case and with blanks about it", () => {
    expect(familiesNamed(" High Speed ")).toEqual(["high speed"]);
    expect(familiesNamed("stainless")).toHaveLength(3);
    expect(systemsNamed("gb")).toEqual(["GB"]);
    expect(systemsNamed("AISI").length).toBeGreaterThan(2);
    expect(systemsNamed("aisi tool")).toEqual(["AISI tool"]);
    expect(() => familiesNamed("rubber")).toThrow(/no family of steels is called "rubber"; there are: /);
  });

  it("a list holds all that pass, and says by what nothing passed", () => {
    expect(listGrades()).toEqual(allGrades());
    const tool = listGrades({ systems: ["AISI tool"], contains: "d2" });
    expect(tool.map(({ designation }) => designation)).toContain("D2");
    const none = {
      families: ["high speed" as const],
      systems: ["GOST" as const, "GB" as const],
      contains: "1095",
    };
    expect(() => listGrades(none)).toThrow(
      /^no grade of the table has: high speed, (GOST or GB|GB or GOST), "1095" in the name$/,
    );
    expect(() => listGrades({ contains: "qqqq" })).toThrow(/^no grade of the table has: "qqqq" in the name$/);
  });
});

describe("a name as people write it", () => {
  test.each([
    ["1095 steel", "1095"],
    ["O1 Steel", "O1"],
    ["12842", "90MnCrV8"],
    ["1.2842", "90MnCrV8"],
    ["12842 steel", "90MnCrV8"],
    ["  1095  ", "1095"],
    ["C75S+A", "C75S"],
    ["C75S +QT", "C75S"],
    ["DIN C75S", "C75S"],
    ["AISI/SAE: 1095", "1095"],
  ])('"%s" is %s', (typed, designation) => expect(findSteel(typed).name).toBe(designation));

  it("a zero for the letter O is told, other slips have their neighbours", () => {
    expect(() => findSteel("01")).toThrow('"01" begins with a zero: write "O1" with the letter O');
    expect(() => findSteel("09")).not.toThrow("begins with a zero");
    expect(() => findSteel("1094")).toThrow(/"1094" is not in the grade table; nearest designations: 1095/);
    expect(() => findSteel("10 steel plates")).toThrow("is not in the grade table");
  });

  it("numbers are designations from 10 on, EN numbers between 1 and 2, and nothing else", () => {
    expect(findSteel(1095).name).toBe("1095");
    expect(findSteel(1.2842).name).toBe("90MnCrV8");
    expect(() => findSteel(10)).toThrow('"10" is not in the grade table');
    for (const given of [0, 1, 2, 9, 9.5, 1095.5, -1095])
      expect(() => findSteel(given)).toThrow("is not a steel");
  });

  it("a text of 400 characters is still looked up, a longer one is not", () => {
    expect(() => findSteel("x".repeat(400))).toThrow("is not in the grade table");
    expect(() => findSteel("x".repeat(401))).toThrow("a text of 401 characters is not a steel");
  });
});
