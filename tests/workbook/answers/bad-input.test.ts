import { strToU8, zipSync } from "fflate";
import { beforeAll, expect, it } from "vitest";
import { type Collected, collect } from "../../../src/workbook/answers/collect";
import { planNumber } from "../../../src/workbook/answers/copy-number";
import { takeAnswers } from "../../../src/workbook/answers/take";
import { storedValues } from "../template-cells";
import { planR07 } from "./plans";

// Every bad answer gets a sentence of at most 40 words, and nothing of it is written. Figures of the sentences are
// plain arithmetic; 650 HV is 57.8 HRC by ASTM E140-12b, table 1 (640 HV 57.3, 653 HV 58.0; from memory).

const LONG = 300_000;
let plan: Uint8Array;
let found: Collected;

const csv = (...lines: readonly string[]) => strToU8(lines.join("\r\n"));

const FILES = (copy: string): Readonly<Record<string, Uint8Array>> => ({
  "other-plan.csv": csv("Key,Price", "O-ZZZZ0000/L4/S4,3.05"),
  "gone.csv": csv("Key,Price,Heat no.", `O-${copy}/L9/S9,3.05,Q9`),
  "unit.csv": csv("Key,Price,Price for", `O-${copy}/L1/S1,3.05,stone`),
  "currency.csv": csv("Key,Price", `O-${copy}/L2/S2,4.10 USD`),
  "carbon.csv": csv("Key,C %", `O-${copy}/L4/S4,95`),
  "vickers.csv": csv(
    "Key,Piece,1st HRC,2nd HRC,3rd HRC",
    `R-${copy}/HB5/L5/1,R-07-L5-02,650 HV,52,52.2`,
    `R-${copy}/HB5/L5/2,R-07-L5-03,61.0,60.8,61.2`,
  ),
  "half.csv": csv("Key,Price,Week of delivery", `E-${copy}/L4/S4,3.05,`),
  "first.csv": csv("Key,Price", `O-${copy}/L5/S5,3.40`),
  "second.csv": csv("Key,Price", `O-${copy}/L5/S5,3.60`),
  "date.csv": csv("Answered by,shop,Date,03/04/2026", "Key,Heat no.", `O-${copy}/L3/S3,H3`),
  "formula.csv": csv("Key,Remarks", `O-${copy}/L4/S4,"=HYPERLINK(""http://a.invalid"",""x"")"`),
  "thousands.csv": csv("Key,Minimum charge", `E-${copy}/L5/S5,"1,200"`),
  "noise.bin": Uint8Array.from({ length: 4000 }, (_, at) => (at * 73) % 251),
  "empty.csv": csv("Hello", "this is not the table"),
  "no-workbook.xlsx": zipSync({ "a.txt": strToU8("x") }),
  "macros.xlsx": zipSync({
    "[Content_Types].xml": strToU8(
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Override PartName="/xl/workbook.xml" ContentType="application/vnd.ms-excel.sheet.macroEnabled.main+xml"/></Types>',
    ),
  }),
});

beforeAll(async () => {
  plan = await planR07();
  const copy = `${await planNumber({ run: "R-07", forge: "Tern Hollow Forge" })}0000`;
  const sources = Object.entries(FILES(copy)).map(([name, bytes]) => ({ name, bytes }));
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
