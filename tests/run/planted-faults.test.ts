import { describe, expect, test } from "vitest";
import { type Line, plan, totals } from "./run";
import { changed, lineOf, RUN } from "./run-r07";

describe("the run as it should be", () => {
  // Starts and bars of the cut list, worked out by hand: binomial sums, (2990 + 1.2) / (length + 1.2).
  test.each([
    ["L1", 28, 4],
    ["L2", 44, 4],
    ["L3", 14, 4],
    ["L5", 10, 4],
    ["L6", 6, 2],
  ])("%s", (name, starts, bars) => {
    expect(lineOf(plan(RUN), name)).toMatchObject({ starts, bars });
  });
});

describe("faults that leave the line planned", () => {
  test("a practice sword aimed at 66 HRC is out of reach of 0.5 % C, and above its band", () => {
    const line = lineOf(plan(changed("L5", { "target HRC": 66 })), "L5");
    expect(line["band status"]).toBe("out of reach");
    expect(line.starts).toBe(10);
    expect(line.cautions).toMatch(/above the usual 46 to 52 HRC/);
  });

  test("a target out of reach says so in its own cells and in words", () => {
    const line = lineOf(plan(changed("L3", { "target HRC": 68 })), "L3");
    expect(line["temper C"]).toMatch(/^#N\/A 68 HRC in 1075 is out of reach/);
    expect(line.bars).toBe(4);
    expect([line["band status"], line.chance]).toEqual(["out of reach", 0]);
    expect(line.cautions).toMatch(/Out of reach: 1075 gives/);
  });

  test("an included angle in a column for one side is asked about", () => {
    const line = lineOf(plan(changed("L6", { "edge angle": 50 })), "L6");
    expect(line.cautions).toMatch(
      /Edge 50° a side is outside the usual .* Was the included angle typed\? Half of it, 25°/,
    );
  });

  test("a price 14 months older than the newest is flagged without any clock", () => {
    // 1 August 2025 to 1 October 2026.
    const rows = plan(changed("L2", { "price date": "2025-08-01" }));
    expect(lineOf(rows, "L2").cautions).toMatch(
      /price a kg is 14 months older than the newest price date of the table/,
    );
    expect(lineOf(rows, "L1").cautions).not.toMatch(/months/);
  });

  test("every price is old against a date given", () => {
    expect(lineOf(plan(RUN, "2027-12-01"), "L1").cautions).toMatch(/14 months older than the date given/);
    // 46296 is 1 October 2026 in a spreadsheet's count of days from 1900.
    expect(lineOf(plan(RUN, 46_296), "L1").cautions).not.toMatch(/older|after/);
  });

  test("a price without a date and a line that stands twice", () => {
    const undated = lineOf(plan(changed("L1", { "price date": null })), "L1");
    expect(undated.cautions).toMatch(/carries no date/);
    expect(lineOf(plan(changed("L2", { line: "L1" })), "L1").cautions).toMatch(
      /Line L1 stands in the table twice/,
    );
  });

  test("a price under the cost is called a loss", () => {
    const line = lineOf(plan(changed("L1", { "hours first": 2, "hour rate": 40, price: 50 })), "L1");
    expect(line.cautions).toMatch(/price 50 is under the unit cost: each blade loses/);
    expect(line.margin).toBeLessThan(0);
  });

  test("costs that are not counted are named", () => {
    expect(lineOf(plan(RUN), "L1").cautions).toMatch(/Not in the unit cost: labour \(no hour rate\)/);
  });
});

const OTHERS = ["L1", "L3", "L5", "L6"];

describe("faults that stop the line and no other", () => {
  const sentences: readonly (readonly [string, Line, RegExp])[] = [
    ["a percentage as a whole number", { yield: 92 }, /^#VALUE! yield: 92 given; was 0.92 meant\?/],
    ["no yield at all", { yield: 0 }, /^#VALUE! yield is empty/],
    ["a steel nobody knows", { steel: "80CrV22X" }, /^#N\/A .*80CrV22X/],
    ["no steel", { steel: null }, /^#VALUE! steel is empty/],
  ];

  test.each(sentences)("%s", (_, change, sentence) => {
    const rows = plan(changed("L2", change));
    const line = lineOf(rows, "L2");
    expect(line.starts).toMatch(sentence);
    expect(line["unit cost"]).toBe(line.starts);
    expect([line["band status"], line["through-hardens"], line.cautions]).toEqual(["", "", ""]);
    for (const other of OTHERS) expect(lineOf(rows, other)).toEqual(lineOf(plan(RUN), other));
  });

  test("two faults of one line are told together", () => {
    expect(lineOf(plan(changed("L2", { yield: 92, thickness: "5/32" })), "L2").starts).toMatch(
      /0.92 meant\?.*5\/32/,
    );
  });

  test("the totals leave a refused line out and name it", () => {
    const sums = totals(changed("L2", { yield: 92 }));
    expect(sums.get("lines")).toEqual(["lines", 4, "", "1 more not planned"]);
    expect(sums.get("good")?.[1]).toBe(24 + 12 + 8 + 4);
    expect(sums.get("not planned")?.slice(2)).toEqual(["L2", expect.stringMatching(/was 0.92 meant/)]);
  });
});

describe("a faulty cell that may be left out costs what rests on it", () => {
  /** What is wrong, a result that is then refused, and results that stay as they were. */
  type Case = readonly [string, Line, RegExp, refused: string, kept: readonly string[]];
  const cases: readonly Case[] = [
    [
      "a bare fraction",
      { thickness: "5/32" },
      /thickness: "5\/32" is a fraction/,
      "mass g",
      ["starts", "carbon %"],
    ],
    [
      "a use that fits several",
      { use: "sword" },
      /fits more than one use/,
      "chance",
      ["temper C", "bars", "mass g"],
    ],
    ["a grind nobody knows", { grind: "holow" }, /holow/, "mass g", ["temper C", "band status", "bars"]],
    [
      "minus hours of temper",
      { "temper hours": -2 },
      /temper hours: -2 h given/,
      "temper C",
      ["mass g", "bars"],
    ],
    ["a quench nobody knows", { quench: "sea" }, /sea/, "chance", ["mass g", "bars", "starts"]],
    ["negative hours", { "hours first": -2 }, /hours first: -2 h given/, "hours", ["temper C", "bars"]],
    ["a currency sign", { "price kg": "€9" }, /"€9" is not an amount/, "unit cost", ["bars", "temper C"]],
    [
      "a blank over the bar",
      { length: 3100 },
      /a blank of 3100 mm is longer/,
      "bars",
      ["starts", "temper C"],
    ],
    ["a rate without its model", { "hours first": 2, rate: 0.9 }, /model is empty/, "hours", ["bars", "kg"]],
    ["a piece over a load", { "kg a load": 0.1 }, /kg a load: one piece/, "loads", ["bars", "temper C"]],
    ["half of a known temper", { "known C": 200 }, /known temper needs its reading/, "temper C", ["bars"]],
    ["clay without its place", { "clay mm": 3 }, /clay needs both/, "chance", ["bars", "mass g"]],
    ["a chance of 90", { confidence: 90 }, /was 0.9 meant/, "starts", ["mass g", "temper C"]],
  ];

  test.each(cases)("%s", (_, change, sentence, refused, kept) => {
    const rows = plan(changed("L2", change));
    const line = lineOf(rows, "L2");
    expect(line.cautions).toMatch(new RegExp(sentence, "i"));
    expect(line[refused]).toMatch(sentence);
    expect(line["next step"]).toMatch(/^Mend this line/);
    const before = lineOf(plan(RUN), "L2");
    for (const result of kept) expect([result, line[result]]).toEqual([result, before[result]]);
    for (const other of OTHERS) expect(lineOf(rows, other)).toEqual(lineOf(plan(RUN), other));
  });

  test.each([
    ["03/04/2026", /"03\/04\/2026" is not a date here/],
    ["2026-02-31", /Price date/],
  ])("a date that is none, %s, costs no figure", (date, sentence) => {
    const line = lineOf(plan(changed("L2", { "price date": date })), "L2");
    expect(line.cautions).toMatch(sentence);
    const { cautions, "next step": next, ...figures } = lineOf(plan(RUN), "L2");
    expect([typeof cautions, typeof next]).toEqual(["string", "string"]);
    expect(line).toMatchObject(figures);
  });

  test("an error in one cell stays with what rests on it", () => {
    const rows = plan(changed("L2", { width: { type: "Error", basicValue: "#REF!" } }));
    const line = lineOf(rows, "L2");
    expect(line["mass g"]).toMatch(/^#VALUE! width: the cell this reads from holds #REF!/);
    expect([line.starts, lineOf(rows, "L3").starts]).toEqual([44, 14]);
  });

  test("the totals say from how many lines a sum is", () => {
    const sums = totals(changed("L2", { length: 3100 }));
    expect(sums.get("lines")).toEqual(["lines", 5, "", ""]);
    expect(sums.get("bars")?.[3]).toBe("from 4 of 5 lines");
    expect(sums.get("starts")?.[3]).toBe("");
  });
});
