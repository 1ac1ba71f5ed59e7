import { cellName } from "../../formula/addresses";
import type { SheetModel } from "../model/sheet-model";
import { heading, helperSheet, mark, note, type Row, title, typed, words, worked } from "./parts/sheet-parts";

/** A figure that the workbook must come to. */
export interface Check {
  readonly what: string;
  /** Where the expected figure comes from. */
  readonly source: string;
  readonly expected: number;
  /** Without its equals sign. */
  readonly formula: string;
  readonly tolerance: number;
  readonly format?: string;
}

/** Answers known from elsewhere: a workbook whose functions give others is not to be trusted. */
export const KNOWN: readonly Check[] = [
  {
    what: "Starts for 24 good at yield 0.92, 90 % sure",
    source: "binomial distribution, as any statistics text gives it",
    expected: 28,
    formula: "BLADE.STARTS(24,0.92,0.9)",
    tolerance: 0,
  },
  {
    what: "60 HRC as HV",
    source: "ASTM E140 prints 697; tables for other classes of steel differ by some units",
    expected: 697,
    formula: 'BLADE.HARDNESS(60,"HRC","HV")',
    tolerance: 1,
  },
  {
    what: "Carbon of 5160 %",
    source: "SAE number: the last two figures in hundredths",
    expected: 0.6,
    formula: 'BLADE.CARBON("5160")',
    tolerance: 0,
    format: "0.00",
  },
  {
    what: "Least thickness for 50 HRC mm",
    source: "ten times the depth of the mark, (100 - HRC) × 0.002 mm (ISO 6508-1, relayed)",
    expected: 1,
    formula: "BLADE.TEST_THICKNESS(50)",
    tolerance: 0.001,
    format: "0.00",
  },
  {
    what: "Sample from 60 at AQL 2.5",
    source: "MIL-STD-105E: letter E, arrow to F",
    expected: 20,
    formula: "INDEX(BLADE.SAMPLE_PLAN(60,2.5),1,2)",
    tolerance: 0,
  },
  {
    what: "Hours of 28 pieces, first 2.4 h, rate 0.95",
    source: "sum of 2.4 n^(log2 0.95), n = 1 to 28, by hand",
    expected: 56.271,
    formula: 'BLADE.LEARNING(2.4,28,0.95,"unit","total")',
    tolerance: 0.001,
    format: "0.000",
  },
  {
    what: "Area of a diamond 50 × 6 mm²",
    source: "half of width times thickness",
    expected: 150,
    formula: 'BLADE.SECTION_AREA("diamond",50,6)',
    tolerance: 0.001,
  },
  {
    what: "Price of cost 65 at margin 0.35",
    source: "cost ÷ (1 - margin)",
    expected: 100,
    formula: "BLADE.PRICE_AT_MARGIN(65,0.35)",
    tolerance: 0.001,
    format: "0.00",
  },
];

const NAME = "Checks";
const HEADINGS = 3;
const FIRST = HEADINGS + 1;

function checkRow({ what, source, expected, formula, tolerance, format }: Check, index: number): Row {
  const [wanted, got] = [1, 2].map((column) => cellName(FIRST + index, column));
  return [
    words(what),
    typed(expected, format ?? "0"),
    worked(`=${formula}`, format ?? "0"),
    worked(`=IF(ISERROR(${got}),"CHECK",IF(ABS(${got}-${wanted})<=${tolerance},"OK","CHECK"))`),
    words(source),
  ];
}

/** Formula for the cover: how many checks need a look. */
export function checksSummary(count: number): string {
  const status = `${NAME}!$D$${FIRST + 1}:$D$${FIRST + count}`;
  return `IF(COUNTIF(${status},"OK")=${count},"OK: all ${count}","CHECK: "&(${count}-COUNTIF(${status},"OK"))&" of ${count} need a look")`;
}

/** Known answers recomputed, and what is odd in the workbook counted. */
export function checksSheet(checks: readonly Check[]): SheetModel {
  const rows: Row[] = [
    [title("Checks: known answers, and what needs a look")],
    [note("A CHECK is a question, not always a fault: the sheet it names says more.")],
    ["calc", "type", "calc", "calc", "calc"].map((who) => mark(who as "calc")),
    ["What", "Expected", "Found", "Status", "Where from, where to look"].map(heading),
    ...checks.map(checkRow),
  ];
  return helperSheet(NAME, rows, {
    columnWidths: [290, 70, 70, 70, 330],
    rowHeights: { 0: 28 },
    statusColumns: [3],
    lines: [FIRST, FIRST + checks.length - 1],
    frozenRows: FIRST,
    print: { repeatedRows: [HEADINGS, HEADINGS] },
  });
}
