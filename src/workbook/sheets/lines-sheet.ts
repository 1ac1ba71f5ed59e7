import { cellName } from "../../formula/addresses";
import { listedWords } from "./parts/listed-words";
import { sectionAsks } from "./parts/section-asks";
import {
  type CellOf,
  calcColumn,
  eitherColumn,
  FIRST_ROW,
  STEEL_WIDTH,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import { NOT_ASSESSED, type TreatmentLabel, treatmentFigure } from "./parts/treatment";
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
  /** What is said where that mass is not the one of a straight taper. */
  readonly otherMass: (line: string, taper: string) => string;
  /** Addresses of the yield and the confidence that hold unless a line has its own. */
  readonly usual: Readonly<Record<"yield" | "confidence", string>>;
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
/** Behind the edge a twentieth of a millimetre counts. */
const EDGE = { format: "0.0#" };
const LONG = { role: "words", wrap: true } as const;

/** Pixels of a letter of a name, and of what its cell keeps free; no less than three letters ask for. */
const NAME = { letter: 8, free: 8, least: 3 };

/** Pixels of the column of names, which stays in sight: as wide as the longest name that is known asks for. */
function nameWidth(lines: readonly RunLine[]): number {
  const letters = lines.reduce((most, { line }) => Math.max(most, line.length), NAME.least);
  return NAME.free + NAME.letter * letters;
}

/**
 * The columns left to right: what is typed for every line, the answers, then what holds for all lines until it is
 * typed over and what few grinds need. One formula a cell, none that spills.
 */
function lineColumns({
  lines,
  recipes,
  sheet,
  stations,
  otherMass,
  batches,
  usual,
}: Sources): TableColumns<ColumnKey> {
  const given = (key: keyof RunLine) => lines.map((line) => line[key] ?? null);
  const treated = (label: TreatmentLabel, otherwise?: string) => (_: At, index: number) => {
    const figure = treatmentFigure(sheet(), recipes(), label, index);
    return otherwise === undefined ? figure : `IFERROR(${figure},"${otherwise}")`;
  };
  const words = (name: string) => ({ words: listedWords(name) });
  const of = (...keys: ColumnKey[]) => ({ needs: (at: At) => keys.map(at) });
  const steelKnown = of("steel");
  // Words stand in place of a figure where a line is at fault: they need two rows of a narrow column.
  const planned = { ...WHOLE, wrap: true, ...steelKnown };
  const sizes = of("length", "width", "thickness", "steel");
  const asked = (at: At) => `IF(${sectionAsks(at("grind"))}="",""," ("&${sectionAsks(at("grind"))}&")")`;
  const faults = (at: At) =>
    `IF(ISERROR(${at("starts")}),"starts: see their cell; ","")&IF(ISERROR(${at("mass")}),"mass: see its cell"&${asked(at)}&"; ","")`;
  return {
    line: typedColumn("Line", nameWidth(lines), given("line"), { role: "label" }),
    item: eitherColumn("Item", 74, given("item"), (at) => at("use"), { wrap: true, ...of("use") }),
    use: typedColumn("Use", 84, given("use"), { ...words("USES"), wrap: true }),
    steel: typedColumn("Steel", STEEL_WIDTH, given("steel"), words("STEELS")),
    quench: typedColumn("Quench", 68, given("quench"), { ...words("QUENCHES"), wrap: true }),
    good: typedColumn("Good wanted", 54, given("good"), WHOLE),
    length: typedColumn("Length mm", 50, given("length"), WHOLE),
    width: typedColumn("Width mm", 44, given("width"), SIZE),
    thickness: typedColumn("Thickness mm", 70, given("thickness"), SIZE),
    grind: typedColumn("Grind", 80, given("grind"), words("GRINDS")),
    tipWidth: typedColumn("Tip width mm", 42, given("tipWidth"), SIZE),
    tipThickness: typedColumn("Tip thickness mm", 70, given("tipThickness"), SIZE),
    edge: typedColumn("Behind edge mm", 52, given("edge"), EDGE),
    aim: typedColumn("Aim HRC", 32, given("aim"), WHOLE),
    status: calcColumn("Against the band", 80, treated("band status", NOT_ASSESSED), {
      isBladeStatus: true,
      wrap: true,
      ...steelKnown,
    }),
    chance: calcColumn("Chance of the band", 56, treated("chance", NOT_ASSESSED), {
      format: "0 %",
      wrap: true,
      ...steelKnown,
    }),
    next: calcColumn("Next step", 200, treated("do next", NOT_ASSESSED), { ...LONG, ...steelKnown }),
    // The error of the treatment stands in the cell of the temper; the caution says the same in words.
    temperC: calcColumn("Temper °C", 56, treated("temper C"), { filled: "either", ...planned }),
    // A temper may be typed with its unit, "400F": what follows from it reads this column, which is always a number.
    temperF: calcColumn("Temper °F", 56, treated("temper F", NOT_ASSESSED), planned),
    low: calcColumn("HRC low", 42, treated("HRC low", NOT_ASSESSED), planned),
    high: calcColumn("HRC high", 42, treated("HRC high", NOT_ASSESSED), planned),
    band: calcColumn("Band HRC", 60, (at) => `INDEX(${band(at)},1,1)&"–"&INDEX(${band(at)},1,3)`, of("use")),
    starts: calcColumn("Starts", 46, (at) => call("STARTS", at, ["good", "yield", "confidence"]), {
      ...WHOLE,
      ...of("good"),
    }),
    mass: calcColumn("Mass g", 46, (at, index) => stations(at("line"), mass(at), index), {
      ...WHOLE,
      ...sizes,
    }),
    through: calcColumn("Hardens through", 100, treated("through-hardens", NOT_ASSESSED), {
      isBladeStatus: true,
      wrap: true,
      ...steelKnown,
    }),
    caution: calcColumn("Caution", 250, (at, index) => `${faults(at)}&${treated("be wary of")(at, index)}`, {
      ...LONG,
      ...steelKnown,
    }),
    check: calcColumn(
      "Cross-check",
      190,
      (at, index) => `${batches(at, index)}&${otherMass(at("line"), mass(at))}`,
      { isStatus: true, wrap: true },
    ),
    yield: eitherColumn("Yield", 52, given("yield"), () => usual.yield, { format: "0.00" }),
    confidence: eitherColumn("Confidence", 80, given("confidence"), () => usual.confidence, {
      format: "0.00",
    }),
    bevel: typedColumn("Bevel height mm", 56, given("bevel"), SIZE),
    curve: typedColumn("Radius or bulge mm", 60, given("curve"), SIZE),
    flat: typedColumn("Flat or rib width mm", 66, given("flat"), SIZE),
    rib: typedColumn("Rib height mm", 56, given("rib"), SIZE),
  };
}

const nowhere = (): never => {
  throw new RangeError("the order of the columns is known without the other sheets");
};

/** The columns in their order on the sheet. */
export const columnKeys = Object.keys(
  lineColumns({
    lines: [],
    recipes: nowhere,
    sheet: nowhere,
    stations: nowhere,
    otherMass: nowhere,
    batches: nowhere,
    usual: { yield: "", confidence: "" },
  }),
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
      note: "A row a line of the order: type it from left to right. Mass: blade without tang, tapered in a straight line from heel to tip; one that keeps its width, as most kitchen knives and machetes do, weighs up to half more: measure it on Stations. Full sentences stand on Recipe.",
      frozenColumns: 2,
    },
  );
  return made;
}

export type Lines = TableSheet<ColumnKey>;
