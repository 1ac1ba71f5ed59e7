import type { Cover } from "./cover-sheet";
import type { Lines } from "./lines-sheet";
import {
  calcColumn,
  eitherColumn,
  pick,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import type { Stations } from "./stations-sheet";
import type { Steels } from "./steels-sheet";
import type { TemplateData } from "./template-data";

export type CutKey =
  | "line"
  | "grade"
  | "steel"
  | "good"
  | "starts"
  | "chance"
  | "volume"
  | "tang"
  | "length"
  | "width"
  | "thickness"
  | "bar"
  | "pieces"
  | "bars"
  | "buy"
  | "kilograms"
  | "drop"
  | "price"
  | "cost";

/** Shares that grinding takes, and the grip of the tongs in mm; common practice, no source. */
const FORGING = "0.22,,,25";

/** A forged line of the demo takes its volume from the block of stations in this place. */
function volumes({ tang }: TemplateData, stations: Stations): (string | null)[] {
  let block = 0;
  return tang.map((mass) => (mass === null ? null : `=${stations.volumeAt(block++)}`));
}

/** Blanks of each line, the bars they are cut from and what those cost. */
export function cutListSheet(
  data: TemplateData,
  { cover, lines, steels, stations }: { cover: Cover; lines: Lines; steels: Steels; stations: Stations },
): TableSheet<CutKey> {
  const { blanks, steels: bought } = data;
  const sizes = ["grade", "width", "thickness", "length", "starts", "bar"] as const;
  const order = (at: (key: CutKey) => string, column: number, rack: string) =>
    `INDEX(BLADE.STEEL_ORDER(${sizes.map(at).join(",")},${cover.at("kerf")},${cover.at("trim")},${rack}),1,${column})`;
  const rackOf = (at: (key: CutKey) => string) =>
    `IF(${at("steel")}="",0,N(${steels.lookup("rack", at("steel"))}))`;
  const isCut = (at: (key: CutKey) => string, formula: string) => `IF(${at("length")}="","",${formula})`;
  const columns: TableColumns<CutKey> = {
    line: calcColumn(
      "Line",
      46,
      (_, index) => `IF(${lines.at("line", index)}="","",${lines.at("line", index)})`,
    ),
    grade: calcColumn("Grade", 80, (_, index) => lines.at("steel", index)),
    steel: typedColumn("Steel in stock", 56, pick(bought, 0)),
    good: calcColumn("Good wanted", 60, (_, index) => lines.at("good", index), { format: "0" }),
    starts: calcColumn("Starts", 50, (_, index) => lines.at("starts", index), { format: "0" }),
    chance: calcColumn(
      "Chance of enough",
      64,
      (at, index) => `BLADE.CHANCE_OF_ENOUGH(${at("starts")},${at("good")},${lines.at("yield", index)})`,
      { format: "0.000" },
    ),
    volume: typedColumn("Forged: blade mm³", 76, volumes(data, stations), { format: "#,##0" }),
    tang: typedColumn("Forged: tang g", 62, data.tang, { format: "0" }),
    length: eitherColumn(
      "Blank length mm",
      72,
      pick(blanks, 0),
      (at) =>
        `IF(N(${at("volume")})=0,"",BLADE.FORGE_LENGTH(${at("volume")}+N(${at("tang")})*1000/BLADE.DENSITY(${at("grade")}),${at("width")},${at("thickness")},${FORGING}))`,
      { format: "0.0" },
    ),
    width: typedColumn("Width mm", 56, pick(blanks, 1), { format: "0.0" }),
    thickness: typedColumn("Thickness mm", 70, pick(blanks, 2), { format: "0.0" }),
    bar: typedColumn("Bar mm", 56, pick(blanks, 3), { format: "0" }),
    pieces: calcColumn(
      "Pieces a bar",
      56,
      (at) =>
        isCut(
          at,
          `INT((${at("bar")}-${cover.at("trim")}+${cover.at("kerf")})/(${at("length")}+${cover.at("kerf")}))`,
        ),
      { format: "0" },
    ),
    bars: calcColumn("Bars to buy", 52, (at) => isCut(at, order(at, 3, rackOf(at))), { format: "0" }),
    buy: calcColumn("To buy kg", 56, (at) => isCut(at, order(at, 4, rackOf(at))), { format: "0.0" }),
    kilograms: calcColumn("Bars used kg", 56, (at) => isCut(at, order(at, 4, "0")), { format: "0.0" }),
    drop: calcColumn("Left over mm", 64, (at) => isCut(at, order(at, 5, "0")), { format: "0" }),
    price: calcColumn(
      "Price a kg",
      58,
      (at) => `IF(${at("steel")}="","",${steels.lookup("price", at("steel"))})`,
      {
        format: "#,##0.00",
      },
    ),
    cost: calcColumn("Bars used cost", 68, (at) => isCut(at, `${at("kilograms")}*N(${at("price")})`), {
      format: "#,##0.00",
    }),
  };
  return new TableSheet("Cut list", columns, lines.count, {
    title: "Cut list: blanks, bars to buy, steel cost",
    note: "To buy: after what is in the rack. Cost: of whole bars, those in the rack too. A forged line: type the blade's volume (from Stations) and the tang's mass; its length follows.",
  });
}

export type CutList = TableSheet<CutKey>;
