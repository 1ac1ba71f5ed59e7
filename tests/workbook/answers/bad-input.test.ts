import { beforeAll, expect, it } from "vitest";
import { type Collected, collect } from "../../../src/workbook/answers/collect";
import { planNumber } from "../../../src/workbook/answers/copy-number";
import { takeAnswers } from "../../../src/workbook/answers/take";
import { storedValues } from "../template-cells";
import { badFiles } from "./bad-files";
import { planR07 } from "./plans";

// Every bad answer gets a sentence of at most 40 words, and nothing of it is written. Figures of the sentences are
// plain arithmetic; 650 HV is 57.8 HRC by ASTM E140-12b, table 1 (640 HV 57.3, 653 HV 58.0; from memory).

const LONG = 300_000;
let plan: Uint8Array;
let found: Collected;

beforeAll(async () => {
  plan = await planR07();
  const copy = `${await planNumber({ run: "R-07", forge: "Tern Hollow Forge" })}0000`;
  const sources = Object.entries(badFiles(copy)).map(([name, bytes]) => ({ name, bytes }));
  found = await collect(plan, sources);
}, LONG);

const of = (file: string) => found.proposals.filter((proposal) => proposal.file === file);
const said = (file: string) =>
  [...of(file).flatMap(({ why }) => why), ...found.remarks.filter((remark) => remark.startsWith(file))].join(
    " | ",
  );

it.each([
  ["other-plan.csv", "1 row answers a copy of another plan; this one is R-07 of Tern Hollow Forge"],
  ["gone.csv", "line L9/S9 is no longer in the plan"],
  ["unit.csv", 'a price for "stone" cannot be turned into one a kg: kg, lb, 100 kg, t, bar can'],
  ["currency.csv", '"4.10 USD" is in USD, the plan counts in EUR'],
  ["carbon.csv", "C 95 % is more than the 2.5 % accepted for a steel; was 0.95 meant"],
  ["vickers.csv", "650 HV is no Rockwell C reading, about 57.8 HRC by conversion"],
  ["vickers.csv", "too hard: mean over"],
  ["half.csv", "the row is half filled: Week of delivery missing"],
  ["first.csv", "two answers to one question: 3.4 and 3.6"],
  ["second.csv", "two answers to one question: 3.4 and 3.6"],
  ["date.csv", '"03/04/2026" reads as two days'],
  ["thousands.csv", '"1,200" reads as 1200 or as 1.2'],
  ["noise.bin", "no answers found"],
  ["empty.csv", "no answers found"],
  ["no-workbook.xlsx", "no-workbook.xlsx: "],
  ["macros.xlsx", "macros.xlsx: "],
  ["entities.xlsx", "entities.xlsx: "],
])("says of %s: %s", (file, sentence) => {
  expect(said(file)).toContain(sentence);
});

it("says it in at most 40 words, and none of it is fine but the day that is missing", () => {
  const sentences = [...found.remarks, ...found.proposals.flatMap(({ why }) => why)];
  expect(sentences.length).toBeGreaterThan(12);
  for (const sentence of sentences) expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(40);
  const fine = found.proposals.filter(({ state }) => state === "fine").map(({ file }) => file);
  expect(fine.sort()).toEqual(["date.csv", "formula.csv"]);
});

it(
  "takes nothing that cannot be read, and writes a text that looks like a formula as a text",
  async () => {
    const [refused] = of("carbon.csv");
    expect(refused?.state).toBe("refused");
    await expect(takeAnswers(plan, refused === undefined ? [] : [refused], "")).rejects.toThrow(
      "cannot be taken",
    );
    const after = await storedValues(await takeAnswers(plan, of("formula.csv"), "2026-09-23"));
    expect(after.rows("Answers")[4]?.[6]).toBe('=HYPERLINK("http://a.invalid","x")');
  },
  LONG,
);
