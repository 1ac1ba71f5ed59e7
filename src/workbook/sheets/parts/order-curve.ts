import { cellName, columnLetters, type Rectangle } from "../../../formula/addresses";
import { textLiteral } from "../../../formula/tokens";
import { picturedWords } from "../../model/table-curves";
import type { Recipes } from "../recipe-sheet";
import { aimOf, bandEnd, bothScales, isBeyondReach } from "./doc-rows";
import { FORMAT, filled, note, type Row, worked } from "./sheet-parts";

/** Tempers of the curve: as many below the one that is ordered as above it. */
const POINTS = 11;
const MIDDLE = (POINTS - 1) / 2;

/** First column of the table, beside the paper: a blank column stands between the two. None of them is shown. */
const TABLE = { column: 5, columns: 6 } as const;
const [X, LIKELY, LOW, HIGH, AIM, ORDERED] = [0, 1, 2, 3, 4, 5].map((at) => TABLE.column + at) as [
  number,
  number,
  number,
  number,
  number,
  number,
];

/** Pixels of the columns beside the paper, the blank one first. */
export const CURVE_WIDTHS: readonly number[] = [24, 76, 92, 128, 132, 92, 120];

/** Cells of what is ordered. */
export interface Ordered {
  readonly grade: string;
  readonly line: (key: "status" | "temperC" | "aim" | "low" | "high" | "use") => string;
  readonly recipe: (key: Parameters<Recipes["lookup"]>[0]) => string;
  /** The cell that names the subject of the page. */
  readonly named: string;
}

const optional = (cell: string) => `IF(${cell}="","",${cell})`;

/** Ends of the tempers for which the steel has figures, in the whole time at heat. */
function ends({ grade, recipe }: Ordered): readonly [from: string, to: string] {
  const curve = `BLADE.TEMPER_CURVE(${grade},"","","",${recipe("hours")}*${recipe("tempers")})`;
  return [`IFERROR(INDEX(${curve},1,1),"")`, `IFERROR(INDEX(${curve},ROWS(${curve}),1),"")`];
}

/** The tempers of the table by their row: the ordered one is among them, so that its place on the curve is exact. */
function temperFormula(of: Ordered, at: number, x: (at: number) => string): string {
  const [first, last, middle] = [x(0), x(POINTS - 1), x(MIDDLE)];
  const [from, to] = ends(of);
  const chosen = of.line("temperC");
  if (at === 0) return from;
  if (at === POINTS - 1) return to;
  if (at === MIDDLE)
    return `IF(ISNUMBER(${first}),IF(IFERROR(AND(${chosen}>=${first},${chosen}<=${last}),FALSE),${chosen},ROUND((${first}+${last})/2,0)),"")`;
  const [start, end, share] =
    at < MIDDLE ? [first, middle, at / MIDDLE] : [middle, last, (at - MIDDLE) / MIDDLE];
  return `IF(ISNUMBER(${first}),ROUND(${start}+(${end}-${start})*${share},0),"")`;
}

function likelyFormula({ grade, recipe }: Ordered, temper: string): string {
  const known = (["hours", "tempers", "knownC", "knownHrc", "chosenHarden", "quenchTo"] as const).map((key) =>
    optional(recipe(key)),
  );
  return `IF(ISNUMBER(${temper}),IFERROR(BLADE.TEMPERED_HRC(${grade},${temper},${known.join(",")}),""),"")`;
}

/** The range of the use and the aim; none where no paper may name a hardness. */
function asked({ line }: Ordered): readonly [low: string, high: string, aim: string] {
  const agreed = (formula: string) => `IF(${isBeyondReach(line)},"",IFERROR(${formula},""))`;
  const aim = aimOf(line);
  return [
    agreed(bandEnd(line("use"), 1)),
    agreed(bandEnd(line("use"), 3)),
    agreed(`IF(ISNUMBER(${aim}),${aim},"")`),
  ];
}

/** A heading that says its figure: the key of the chart then says it too. */
const withFigure = (name: string, cell: string, unit: string) =>
  worked(`=${textLiteral(name)}&IF(${cell}="",""," "&ROUND(${cell},0)&" ${unit}")`);

function headings({ named, grade }: Ordered, cell: (at: number, column: number) => string): Row {
  return [
    worked("Temper °C"),
    worked(`="likely HRC"&IF(${named}="","",", "&${grade})`),
    withFigure("range low", cell(0, LOW), "HRC"),
    withFigure("range high", cell(0, HIGH), "HRC"),
    withFigure("aim", cell(0, AIM), "HRC"),
    worked(`="ordered"&IF(${cell(MIDDLE, ORDERED)}="",""," "&${bothScales(cell(MIDDLE, X))})`),
  ];
}

function pointRow(of: Ordered, at: number, cell: (at: number, column: number) => string): Row {
  const waits = (formula: string) => `=IF(${of.named}="","",${formula})`;
  const temper = cell(at, X);
  const wanted = asked(of).map((formula, place) =>
    worked(at === 0 ? waits(formula) : `=${cell(0, LOW + place)}`, FORMAT.whole),
  );
  const isOrdered = `IF(AND(ISNUMBER(${cell(at, LIKELY)}),IFERROR(${temper}=${of.line("temperC")},FALSE)),${cell(at, LIKELY)},"")`;
  return [
    worked(waits(temperFormula(of, at, (point) => cell(point, X))), FORMAT.whole),
    worked(waits(likelyFormula(of, temper)), FORMAT.tenth),
    ...wanted,
    at === MIDDLE ? worked(waits(isOrdered), FORMAT.tenth) : filled(),
  ];
}

/** Rows that the picture of a curve takes on the paper. */
const CURVE_ROWS: number = POINTS + 1;

/** The cells of a paper that the picture covers. @param row - Its first row. */
export const curvePlace = (row: number): Rectangle => ({
  row,
  column: 0,
  lastRow: row + CURVE_ROWS - 1,
  lastColumn: 3,
});

/** What stands beside the last row above the picture: the title of the curve. */
export const CURVE_TITLE: Row = [
  ...Array.from({ length: TABLE.column }, () => undefined),
  note("Likely hardness over temper, by estimate"),
];

/**
 * The tempering curve of what is ordered: a picture on the paper, and in hidden columns the table that it is drawn from,
 * with the range of the use, the aim and the temper ordered.
 *
 * @param row - First row of the picture.
 */
export function curveRows(of: Ordered, row: number): Row[] {
  const cell = (at: number, column: number) => cellName(row + 1 + at, column, "both");
  const last = columnLetters(TABLE.column + TABLE.columns - 1);
  const asking = picturedWords(`${columnLetters(TABLE.column)}:${last}`);
  const gap = (count: number) => Array.from({ length: count }, () => undefined);
  return [
    [{ content: asking, role: "note" }, ...gap(TABLE.column - 1), ...headings(of, cell)],
    ...Array.from({ length: POINTS }, (_, at): Row => [...gap(TABLE.column), ...pointRow(of, at, cell)]),
  ];
}
