import { expect, test, vi } from "vitest";
import { isMissed, report } from "./line";

const line = (value: number, budget?: number, unit = "ms") => ({ what: "an edit", value, unit, budget });

test("a time below 0, or none at all, is a fault of the measuring, with or without a budget", () => {
  for (const value of [-2380, -0.001, Number.NaN, Number.POSITIVE_INFINITY]) {
    expect(isMissed(line(value)), `${value}`).toBe(true);
    expect(isMissed(line(value, 100)), `${value}`).toBe(true);
  }
  expect(isMissed(line(-1, undefined, "×"))).toBe(true);
  expect(isMissed(line(0))).toBe(false);
  expect(isMissed(line(100, 100))).toBe(false);
  expect(isMissed(line(100.1, 100))).toBe(true);
  // Against an unchanged size a time may fall a little: the power is a slope, not a time.
  expect(isMissed(line(-0.1, 1.15, "power"))).toBe(false);
});

test("the report says so beside the figure and ends with status 1", () => {
  const said: string[] = [];
  const log = vi.spyOn(console, "log").mockImplementation((words: string) => void said.push(words));
  try {
    expect(report([line(12, 50), line(-2380)])).toBe(1);
    expect(report([line(12, 50)])).toBe(0);
  } finally {
    log.mockRestore();
  }
  expect(said[1]).toContain("-2380 ms");
  expect(said[1]).toContain("FAULT");
  expect(said[0]).not.toContain("FAULT");
});
