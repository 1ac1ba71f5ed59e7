import { cellName } from "../../formula/addresses";
import { listedWords } from "./parts/listed-words";
import { inFahrenheit } from "./parts/sheet-parts";
import {
  type CellOf,
  calcColumn,
  FIRST_ROW,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import type { RunLine } from "./run-r07/run";

/** Every column: what the smith fills in, and what the sheet works out. */
export type ColumnKey =
  | keyof RunLine
  | "starts"
  | "mass"
  | "temperC"
  | "temperF"
  | "low"
  | "high"
  | "band"
  | "status"
  | "caution"
  | "estimate";

type At = CellOf<ColumnKey>;

const call = (name: string, at: At, keys: readonly ColumnKey[]) => `BLADE.${name}(${keys.map(at).join(",")})`;
const range = (at: At) => call("TEMPERED_RANGE", at, ["steel", "temperC"]);
const band = (at: At) => call("BAND", at, ["use"]);
const assess = (at: At) => call("ASSESS", at, ["use", "steel", "low", "high", "length", "quench", "temperC"]);
const mass = (at: At) =>
  call("MASS", at, ["length", "width", "thickness", "grind", "tipWidth", "tipThickness", "edge", "steel"]);

/** No caution is said too: a cell with an empty text is worked out anew by LibreOffice, which has no such function. */
const spoken = (formula: string) => `IF(${formula}="","none",${formula})`;

const WHOLE = { format: "0" };
const SIZE = { format: "0.0" };
const LONG = { role: "words", wrap: true } as const;

/**
 * The columns left to right: what a smith decides by comes first, so that it stands beside the pane without scrolling;
 * sizes and the order follow. One formula a cell, none that spills.
 */
function lineColumns(lines: readonly RunLine[]): TableColumns<ColumnKey> {
  const given = (key: keyof RunLine) => lines.map((line) => line[key]);
  const words = (name: string) => ({ words: listedWords(name) });
  return {
    line: typedColumn("Line", 36, given("line"), { role: "label" }),
    item: typedColumn("Item", 110, given("item"), { role: "label", wrap: true }),
    steel: typedColumn("Steel", 84, given("steel"), words("STEELS")),
    starts: calcColumn("Starts", 46, (at) => call("STARTS", at, ["good", "yield", "confidence"]), WHOLE),
    mass: calcColumn("Mass g", 46, mass, WHOLE),
    aim: typedColumn("Aim HRC", 42, given("aim"), WHOLE),
    temperC: calcColumn("Temper °C", 56, (at) => `ROUND(${call("TEMPER_FOR", at, ["steel", "aim"])},0)`, {
      ...WHOLE,
      filled: "either",
    }),
    temperF: calcColumn("Temper °F", 56, (at) => inFahrenheit(at("temperC")), WHOLE),
    low: calcColumn("HRC low", 42, (at) => `INDEX(${range(at)},1,1)`, WHOLE),
    high: calcColumn("HRC high", 42, (at) => `INDEX(${range(at)},1,3)`, WHOLE),
    band: calcColumn("Band HRC", 52, (at) => `INDEX(${band(at)},1,1)&"–"&INDEX(${band(at)},1,3)`),
    status: calcColumn("Against the band", 100, (at) => `INDEX(${assess(at)},1,1)`, {
      isStatus: true,
      wrap: true,
    }),
    caution: calcColumn("Caution", 330, (at) => spoken(`INDEX(${assess(at)},1,2)`), LONG),
    estimate: calcColumn(
      "How good the hardness is",
      330,
      (at) => `TEXTJOIN("; ",TRUE,INDEX(${range(at)},1,4),INDEX(${range(at)},1,5))`,
      LONG,
    ),
    use: typedColumn("Use", 172, given("use"), { ...words("USES"), wrap: true }),
    quench: typedColumn("Quench", 96, given("quench"), { ...words("QUENCHES"), wrap: true }),
    good: typedColumn("Good wanted", 62, given("good"), WHOLE),
    yield: typedColumn("Yield", 52, given("yield"), { format: "0.00" }),
    confidence: typedColumn("Confidence", 80, given("confidence"), { format: "0.00" }),
    grind: typedColumn("Grind", 86, given("grind"), words("GRINDS")),
    length: typedColumn("Length mm", 62, given("length"), WHOLE),
    width: typedColumn("Width mm", 60, given("width"), SIZE),
    thickness: typedColumn("Thickness mm", 76, given("thickness"), SIZE),
    tipWidth: typedColumn("Tip width mm", 68, given("tipWidth"), SIZE),
    tipThickness: typedColumn("Tip thickness mm", 76, given("tipThickness"), SIZE),
    edge: typedColumn("Behind edge mm", 74, given("edge"), SIZE),
  };
}

/** The columns in their order on the sheet. */
export const columnKeys = Object.keys(lineColumns([])) as readonly ColumnKey[];

/** Address of one figure of the sheet, line counted from 0. */
export function lineCell(line: number, key: ColumnKey): string {
  return cellName(FIRST_ROW + line, columnKeys.indexOf(key));
}

/** The lines of a run: what the smith decides, and what follows for hardness, temper, mass and starts. */
export function linesSheet(lines: readonly RunLine[], count: number): TableSheet<ColumnKey> {
  return new TableSheet("Lines", lineColumns(lines), count, {
    title: "Lines: what is made, of which steel, and what follows from it",
    note: "A row a line of the order. Mass: blade without tang. Temper is a starting point: test one and step up.",
    frozenColumns: 2,
  });
}

export type Lines = TableSheet<ColumnKey>;
