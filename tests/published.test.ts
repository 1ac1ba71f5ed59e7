import { relative } from "node:path";
import { describe, expect, test } from "vitest";
import { ALL_SOURCES, answered, readTable, sourcesOf, tablePaths } from "./accuracy/checks";
import { spread } from "./accuracy/statistics";

for (const path of tablePaths()) {
  const table = readTable(path);
  describe(`${relative("tests", path)}: ${table.title}${table.fitted ? " (fitted)" : ""}`, () => {
    test("says where it comes from and why its tolerance is what it is", () => {
      expect(Object.keys(ALL_SOURCES)).toEqual(expect.arrayContaining([...sourcesOf(table)]));
      expect(table.locator).not.toBe("");
      expect(table.allowed.why).not.toBe("");
      expect(table.rows.length).toBeGreaterThan(0);
      for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
    });

    test(`agrees within ${table.allowed.mean} on average and ${table.allowed.largest} at most, no row dropped`, () => {
      const rows = answered(table);
      const { count, meanSize, rms, largest, largestAt } = spread(
        rows.map(({ answer, expected }) => answer - expected),
      );
      console.info(
        `${table.title}: ${count} rows, mean ${meanSize.toPrecision(3)}, rms ${rms.toPrecision(3)}, largest ${largest.toPrecision(3)} at ${JSON.stringify(rows[largestAt]?.row)}`,
      );
      expect(rows.every(({ answer }) => Number.isFinite(answer))).toBe(true);
      expect(meanSize).toBeLessThanOrEqual(table.allowed.mean);
      expect(rms).toBeLessThanOrEqual(table.allowed.rms ?? Number.POSITIVE_INFINITY);
      expect(largest).toBeLessThanOrEqual(table.allowed.largest);
    });
  });
}
