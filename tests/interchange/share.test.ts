import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { csvText } from "../../src/workbook/share/csv";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { verifyCopy } from "../../src/workbook/share/verify/verify-copy";
import { handMade, partsOf } from "../workbook/hand-made";
import { allConverted, CSV_OF_ALL_SHEETS, converted, hasLibreOffice, hasPdfToText, wordsOf } from "./office";

// LibreOffice 7.4 or later as a recipient without the add-in. Carbon of a grade is what its number says (SAE J402).

const LONG = 300_000;
const sample = readFileSync(new URL("../workbook/files/written-by-xlsxwriter.xlsx", import.meta.url));
const linesOf = (files: Map<string, Buffer>, sheet: string) =>
  (files.get(`plan-${sheet}.csv`)?.toString("utf8") ?? "").replace(/^\ufeff/, "").split("\n");

it.runIf(hasLibreOffice)(
  "shows the numbers of a share copy, which come back whole after being saved there",
  async () => {
    const { bytes } = await shareCopy(sample);
    const lines = linesOf(converted("plan.xlsx", bytes, CSV_OF_ALL_SHEETS), "Plan lines");
    expect(lines.join("\n")).not.toContain("#NAME?");
    expect(lines[1]).toBe("1095,0.95,1.9,carbon 0.95,24,28,,0.95,,40,,7");
    expect(lines[2]).toBe("5160,0.6,1.2,carbon 0.6,40,46,,0.6,,24,,0.95");
    expect(lines[3]?.startsWith("no such steel,#N/A,#N/A,not known,12,14,")).toBe(true);
    const saved = converted("plan.xlsx", bytes, "xlsx").get("plan.xlsx");
    expect(saved).toBeDefined();
    const done = await verifyCopy(sample, saved ?? new Uint8Array());
    expect(done).toMatchObject({ isSound: true, digest: "as stated", differences: [], formulas: [] });
  },
  LONG,
);

it.runIf(hasLibreOffice)(
  "shows the same numbers where it is told to calculate everything anew",
  async () => {
    const { bytes } = await shareCopy(sample);
    // What is saved as OpenDocument and opened again is calculated by LibreOffice alone.
    const ods = converted("plan.xlsx", bytes, "ods").get("plan.ods") ?? new Uint8Array();
    const lines = linesOf(converted("plan.ods", ods, CSV_OF_ALL_SHEETS), "Plan lines");
    expect(lines[1]).toBe("1095,0.95,1.9,carbon 0.95,24,28,,0.95,,40,,7");
  },
  LONG,
);

it.runIf(hasLibreOffice)(
  "shows no number of ours in a live workbook with spills: the reason for share copies",
  async () => {
    const { bytes } = await recalculate(
      handMade({
        sheets: {
          Plan: '<sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>1095</t></is></c><c r="B1" cm="1"><f t="array" ref="B1">_xldudf_BLADE_CARBON(A1)</f></c></row></sheetData>',
        },
      }),
    );
    expect(partsOf(bytes)["xl/worksheets/sheet1.xml"]).toContain("<v>0.95</v>");
    const lines = linesOf(converted("plan.xlsx", bytes, CSV_OF_ALL_SHEETS), "Plan");
    expect(lines[0]).toBe("1095,#NAME?");
  },
  LONG,
);

it.runIf(hasLibreOffice && hasPdfToText)(
  "prints a share copy with its numbers and without an error name",
  async () => {
    const { bytes } = await shareCopy(sample);
    const words = wordsOf(converted("plan.xlsx", bytes, "pdf").get("plan.pdf") ?? new Uint8Array());
    // The narrow column of the sample cuts "carbon 0.95" short.
    expect(words).toMatch(/1095\s+0\.95\s+1\.9\s+carbon 0\S*\s+24\s+28\s+0\.95\s/);
    expect(words).toMatch(/SHA-256 of this copy\s+[0-9a-f]{64}/);
    expect(words).not.toContain("#NAME?");
  },
  LONG,
);

/** Comma, quotes, UTF-8, from the first line, formulas in the text evaluated: the most trusting way to open a CSV. */
const TRUSTING = "Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,0,true";
const formulasIn = (bytes: Uint8Array | undefined) =>
  Object.entries(partsOf(bytes ?? new Uint8Array()))
    .filter(([name]) => name.includes("worksheets/"))
    .flatMap(([, xml]) => xml.match(/<f[ >]/g) ?? []);

it.runIf(hasLibreOffice)(
  "runs no formula out of a CSV file, though it does out of a plain one",
  () => {
    const words = ["=1+1", "+1+1", "-1+1", "@SUM(1)", "\t=1+1", " =1+1", '=HYPERLINK("http://a.invalid")'];
    const plain = words.map((word) => `"${word.replaceAll('"', '""')}"\r\n`).join("");
    const bytesOf = (text: string) => new TextEncoder().encode(text);
    const files = new Map([
      ["plain.csv", bytesOf(plain)],
      ["ours.csv", bytesOf(csvText(words.map((word) => [word])))],
    ]);
    const opened = allConverted(files, "xlsx", TRUSTING);
    expect(opened.size).toBe(2);
    expect(formulasIn(opened.get("plain.xlsx")).length).toBeGreaterThan(0);
    expect(formulasIn(opened.get("ours.xlsx"))).toEqual([]);
  },
  LONG,
);
