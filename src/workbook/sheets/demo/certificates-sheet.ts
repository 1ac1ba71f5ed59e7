import { cellName } from "../../../formula/addresses";
import type { SheetModel } from "../../model/sheet-model";
import {
  FORMAT,
  field,
  filled,
  fixedBlock,
  fixedName,
  headed,
  heading,
  helperSheet,
  note,
  type Row,
  room,
  title,
  typed,
  words,
  worked,
} from "../parts/sheet-parts";
import heats from "../run-r07/heats.json";
import { planningCell } from "./planning-sheet";

const { elements, rows: bought } = heats;

/** Room for a verdict in two lines, for an analysis in three. */
const LINE_HEIGHT = 34;
const OWN_HEIGHT = 50;
const HEADINGS = 2;
/** First heat, below the headings and the marks. */
export const FIRST_HEAT = HEADINGS + 2;
const GRADE = 1;
const HEAT_NUMBER = 2;
/** Before the figures, so that it stands in sight without scrolling. */
export const VERDICT = 3;
const FIRST_ELEMENT = 4;

const ids = fixedBlock(FIRST_HEAT, 0, bought.length);
const grades = fixedBlock(FIRST_HEAT, GRADE, bought.length);
const figures = fixedBlock(FIRST_HEAT, FIRST_ELEMENT, bought.length, elements.length);
const symbols = fixedBlock(HEADINGS, FIRST_ELEMENT, 1, elements.length);

/** Elements and figures of one heat, as two arguments. */
function analysed(row: number): string {
  const last = FIRST_ELEMENT + elements.length - 1;
  return `${symbols},${cellName(row, FIRST_ELEMENT)}:${cellName(row, last)}`;
}

function verdict(row: number): string {
  const missing = `IF(${cellName(row, HEAT_NUMBER)}="","no heat number; ","")`;
  const table = `BLADE.CERTIFICATE(${cellName(row, GRADE)},${analysed(row)})`;
  return `=${missing}&LET(found,${table},INDEX(found,ROWS(found),5))`;
}

function boughtRows(): Row[] {
  const typedIn = (text: string) => [text, "type"] as const;
  const [names, marks] = headed([
    ...["Bought", "Grade ordered", "Heat no."].map(typedIn),
    ["Verdict", "calc"],
    ...elements.map(typedIn),
  ]);
  const rows = bought.map((given, index): Row => {
    const row = FIRST_HEAT + index;
    const [id = "", grade = "", heat = null, ...values] = given;
    return [
      typed(id),
      typed(grade),
      typed(heat),
      words(verdict(row)),
      ...values.map((value) => typed(value, FORMAT.massPercent)),
    ];
  });
  return [names, marks, ...rows];
}

const OWN_TITLE = FIRST_HEAT + bought.length + 1;
/** First line of the table that holds each heat's own figures beside those of its grade. */
export const FIRST_OWN = OWN_TITLE + 4;

const TEMPER = 2;
const BY_HEAT = 3;
/** HRC likely by the grade's name, and the band by the heat's own analysis. */
export const BY_NAME = 4;
export const OWN_BAND = 5;

function ownRow(index: number, planning: string): Row {
  const heat = FIRST_HEAT + index;
  const row = FIRST_OWN + index;
  const temper = cellName(row, TEMPER);
  const named = `BLADE.TEMPERED_RANGE(${cellName(row, GRADE)},${temper})`;
  const byHeat = `BLADE.TEMPERED_RANGE(${cellName(row, BY_HEAT)},${temper})`;
  return [
    worked(`=${cellName(heat, 0)}`),
    worked(`=${cellName(heat, GRADE)}`),
    worked(`='${planning}'!${planningCell(index, "temperC")}`, FORMAT.whole),
    words(`=BLADE.ANALYSIS(${analysed(heat)})`),
    worked(`=INDEX(${named},1,2)`, FORMAT.whole),
    ...[1, 2, 3].map((column) => worked(`=INDEX(${byHeat},1,${column})`, FORMAT.whole)),
  ];
}

/** Hardness by the heat's own analysis beside that of the grade by name, at the temper of the plan. */
function ownRows(planning: string): Row[] {
  const [names, marks] = headed(
    [
      "Bought",
      "Grade",
      "Temper °C",
      "Analysis",
      "By name HRC",
      "Heat low HRC",
      "Heat likely",
      "Heat high",
    ].map((text) => [text, "calc"] as const),
  );
  return [
    [title("What the heat itself gives")],
    [
      note(
        "An analysis is taken wherever a steel is. It is worked by formula, ±3 HRC; by name a steel keeps its own curve where one is published.",
      ),
    ],
    names,
    marks,
    ...bought.map((_, index) => ownRow(index, planning)),
  ];
}

const ONE_TITLE = FIRST_OWN + bought.length + 1;
/** The cell that names the heat looked at, and the first cell of its certificate. */
export const LOOKED_AT = { row: ONE_TITLE + 1, column: 1 } as const;
export const CERTIFICATE_AT = { row: ONE_TITLE + 3, column: 0 } as const;

function oneRows(): Row[] {
  const place = `MATCH(${fixedName(LOOKED_AT.row, LOOKED_AT.column)},${ids},0)`;
  const table = `=BLADE.CERTIFICATE(INDEX(${grades},${place}),${symbols},INDEX(${figures},${place},0))`;
  const figure = filled(FORMAT.massPercent);
  return [
    [title("One certificate, element by element")],
    field("Bought", typed("S3"), "type", "another of the list above may be typed here"),
    ["Element", "Low %", "High %", "Heat %", "Status"].map(heading),
    [worked(table), figure, figure, figure, filled()],
    ...room(elements.length, [filled(), figure, figure, figure, filled()]),
  ];
}

/** Certificates of the steel bought: verdict of each heat, what it does to the hardness, one in full. */
export function certificatesSheet(planning: string): SheetModel {
  const rows: Row[] = [
    [title("Certificates: the mill's figures against the grade ordered")],
    [note("Mass %. An empty cell was not analysed. Change a figure and the verdict follows.")],
    ...boughtRows(),
    [],
    ...ownRows(planning),
    [],
    ...oneRows(),
  ];
  const heights = bought.flatMap((_, index) => [
    [FIRST_HEAT + index, LINE_HEIGHT],
    [FIRST_OWN + index, OWN_HEIGHT],
  ]);
  return helperSheet("Certificates", rows, {
    columnWidths: [64, 84, 84, 220, ...elements.map(() => 60)],
    rowHeights: { 0: 28, [HEADINGS]: 36, [OWN_TITLE + 2]: 50, ...Object.fromEntries(heights) },
    statusColumns: [4],
    lines: [CERTIFICATE_AT.row, CERTIFICATE_AT.row + elements.length],
  });
}
