import { expect, test } from "vitest";
import { evaluate } from "../../src/functions/evaluate";
import { HISTORY, RUN_HEADINGS, RUN_PLAN, RUN_TOTALS } from "../../src/functions/run";
import { OFFERS_COMPARED } from "../../src/functions/stock";

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

const FOUR = evaluate(RUN_HEADINGS, [])
  .map(([label]) => String(label).toLowerCase())
  .filter((label) => label.length === 4 && label !== "line" && label !== "good");
const LETTERS_OUT = FOUR.flatMap((label) =>
  [0, 1, 2, 3].map((at) => [label, label.slice(0, at) + label.slice(at + 1)]),
);

test("a heading of four letters with one left out is remarked", () => {
  expect(FOUR.length).toBeGreaterThanOrEqual(3);
  for (const [label, heading] of LETTERS_OUT) {
    const [cautions] = cautionsOf([
      ["line", "steel", "good", "yield", heading],
      ["L1", "1095", 5, 0.9, ""],
    ]);
    expect(cautions, heading).toContain(`was "${label}" meant?`);
  }
});

// Short headings of a shop's own tables: common practice, no source.
test.each(
  "no ref tag job lot box bin day who qty pcs pos age kg id inv map set bar rod hot dry oil log note date name grade page".split(
    " ",
  ),
)("%s is one's own word", (heading) => {
  const [cautions] = cautionsOf([
    ["line", "steel", "good", "yield", heading],
    ["L1", "1095", 5, 0.9, ""],
  ]);
  expect(cautions).not.toContain("is not known");
});

test("HISTORY remarks a heading that is nearly a known one in a row of its own; without one there is none", () => {
  const rows = (heading: string) =>
    evaluate(HISTORY, [
      [
        ["item", "started", "good", heading],
        ["sword", 10, 9, 40],
      ],
    ]);
  const [item, remark, ...more] = rows("huors");
  expect(more).toEqual([]);
  expect(item?.slice(0, 4)).toEqual(["sword", 1, 10, 9]);
  expect(remark?.slice(0, 2)).toEqual([
    "remark",
    'The heading "huors" is not known and counts for nothing; was "hours" meant?',
  ]);
  expect(remark?.length).toBe(item?.length);
  expect(rows("hours")).toHaveLength(1);
  expect(rows("hours")[0]?.[6]).toBe(4);
  expect(rows("weather")).toHaveLength(1);
});

test("RUN_TOTALS remarks it below its sums", () => {
  const rows = (heading: string) =>
    evaluate(RUN_TOTALS, [
      [
        ["line", "steel", "good", "yield", heading],
        ["L1", "1095", 5, 0.9, "oil"],
      ],
    ]);
  const remarks = (heading: string) => rows(heading).filter(([what]) => what === "remark");
  expect(remarks("quenhc")).toEqual([
    ["remark", "", "", 'The heading "quenhc" is not known and counts for nothing; was "quench" meant?'],
  ]);
  expect(remarks("quench")).toEqual([]);
});

test("OFFERS_COMPARED remarks it in either table, below the suppliers' columns", () => {
  const rows = (need: string, offer: string) =>
    evaluate(OFFERS_COMPARED, [
      [
        ["steel", "section", "length", "quantity", need],
        ["1084", "50 x 3", 300, 4, 1],
      ],
      [
        ["supplier", "steel", "section", "price", "per", "bar length", offer],
        ["A", "1084", "50 x 3", 9, "kg", 3000, 20],
        ["B", "1084", "50 x 3", 8, "kg", 3000, 30],
      ],
    ]);
  const remarks = rows("kg in stcok", "frieght").filter(([what]) => what === "remark");
  expect(remarks.map(([, told]) => told)).toEqual([
    expect.stringContaining('was "kg in stock" meant?'),
    expect.stringContaining('was "freight" meant?'),
  ]);
  for (const row of remarks) expect(row).toHaveLength(5);
  expect(rows("note", "freight").filter(([what]) => what === "remark")).toEqual([]);
});
