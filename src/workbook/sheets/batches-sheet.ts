import type { Lines } from "./lines-sheet";
import { inFahrenheit } from "./parts/sheet-parts";
import {
  type CellOf,
  calcColumn,
  eitherColumn,
  pick,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import type { DataRow } from "./template-data";

export type BatchKey =
  | "batch"
  | "where"
  | "line"
  | "grade"
  | "pieces"
  | "grams"
  | "kilograms"
  | "thickest"
  | "perLoad"
  | "loads"
  | "recipe"
  | "normalise"
  | "normaliseF"
  | "preheat"
  | "harden"
  | "hardenF"
  | "soak"
  | "quench"
  | "litres"
  | "rise"
  | "subZero"
  | "subZeroHours"
  | "temper"
  | "temperF"
  | "cycles"
  | "hours"
  | "hold"
  | "temperEnergy"
  | "energy"
  | "rate"
  | "least"
  | "setUp"
  | "charge";

/** Hours a temper; the usual two, common practice, no source. */
const TEMPER_HOURS = 2;
/** Steel leaves the oil at about this, °C; common practice, no source. */
const OUT_OF_OIL = 60;

/**
 * Where nothing is published. An empty answer would not do: LibreOffice works cells that hold an empty text out anew
 * when it opens a file, and does not know our functions.
 */
const NONE = "none held";

const fahrenheit = (cell: string) => `IF(ISNUMBER(${cell}),${inFahrenheit(cell)},"${NONE}")`;

function hardening(at: CellOf<BatchKey>, low: number): string {
  const figure = (column: number) => `INDEX(BLADE.HARDENING(${at("grade")}),1,${column})`;
  const middle = `ROUND((${figure(low)}+${figure(low + 1)})/2,0)`;
  return `IFNA(IF(${figure(low)}="","${NONE}",${middle}),"${NONE}")`;
}

const inHouse = (at: CellOf<BatchKey>, formula: string) => `IF(${at("where")}="outside","",${formula})`;

/** Heat batches: what goes into the furnace together, by which recipe, and what it costs. */
export function batchesSheet(rows: readonly DataRow[], lines: Lines, count: number): TableSheet<BatchKey> {
  const given = (column: number) => pick(rows, column);
  const ofLine = (key: Parameters<Lines["lookup"]>[0]) => (at: CellOf<BatchKey>) =>
    lines.lookup(key, at("line"));
  const perLoadKilograms = (at: CellOf<BatchKey>) => `${at("kilograms")}/${at("loads")}`;
  const columns: TableColumns<BatchKey> = {
    batch: typedColumn("Batch", 50, given(0)),
    where: typedColumn("Where", 90, given(1), {
      words: ["in-house", "forge, bits only", "outside"],
      wrap: true,
    }),
    line: typedColumn("Line", 46, given(2)),
    grade: calcColumn("Grade", 76, ofLine("steel")),
    pieces: calcColumn("Pieces", 50, ofLine("starts"), { format: "0" }),
    grams: typedColumn("g a piece at hardening", 74, given(3), { format: "0" }),
    kilograms: calcColumn("kg in all", 50, (at) => `${at("pieces")}*N(${at("grams")})/1000`, {
      format: "0.0",
    }),
    thickest: calcColumn("Thickest mm", 62, ofLine("thickness"), { format: "0.0" }),
    perLoad: typedColumn("Pieces a load", 56, given(4), { format: "0" }),
    loads: calcColumn(
      "Loads",
      46,
      (at) => `IF(N(${at("perLoad")})=0,1,ROUNDUP(${at("pieces")}/${at("perLoad")},0))`,
      {
        format: "0",
      },
    ),
    recipe: calcColumn(
      "Recipe by the book",
      210,
      (at) => `BLADE.RECIPE(${at("grade")},${lines.lookup("aim", at("line"))},${at("quench")})`,
      { wrap: true },
    ),
    normalise: eitherColumn("Normalise °C", 66, [], (at) => hardening(at, 1), { format: "0" }),
    normaliseF: calcColumn("Normalise °F", 66, (at) => fahrenheit(at("normalise")), { format: "0" }),
    preheat: typedColumn("Preheat °C", 58, [], { format: "0" }),
    harden: eitherColumn("Harden at °C", 58, [], (at) => hardening(at, 4), { format: "0" }),
    hardenF: calcColumn("Harden at °F", 58, (at) => fahrenheit(at("harden")), { format: "0" }),
    soak: calcColumn(
      "Minutes in the furnace",
      70,
      (at) =>
        `IF(ISNUMBER(${at("harden")}),IFNA(INDEX(BLADE.SOAK(${at("thickest")},${at("harden")}),1,3),"${NONE}"),"${NONE}")`,
      { format: "0" },
    ),
    quench: calcColumn("Quench", 90, ofLine("quench")),
    litres: typedColumn("Oil litres", 52, given(5), { format: "0" }),
    rise: calcColumn(
      "Oil warms by K",
      62,
      (at) =>
        inHouse(
          at,
          `IF(OR(N(${at("litres")})=0,N(${at("grams")})=0),"",INDEX(BLADE.OIL_RISE(${perLoadKilograms(at)},${at("harden")},${OUT_OF_OIL},${at("litres")}),1,1))`,
        ),
      { format: "0.0" },
    ),
    subZero: typedColumn("Sub-zero °C", 58, [], { format: "0" }),
    subZeroHours: typedColumn("Sub-zero h", 58, [], { format: "0.0" }),
    temper: eitherColumn("Temper °C", 58, [], ofLine("temperC"), { format: "0" }),
    temperF: calcColumn("Temper °F", 58, (at) => fahrenheit(at("temper")), { format: "0" }),
    cycles: typedColumn("Tempers", 56, given(11), { format: "0" }),
    hours: typedColumn(
      "Hours each",
      50,
      rows.map(() => TEMPER_HOURS),
      { format: "0.0" },
    ),
    hold: typedColumn("Holding kWh", 58, given(6), { format: "0.0" }),
    temperEnergy: typedColumn("Temper kWh", 56, given(7), { format: "0.0" }),
    energy: calcColumn(
      "kWh in all",
      56,
      (at) =>
        inHouse(
          at,
          `IF(N(${at("kilograms")})=0,0,BLADE.FURNACE(${at("kilograms")},${at("harden")}))+N(${at("hold")})+N(${at("temperEnergy")})`,
        ),
      { format: "0.0" },
    ),
    rate: typedColumn("Outside: a kg", 58, given(8), { format: "#,##0.00" }),
    least: typedColumn("Outside: at least", 62, given(9), { format: "#,##0.00" }),
    setUp: typedColumn("Outside: set-up", 62, given(10), { format: "#,##0.00" }),
    charge: calcColumn(
      "Outside charge",
      66,
      (at) =>
        `IF(${at("where")}="outside",BLADE.OUTSIDE_CHARGE(${at("kilograms")},${at("rate")},${at("least")},${at("setUp")}),"")`,
      { format: "#,##0.00" },
    ),
  };
  return new TableSheet("Heat batches", columns, count, {
    title: "Heat batches: what is hardened together, by which recipe",
    note: "Temperatures by the book until you type over them; soak counts from the blade's temperature. A furnace load of the same recipe may be shared.",
    frozenColumns: 3,
  });
}

export type Batches = TableSheet<BatchKey>;
