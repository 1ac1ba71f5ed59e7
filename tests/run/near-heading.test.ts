import { expect, test } from "vitest";
import { evaluate } from "../../src/functions/evaluate";
import { RUN_PLAN } from "../../src/functions/run";

const cautionsOf = (table: unknown[][]) => {
  const [headings = [], ...rows] = evaluate(RUN_PLAN, [table]);
  return rows.map((row) => String(row[headings.indexOf("cautions")]));
};

test("a heading that is nearly a known one is remarked beside the first line; one's own words are not", () => {
  const [first, second] = cautionsOf([
    ["line", "steel", "good", "yield", "quenhc", "colour of the box"],
    ["L1", "1095", 5, 0.9, "oil", "red"],
    ["L2", "1095", 5, 0.9, "oil", "red"],
  ]);
  expect(first).toContain('The heading "quenhc" is not known and counts for nothing; was "quench" meant?');
  expect(first).not.toContain("colour");
  expect(second).not.toContain("quenhc");
});

test.each(["lenght", "tickness", "witdh", "kref", "hours frst", "targt HRC"])("%s is remarked", (heading) => {
  const [cautions] = cautionsOf([
    ["line", "steel", "good", "yield", heading],
    ["L1", "1095", 5, 0.9, 1],
  ]);
  expect(cautions).toContain(`The heading "${heading}" is not known`);
});
