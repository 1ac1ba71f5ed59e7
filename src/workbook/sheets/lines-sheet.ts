import { cellName } from "../../formula/addresses";
import { listedWords } from "./parts/listed-words";
import {
  type CellOf,
  calcColumn,
  FIRST_ROW,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import { fahrenheitOf, NOT_ASSESSED, type TreatmentLabel, treatmentFigure } from "./parts/treatment";
import type { Recipes } from "./recipe-sheet";
import type { RunLine } from "./run-r07/run";

/** Every column: what the smith fills in, and what the sheet works out. */
export type ColumnKey =
  | keyof RunLine
  | "bevel"
  | "curve"
  | "flat"
  | "rib"
  | "starts"
  | "mass"
  | "temperC"
  | "temperF"
  | "low"
  | "high"
  | "band"
  | "status"
  | "chance"
  | "next"
  | "through"
  | "caution"
  | "check";

type At = CellOf<ColumnKey>;

/** What the lines are made of, and the sheets that they read; those are made after them. */
interface Sources {
  readonly lines: readonly RunLine[];
  readonly recipes: () => Recipes;
  readonly sheet: () => TableSheet<ColumnKey>;
  /** The mass of a line's blade in g: as measured station by station, else as given. */
  readonly stations: (line: string, otherwise: string, index: number) => string;
  /** What is odd about a line across the sheets, in words. */
  readonly batches: (at: At, index: number) => string;
}

const call = (name: string, at: At, keys: readonly ColumnKey[]) => `BLADE.${name}(${keys.map(at).join(",")})`;
const band = (at: At) => call("BAND", at, ["use"]);
const mass = (at: At) =>
  call("MASS", at, [
    "length",
    "width",
    "thickness",
    "grind",
    "tipWidth",
    "tipThickness",
    "edge",
    "steel",
    "bevel",
    "curve",
    "flat",
    "rib",
  ]);

const WHOLE = { format: "0" };
const SIZE = { format: "0.0" };
const LONG = { role: "words", wrap: true } as const;

/**
 * The columns left to right: what a smith decides by comes first, so that it stands beside the pane without scrolling;
 * sizes and the order follow. One formula a cell, none that spills.
 */
function lineColumns({ lines, recipes, sheet, stations, batches }: Sources): TableColumns<ColumnKey> {
  const given = (key: keyof RunLine) => lines.map((line) => line[key] ?? null);
  const treated = (label: TreatmentLabel, otherwise?: string) => (_: At, index: number) => {
    const figure = treatmentFigure(sheet(), recipes(), label, index);
    return otherwise === undefined ? figure : `IFERROR(${figure},"${otherwise}")`;
  };
  const words = (name: string) => ({ words: listedWords(name) });
  return {
    line: typedColumn("Line", 36, given("line"), { role: "label" }),
    item: typedColumn("Item", 110, given("item"), { role: "label", wrap: true }),
    steel: typedColumn("Steel", 84, given("steel"), words("STEELS")),
    starts: calcColumn("Starts", 46, (at) => call("STARTS", at, ["good", "yield", "confidence"]), WHOLE),
    mass: calcColumn("Mass g", 46, (at, index) => stations(at("line"), mass(at), index), WHOLE),
    aim: typedColumn("Aim HRC", 42, given("aim"), WHOLE),
    // The sentence of whatever is wrong with the treatment stands here; the other cells say that they were not assessed.
    temperC: calcColumn("Temper °C", 56, treated("temper C"), { ...WHOLE, filled: "either" }),
    temperF: calcColumn("Temper °F", 56, (at) => fahrenheitOf(at("temperC")), WHOLE),
    low: calcColumn("HRC low", 42, treated("HRC low", NOT_ASSESSED), WHOLE),
    high: calcColumn("HRC high", 42, treated("HRC high", NOT_ASSESSED), WHOLE),
    band: calcColumn("Band HRC", 52, (at) => `INDEX(${band(at)},1,1)&"–"&INDEX(${band(at)},1,3)`),
    status: calcColumn("Against the band", 100, treated("band status", NOT_ASSESSED), {
      isBladeStatus: true,
      wrap: true,
    }),
    chance: calcColumn("Chance of the band", 56, treated("chance", NOT_ASSESSED), { format: "0 %" }),
    through: calcColumn("Hardens through", 100, treated("through-hardens", NOT_ASSESSED), {
      isBladeStatus: true,
      wrap: true,
    }),
    check: calcColumn("Cross-check", 190, (at, index) => batches(at, index), { isStatus: true, wrap: true }),
    next: calcColumn("Next step", 230, treated("next step", NOT_ASSESSED), LONG),
    caution: calcColumn("Caution", 330, treated("cautions", NOT_ASSESSED), LONG),
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
    bevel: typedColumn("Bevel height mm", 74, given("bevel"), SIZE),
    curve: typedColumn("Radius or bulge mm", 74, given("curve"), SIZE),
    flat: typedColumn("Flat or rib width mm", 74, given("flat"), SIZE),
    rib: typedColumn("Rib height mm", 66, given("rib"), SIZE),
  };
}

const nowhere = (): never => {
  throw new RangeError("the order of the columns is known without the other sheets");
};

/** The columns in their order on the sheet. */
export const columnKeys = Object.keys(
  lineColumns({ lines: [], recipes: nowhere, sheet: nowhere, stations: nowhere, batches: nowhere }),
) as readonly ColumnKey[];

/** Address of one figure of the sheet, line counted from 0. */
export function lineCell(line: number, key: ColumnKey): string {
  return cellName(FIRST_ROW + line, columnKeys.indexOf(key));
}

/** The lines of a run: what the smith decides, and what follows for hardness, temper, mass and starts. */
export function linesSheet(given: Omit<Sources, "sheet">, count: number): TableSheet<ColumnKey> {
  const made: TableSheet<ColumnKey> = new TableSheet(
    "Lines",
    lineColumns({ ...given, sheet: () => made }),
    count,
    {
      title: "Lines: what is made, of which steel, and what follows from it",
      note: "A row a line of the order. Mass: blade without tang. Temper is a starting point: test one and step up.",
      frozenColumns: 2,
    },
  );
  return made;
}

export type Lines = TableSheet<ColumnKey>;
