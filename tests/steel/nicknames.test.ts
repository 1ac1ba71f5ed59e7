import { expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { nearestDesignations } from "../../src/core/steel/name-suggestions";
import table from "../../src/data/steel/nicknames.json";

// Names of the trade: common practice, no source.
test.each([
  ["Silver steel", "115CrV3"],
  ["leaf springs", "5160"],
  ["bearing steel", "52100"],
  ["file", "W1-11"],
  ["saw plate", "75Ni8"],
])("%s leads to %s, and to a coupon", (name, grade) => {
  expect(() => findSteel(name)).toThrow(grade);
  expect(() => findSteel(name)).toThrow("unknown steel, test a coupon");
});

test("every grade named there is in the table", () => {
  for (const [, often] of table.rows)
    for (const grade of (often as string).split(", ")) expect(findSteel(grade).name).not.toBe("");
});

test("a near miss never offers a soft steel first where a steel for blades is as near as a slip", () => {
  for (const slip of ["1019", "1021", "1059A", "1O20", "X21Cr13"]) {
    const [first] = nearestDesignations(slip);
    if (first === undefined) continue;
    const steel = findSteel(first);
    expect(["austenitic stainless", "ferritic stainless"], slip).not.toContain(steel.family);
    expect(steel.composition.C, slip).toBeGreaterThan(0.15);
  }
});
