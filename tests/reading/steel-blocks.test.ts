import { describe, expect, test } from "vitest";
import { STEEL_BLOCKS } from "../../src/taskpane/parts/steel-blocks";

const of = { steel: "5160", hours: "", cycles: "" };

describe.each(Object.entries(STEEL_BLOCKS))("%s", (_, make) => {
  const { block, title } = make(of);

  test("is a rectangle under its headings, named for the steel", () => {
    const width = block.rows[block.heading]?.length ?? 0;
    expect(title).toContain("5160");
    expect(block.rows.every((row) => row.length === width)).toBe(true);
    expect(block.rows.length).toBeGreaterThan(8);
  });

  test("holds values only and says where they come from, with the error to expect", () => {
    const cells = block.rows.flat();
    expect(cells.filter((cell) => typeof cell === "string" && cell.startsWith("="))).toEqual([]);
    const foot = block.rows
      .map(([first = ""]) => String(first))
      .filter((text) => text.includes("expected error"));
    expect(foot.length).toBeGreaterThan(0);
    expect(String(block.rows.at(-1)?.[0])).toMatch(/\d+\.\d+\.\d+.*follow no other cell/);
  });

  test("an unknown steel is refused with a sentence", () => {
    expect(() => make({ ...of, steel: "no such steel" })).toThrow(/no such steel/);
  });
});

describe("figures", () => {
  // SAE J404 and ASTM A29: C 0.56-0.64, Cr 0.70-0.90.
  test("composition has the limits of the standard", () => {
    const { rows } = STEEL_BLOCKS.Composition(of).block;
    expect(rows.find(([element]) => element === "C")?.slice(1, 3)).toEqual([0.56, 0.64]);
    expect(rows.find(([element]) => element === "Cr")?.slice(1, 3)).toEqual([0.7, 0.9]);
  });

  // By hand, °F = °C × 9 / 5 + 32 (definition of the scales, NIST SP 811): 200 °C is 392 °F. Steel softens as it is tempered.
  test("the temper curve falls, in both scales, and its chart takes in every figure and no other row", () => {
    const { block, chart } = STEEL_BLOCKS["Temper curve"](of);
    const [first = 0, last = 0] = chart?.rows ?? [];
    const figures = block.rows.slice(first, last + 1);
    expect(figures.every((row) => row.every((cell) => typeof cell === "number"))).toBe(true);
    expect(typeof block.rows[last + 1]?.[1]).toBe("string");
    expect(figures.find(([celsius]) => celsius === 200)?.[1]).toBe(392);
    const likely = figures.map((row) => Number(row[3]));
    expect(likely).toEqual([...likely].sort((a, b) => b - a));
    for (const [, , low, middle, high] of figures) {
      expect(Number(low)).toBeLessThan(Number(middle));
      expect(Number(middle)).toBeLessThan(Number(high));
    }
  });

  // Tempered martensite embrittlement about 250 to 400 °C (482 to 752 °F): ASM Handbook 4A, from memory.
  test("the temper curve does not travel without its cautions", () => {
    const { rows } = STEEL_BLOCKS["Temper curve"](of).block;
    expect(rows.some(([first]) => /^Caution: .*embrittlement/.test(String(first)))).toBe(true);
  });

  test("temperatures of the hardening sheet stand in both scales", () => {
    const { rows } = STEEL_BLOCKS["Hardening sheet"](of).block;
    const celsius = rows.filter(([, , unit]) => unit === "°C");
    expect(celsius.length).toBeGreaterThan(1);
    for (const [, figure, , also] of celsius) expect(also).toBe(Math.round(Number(figure) * 1.8 + 32));
  });
});
