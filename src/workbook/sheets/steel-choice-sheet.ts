import { cellName } from "../../formula/addresses";
import type { CellModel, SheetModel } from "../model/sheet-model";
import type { Lines } from "./lines-sheet";
import {
  beside,
  field,
  fixedBlock,
  heading,
  helperSheet,
  inFahrenheit,
  mark,
  note,
  overScrolled,
  type Row,
  title,
  typed,
  words,
  worked,
} from "./parts/sheet-parts";
import type { Steels } from "./steels-sheet";

const FROZEN = 2;
const LINE = 2;
const ASKED = ["use", "length", "thickness", "quench", "steel"] as const;
const NAMES: Readonly<Record<(typeof ASKED)[number], string>> = {
  use: "Use",
  length: "Length mm",
  thickness: "Thickness mm",
  quench: "Quench",
  steel: "Steel as planned",
};
const STAINLESS = LINE + ASKED.length + 1;
const KILN = STAINLESS + 1;
const HEADINGS = KILN + 3;
const FIRST = HEADINGS + 1;

const fixed = (row: number) => cellName(row, 1, "both");
const asked = (key: (typeof ASKED)[number]) => fixed(LINE + 1 + ASKED.indexOf(key));

/** The names of the row, and the first of them, under which the rack lists the steel. */
const STEEL = 0;
const GRADE = 1;
const NONE = "none";

/** Columns of STEELS_FOR, from 1. */
const RESULT = {
  status: 2,
  temper: 3,
  likely: 4,
  chance: 5,
  through: 6,
  toughness: 7,
  edge: 8,
  rust: 9,
  ease: 10,
  why: 12,
  givesUp: 13,
} as const;

/** The list of the whole rack for a line, prices beside it, as a formula without its equals sign. */
export function rackCall(
  { use, thickness, quench, length }: Readonly<Record<"use" | "thickness" | "quench" | "length", string>>,
  steels: Steels,
  rest: string,
): string {
  return `BLADE.STEELS_FOR(${use},${thickness},${quench},${length},${rest.replace("RACK", `${steels.block("grade")},${steels.block("price")}`)})`;
}

interface Answer {
  readonly heading: string;
  readonly width: number;
  readonly format?: string;
  readonly formula: (cell: (column: number) => string) => string;
}

const blade = {
  use: asked("use"),
  thickness: asked("thickness"),
  quench: asked("quench"),
  length: asked("length"),
};

/** A column of the answer for the one steel of the row; what is left empty on purpose is said. */
function told(column: number) {
  return (cell: (column: number) => string) => {
    const call = `BLADE.STEELS_FOR(${blade.use},${blade.thickness},${blade.quench},${blade.length},${fixed(STAINLESS)},${cell(GRADE)},,1,${fixed(KILN)})`;
    const found = `INDEX(${call},1,${column})`;
    return `IF(${found}="","${NONE}",${found})`;
  };
}

function answers(steels: Steels): readonly Answer[] {
  const found = (key: "verdict" | "rack" | "price") => (cell: (column: number) => string) =>
    `INDEX(${steels.block(key)},MATCH(${cell(GRADE)},${steels.block("grade")},0))`;
  const temper = (cell: (column: number) => string) => cell(3);
  return [
    { heading: "Against the band", width: 96, formula: told(RESULT.status) },
    { heading: "Temper °C", width: 60, format: "0", formula: told(RESULT.temper) },
    {
      heading: "Temper °F",
      width: 60,
      format: "0",
      formula: (cell) => `IF(ISNUMBER(${temper(cell)}),${inFahrenheit(temper(cell))},"${NONE}")`,
    },
    { heading: "Likely HRC", width: 56, format: "0", formula: told(RESULT.likely) },
    { heading: "Chance", width: 56, format: "0 %", formula: told(RESULT.chance) },
    { heading: "Hardens through mm", width: 70, format: "0.0", formula: told(RESULT.through) },
    { heading: "Toughness 1-9", width: 84, format: "0", formula: told(RESULT.toughness) },
    { heading: "Edge holding 1-9", width: 60, format: "0", formula: told(RESULT.edge) },
    { heading: "Rust", width: 80, formula: told(RESULT.rust) },
    { heading: "What the shop needs", width: 110, formula: told(RESULT.ease) },
    { heading: "In the rack kg", width: 60, format: "0.0", formula: found("rack") },
    { heading: "Price a kg", width: 60, format: "#,##0.00", formula: found("price") },
    { heading: "Mill's figures", width: 150, formula: found("verdict") },
    { heading: "Why", width: 260, formula: told(RESULT.why) },
    { heading: "What it gives up", width: 240, formula: told(RESULT.givesUp) },
  ];
}

/**
 * The names of the whole list, in a hidden column: one formula fills it, so that the list is made once for all rows. It
 * always fills as many cells as the rack has rows, also where the list is refused.
 */
function rankedNames(steels: Steels): CellModel {
  const list = rackCall(blade, steels, `${fixed(STAINLESS)},RACK,${steels.count},${fixed(KILN)}`);
  const rows = `ROW(${steels.block("grade")})`;
  const places = `${rows}-ROW(${steels.at("grade", 0)})+1`;
  return worked(`=IF(${rows}>0,IFERROR(INDEX(${list},${places},${STEEL + 1}),"${NONE}"))`);
}

function rankRow(steels: Steels, index: number, names: string): Row {
  const row = FIRST + index;
  const cell = (column: number) => `$${cellName(row, column)}`;
  const isHeld = `COUNTIF(${steels.block("grade")},"?*")`;
  return [
    worked(
      `=IF(${fixed(LINE)}="","",IF(${index + 1}>${isHeld},"${NONE}",IFERROR(INDEX(${names},${index + 1},1),"${NONE}")))`,
    ),
    worked(
      `=IF(OR(${cell(STEEL)}="",${cell(STEEL)}="${NONE}"),"",LEFT(${cell(STEEL)},FIND(",",${cell(STEEL)}&",")-1))`,
    ),
    ...answers(steels).map(({ formula, format }) => {
      const guarded = `=IF(${cell(GRADE)}="","",${formula(cell)})`;
      return format === undefined ? words(guarded) : worked(guarded, format);
    }),
  ];
}

/** The steels in the rack for one line of the run, the most fitting first, with why and what each gives up. */
export function steelChoiceSheet(lines: Lines, steels: Steels, names: readonly string[]): SheetModel {
  const given = ASKED.map((key) =>
    field(NAMES[key], worked(`=IF(${fixed(LINE)}="","",${lines.lookup(key, fixed(LINE))})`), "calc"),
  );
  const columns = answers(steels);
  const shown = FROZEN + columns.length;
  const [gap, list] = [shown, shown + 1];
  const ranked = Array.from({ length: steels.count }, (_, index) =>
    rankRow(steels, index, fixedBlock(FIRST, list, steels.count)),
  );
  const rows: Row[] = [
    overScrolled(FROZEN, title("Steel choice: which of the steels in the rack for a line")),
    overScrolled(
      FROZEN,
      note(
        "Type a line. What cannot be stands last, with its reason; twins of several standards share a row.",
      ),
    ),
    field("Line", typed(names[0] ?? ""), "type", "another line may be typed here"),
    ...given,
    field("Stainless", typed("either"), "type", "yes, no or either"),
    field("Kiln", typed("yes"), "type", "no: a forge only"),
    [],
    [mark("calc"), mark("calc"), ...columns.map(() => mark("calc"))],
    [heading("Steel"), heading("In the rack as"), ...columns.map(({ heading: text }) => heading(text))],
    ...beside(ranked, [[rankedNames(steels)]], list),
    [],
    overScrolled(
      FROZEN,
      note(
        "In order: a usual kind or one that serves, the band in reach, suitability, depth under clay, chance, margin in the quench, being named, need of the shop, price: no score. The thickness holds within a factor of 1.5.",
      ),
    ),
  ];
  return helperSheet("Steel choice", rows, {
    columnWidths: [130, 136, ...columns.map(({ width }) => width), 24, 130],
    hiddenColumns: [gap, list],
    rowHeights: { 0: 28 },
    statusColumns: [14],
    bladeStatusColumns: [2],
    lines: [FIRST, FIRST + steels.count - 1],
    wordLists: [
      { column: 1, words: names, rows: [LINE, LINE] },
      { column: 1, words: ["either", "yes", "no"], rows: [STAINLESS, STAINLESS] },
      { column: 1, words: ["yes", "no"], rows: [KILN, KILN] },
    ],
    frozenColumns: FROZEN,
    print: {
      landscape: true,
      area: { row: 0, column: 0, lastRow: rows.length - 1, lastColumn: shown - 1 },
    },
  });
}
