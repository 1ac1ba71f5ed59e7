import { cellName } from "../../formula/addresses";
import type { SheetModel } from "../model/sheet-model";
import type { Lines } from "./lines-sheet";
import {
  field,
  heading,
  helperSheet,
  inFahrenheit,
  mark,
  note,
  type Row,
  title,
  typed,
  words,
  worked,
} from "./parts/sheet-parts";
import { NOT_ASSESSED, type TreatmentLabel, treatmentColumn } from "./parts/treatment";
import type { Steels } from "./steels-sheet";

const LINE = 2;
const ASKED = ["use", "low", "high", "aim", "length", "thickness", "quench"] as const;
const NAMES: Readonly<Record<(typeof ASKED)[number], string>> = {
  use: "Use",
  low: "HRC low",
  high: "HRC high",
  aim: "Aim HRC",
  length: "Length mm",
  thickness: "Thickness mm",
  quench: "Quench",
};
const HEADINGS = LINE + ASKED.length + 3;
const FIRST = HEADINGS + 1;

const fixed = (row: number) => cellName(row, 1, "both");
const asked = (key: (typeof ASKED)[number]) => fixed(LINE + 1 + ASKED.indexOf(key));

interface Answer {
  readonly heading: string;
  readonly width: number;
  readonly format?: string;
  readonly formula: (cell: (column: number) => string) => string;
}

/** Grade stands in column 1, the temper in column 3. */
const GRADE = 1;
const TEMPER = 3;
const NONE = "none";

function answers(steels: Steels): readonly Answer[] {
  const found = (key: "verdict" | "rack" | "price") => (cell: (column: number) => string) =>
    steels.lookup(key, cell(0));
  const treated = (label: TreatmentLabel) => (cell: (column: number) => string) => {
    const keys = (["use", "aim", "quench", "thickness", "length"] as const).map(asked);
    return `IFERROR(INDEX(BLADE.TREATMENT(${[cell(GRADE), ...keys].join(",")}),1,${treatmentColumn(label)}),"${NOT_ASSESSED}")`;
  };
  const section = (bath: string) => (cell: (column: number) => string) =>
    `IFNA(INDEX(BLADE.MAX_SECTION(${cell(GRADE)},"${bath}"),1,1),"not held")`;
  return [
    { heading: "Against the band", width: 110, formula: treated("band status") },
    {
      heading: "Temper °C",
      width: 60,
      format: "0",
      formula: treated("temper C"),
    },
    {
      heading: "Temper °F",
      width: 60,
      format: "0",
      formula: (cell) => `IF(ISNUMBER(${cell(TEMPER)}),${inFahrenheit(cell(TEMPER))},"${NONE}")`,
    },
    { heading: "Hardens through, slow oil mm", width: 84, format: "0.0", formula: section("slow oil") },
    { heading: "Hardens through, fast oil mm", width: 84, format: "0.0", formula: section("fast oil") },
    { heading: "In the rack kg", width: 60, format: "0.0", formula: found("rack") },
    { heading: "Price a kg", width: 60, format: "#,##0.00", formula: found("price") },
    { heading: "Mill's figures", width: 170, formula: found("verdict") },
    { heading: "Chance of the band", width: 60, format: "0 %", formula: treated("chance") },
    { heading: "Next step", width: 230, formula: treated("next step") },
    {
      heading: "Cautions",
      width: 330,
      formula: (cell) => `IF(${treated("cautions")(cell)}="","${NONE}",${treated("cautions")(cell)})`,
    },
  ];
}

function stockRow(steels: Steels, index: number): Row {
  const row = FIRST + index;
  const cell = (column: number) => `$${cellName(row, column)}`;
  const id = steels.at("id", index);
  return [
    worked(`=IF(${id}="","",${id})`),
    worked(`=IF(${cell(0)}="","",${steels.lookup("grade", cell(0))})`),
    ...answers(steels).map(({ formula, format }) => {
      const guarded = `=IF(OR(${cell(0)}="",${fixed(LINE)}=""),"",${formula(cell)})`;
      return format === undefined ? words(guarded) : worked(guarded, format);
    }),
  ];
}

/** Every steel in stock held against one line of the run. */
export function steelChoiceSheet(lines: Lines, steels: Steels, names: readonly string[]): SheetModel {
  const given = ASKED.map((key) =>
    field(NAMES[key], worked(`=IF(${fixed(LINE)}="","",${lines.lookup(key, fixed(LINE))})`), "calc"),
  );
  const columns = answers(steels);
  const rows: Row[] = [
    [title("Steel choice: the steels in stock against one line")],
    [
      note(
        "Type a line. HRC is that of the line as planned. Thickness that hardens through holds within a factor of 1.5.",
      ),
    ],
    field("Line", typed(names[0] ?? ""), "type", "another line may be typed here"),
    ...given,
    [],
    [mark("calc"), mark("calc"), ...columns.map(() => mark("calc"))],
    [heading("Steel"), heading("Grade"), ...columns.map(({ heading: text }) => heading(text))],
    ...Array.from({ length: steels.count }, (_, index) => stockRow(steels, index)),
    [],
    [
      note(
        "The temper is for hardness alone, of a blade that hardened through; no thickness is published for medium oil: it lies between.",
      ),
    ],
  ];
  return helperSheet("Steel choice", rows, {
    columnWidths: [96, 150, ...columns.map(({ width }) => width)],
    rowHeights: { 0: 28 },
    statusColumns: [9],
    bladeStatusColumns: [2],
    lines: [FIRST, FIRST + steels.count - 1],
    wordLists: [{ column: 1, words: names, rows: [LINE, LINE] }],
    frozenColumns: 2,
    print: { landscape: true },
  });
}
