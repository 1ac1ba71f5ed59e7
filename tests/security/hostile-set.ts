import { BUDGET, SENTENCES } from "../../src/engine/budget";
import { SHEET_ROWS } from "../../src/formula/addresses";
import { handMade } from "../workbook/hand-made";

// Workbooks made to hang a program or to fill its memory; each must end in a value, in an error with a sentence, or in
// a refusal. Limits of Excel: 8,192 letters and 64 levels a formula, 1,048,576 rows (its own specification).

export const cells = (...formulas: readonly string[]) =>
  `<sheetData><row r="1">${formulas.map((text, at) => `<c r="${String.fromCharCode(65 + at)}1"><f>${text}</f></c>`).join("")}</row></sheetData>`;

export const named = (names: Readonly<Record<string, string>>) =>
  `<definedNames>${Object.entries(names)
    .map(([name, text]) => `<definedName name="${name}">${text}</definedName>`)
    .join("")}</definedNames>`;

export const plan = (sheet: string, names = "") => handMade({ sheets: { Plan: sheet }, names });

const doubling = Object.fromEntries(
  Array.from({ length: 21 }, (_, at) => [
    `Dub_${at}`,
    at === 0 ? '"xxxxxxxx"' : `Dub_${at - 1}&amp;Dub_${at - 1}`,
  ]),
);

export interface Hostile {
  readonly what: string;
  readonly bytes: () => Uint8Array;
  /** What its first sheet says of it; nothing where the whole file is refused. */
  readonly words?: string;
}

/** Formulas made to run without end. */
export const HOSTILE_FORMULAS: readonly (Hostile & { readonly words: string })[] = [
  {
    what: "a name that stands for itself",
    bytes: () => plan(cells("Zug+1"), named({ Zug: "Zug+1" })),
    words: "stands for itself",
  },
  {
    what: "names that stand for each other",
    bytes: () => plan(cells("Zug+1"), named({ Zug: "Zag+1", Zag: "Zug+1" })),
    words: "stands for itself",
  },
  {
    what: "twenty names that double",
    bytes: () => plan(cells("LEN(Dub_20)"), named(doubling)),
    words: "once written out",
  },
  { what: "every row", bytes: () => plan(cells("SUM(2:1048576)")), words: SENTENCES.read },
  {
    what: "two thousand brackets",
    bytes: () => plan(cells(`${"(".repeat(2000)}1${")".repeat(2000)}`)),
    words: "one inside the other",
  },
  { what: "twenty thousand signs", bytes: () => plan(cells(`${"-".repeat(20_000)}1`)), words: "letters" },
  {
    what: "eight thousand signs",
    bytes: () => plan(cells(`${"-".repeat(8000)}1`)),
    words: "one inside the other",
  },
  {
    what: "a product of large matrices",
    bytes: () => plan(cells("SUM(MMULT(ROW(1:3000)*COLUMN(A:CZZ),ROW(1:2704)*COLUMN(A:DZZ)))")),
    words: "#",
  },
  {
    what: "a list as large as a sheet",
    bytes: () => plan(cells("SUM(_xlfn.SEQUENCE(1048576,100))")),
    words: "#",
  },
  {
    what: "a text too long for a cell",
    bytes: () => plan(cells('REPT(REPT("x",32767),32767)')),
    words: "#VALUE!",
  },
];

const column = (count: number, formula: (row: number) => string) =>
  `<sheetData>${Array.from({ length: count }, (_, at) => `<row r="${at + 1}"><c r="A${at + 1}"><v>1</v></c><c r="B${at + 1}"><f>${formula(at + 1)}</f></c></row>`).join("")}</sheetData>`;

/** So many formulas that each read from the first row on: 1,250 million cells to be read one by one. */
export const RUNNING_SUMS = 50_000;

/** Files made to take time or memory by their size. */
export const HOSTILE_SIZES: readonly Hostile[] = [
  {
    what: "50,000 running sums",
    bytes: () => plan(column(RUNNING_SUMS, (row) => `SUM($A$1:A${row})`)),
  },
  {
    what: "50,000 running maxima",
    bytes: () => plan(column(RUNNING_SUMS, (row) => `MAX($A$1:A${row})`)),
  },
  {
    what: "50,000 formulas that share one",
    bytes: () =>
      plan(
        column(RUNNING_SUMS, (row) => `A${row}+1`).replace(
          "<f>A1+1</f>",
          `<f t="shared" ref="B1:B${RUNNING_SUMS}" si="0">A1+1</f>`,
        ),
      ),
  },
  {
    what: "a cell at the last place of a sheet, read all over",
    bytes: () =>
      handMade({
        sheets: {
          Plan: cells("1+1", "SUM(Last!A:XFD)", "SUM(Last!XFD1048576)"),
          Last: '<sheetData><row r="1048576"><c r="XFD1048576"><v>7</v></c></row></sheetData>',
        },
      }),
  },
  {
    what: "1,048,576 empty rows",
    bytes: () =>
      plan(
        `<sheetData>${Array.from({ length: SHEET_ROWS }, (_, at) => `<row r="${at + 1}"/>`).join("")}</sheetData>`,
      ),
  },
  {
    what: "1,048,576 rows with a cell each",
    bytes: () =>
      plan(
        `<sheetData>${Array.from({ length: SHEET_ROWS }, (_, at) => `<row r="${at + 1}"><c r="A${at + 1}"><v>1</v></c></row>`).join("")}</sheetData>`,
      ),
  },
  {
    what: "a million names",
    bytes: () =>
      plan(
        cells("1+1"),
        named(Object.fromEntries(Array.from({ length: 1_000_000 }, (_, at) => [`N${at}_`, "Plan!$A$1"]))),
      ),
  },
  {
    what: "three parts that unpack to 80 MB each",
    bytes: () =>
      handMade({
        sheets: Object.fromEntries(
          [1, 2, 3].map((at) => [`S${at}`, `<sheetData/>${" ".repeat(80_000_000)}`]),
        ),
      }),
  },
  {
    what: "a part that unpacks to 240 MB",
    bytes: () => handMade({ sheets: { Plan: `<sheetData/>${" ".repeat(240_000_000)}` } }),
  },
  {
    what: "3,000 sheets",
    bytes: () =>
      handMade({
        sheets: Object.fromEntries(Array.from({ length: 3000 }, (_, at) => [`S${at}`, cells("1+1")])),
      }),
  },
  {
    what: "as deep as a formula may be",
    bytes: () => plan(cells(`${"(".repeat(BUDGET.depth)}1${")".repeat(BUDGET.depth)}`)),
  },
];
