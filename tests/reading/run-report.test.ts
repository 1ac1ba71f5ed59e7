import { expect, test } from "vitest";
import { type RunReport, runReport } from "../../src/taskpane/checks/run-report";

const NO_CALENDAR = { weeks: "", benchHours: "", ovenHours: "" };

const HEADINGS = ["line", "steel", "good", "yield", "hours first", "length", "width", "thickness", "grind"];

function reported(rows: readonly unknown[][], calendar = NO_CALENDAR): RunReport {
  const report = runReport([HEADINGS, ...rows], calendar);
  if (typeof report === "string") throw new Error(report);
  return report;
}

test("a faulty line says why and the others are planned all the same", () => {
  const { lines } = reported([
    ["L1", "1095", 10, 1, 2, 100, 50, 4, "rectangle"],
    ["L2", "mystery bar", 5, 1, 4],
    [],
    ["L3", "1095", 5, 92, 4],
  ]);
  expect(lines.map(({ name }) => name)).toEqual(["L1", "L2", "L3"]);
  expect(lines.map(({ fault }) => fault !== null)).toEqual([false, true, true]);
  expect(lines[1]?.fault).toContain("mystery bar");
  // 92 for a share of one is a percentage without its sign: common slip.
  expect(lines[2]?.fault).toMatch(/yield: 92.*0\.92/);
  const figures = new Map(lines[0]?.figures.map(([{ label }, text]) => [label, text]));
  // By hand: with every blade good 10 starts; 100 × 50 × 4 mm³ at 7.85 g/cm³ (EN 1993-1-1, 3.2.6) is 157 g.
  expect(figures.get("starts")).toBe("10");
  expect(Number(figures.get("mass g"))).toBeCloseTo(157, 0);
});

test("totals, and whether the hours to be had are enough", () => {
  const rows = [
    ["L1", "1095", 10, 1, 2],
    ["L2", "1095", 5, 1, 4],
  ];
  // By hand: 10 × 2 h + 5 × 4 h = 40 h, 4/3 weeks of 30 h, 10 h more than one week holds.
  const { totals } = reported(rows, { weeks: "1", benchHours: "30", ovenHours: "" });
  const byWhat = new Map(totals.map(([what, ...rest]) => [what, rest]));
  expect(byWhat.get("bench hours")?.slice(0, 2)).toEqual(["40", "h"]);
  expect(byWhat.get("bench time")?.[0]).toBe("1.33");
  expect(byWhat.get("bench time")?.[2]).toMatch(/^LATE: 10\.0 h/);
  expect(totals.every(([, figure]) => figure !== "")).toBe(true);
});

test("a table that cannot be read is one sentence", () => {
  expect(runReport([["steel", "good"]], NO_CALENDAR)).toMatch(/yield/);
  expect(runReport([["nothing", "known"]], NO_CALENDAR)).toMatch(/heading/);
  expect(runReport([HEADINGS], { ...NO_CALENDAR, weeks: "soon" })).toMatch(/soon/);
});
