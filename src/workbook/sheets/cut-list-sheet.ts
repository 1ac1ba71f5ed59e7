import { readCellName } from "../../formula/addresses";
import { shifted } from "../../formula/references";
import type { Cover } from "./cover-sheet";
import type { Lines } from "./lines-sheet";
import { lineColumns } from "./parts/line-columns";
import { checkFormula } from "./parts/remarks";
import { fixedName, inMillimetres, millimetresOr0 } from "./parts/sheet-parts";
import {
  calcColumn,
  eitherColumn,
  FIRST_ROW,
  pick,
  STEEL_WIDTH,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import type { Recipes } from "./recipe-sheet";
import type { Stations } from "./stations-sheet";
import type { SteelKey, Steels } from "./steels-sheet";
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
  | "rack"
  | "pieces"
  | "bars"
  | "buy"
  | "kilograms"
  | "drop"
  | "price"
  | "cost"
  | "check"
  | "supplier"
  | "page"
  | "slot";

/** Lines on one page of a steel order. */
export const LINES_A_PAGE = 3;

interface CutSources {
  readonly cover: Cover;
  readonly lines: Lines;
  readonly recipes: Recipes;
  readonly steels: Steels;
  readonly stations: Stations;
}

type At = (key: CutKey) => string;

/** What is odd about the stock of a line. Of a forged blade only the steel and the bar's length are held against it. */
function whatIsOdd({ lines, recipes, steels }: CutSources, at: At, index: number): string {
  const line = (key: Parameters<Lines["at"]>[0]) => millimetresOr0(lines.at(key, index));
  const grade = steels.lookup("grade", at("steel"));
  const isCut = `N(${at("volume")})=0`;
  const less = (what: string, blank: string, blade: string) => ({
    when: `AND(${isCut},N(${blank})>0,N(${blank})<${blade})`,
    said: `"${what} of "&ROUND(${blank},1)&" mm, the blade "&ROUND(${blade},1)`,
  });
  const named = (steel: string) => `INDEX(BLADE.STEEL(${steel}),1,1)`;
  return checkFormula([
    { when: `${at("steel")}=""`, said: `"no stock named"` },
    {
      when: `IFERROR(AND(${at("steel")}<>"",${named(grade)}<>${named(at("grade"))}),FALSE)`,
      said: `"stock "&${at("steel")}&" is "&${grade}&", the line "&${at("grade")}`,
    },
    {
      when: `AND(${at("steel")}<>"",ISNA(MATCH(${at("steel")},${steels.block("id")},0)))`,
      said: `"no stock "&${at("steel")}`,
    },
    less("blank length", at("length"), line("length")),
    less("bar width", at("width"), line("width")),
    less("bar thickness", at("thickness"), `MAX(${line("thickness")},N(${recipes.at("section", index)}))`),
    {
      when: `AND(N(${at("bar")})>0,N(${at("length")})>N(${at("bar")}))`,
      said: `"bar of "&ROUND(${at("bar")},1)&" mm, the blank "&ROUND(${at("length")},1)`,
    },
    {
      when: `OR(N(${at("length")})<0,N(${at("width")})<0,N(${at("thickness")})<0,N(${at("bar")})<0)`,
      said: `"a length below 0"`,
    },
  ]);
}

/** Volume of a forged blade in mm³: as measured, else from its mass and the density of its steel. */
function volumeOf({ lines, stations }: CutSources, at: At, index: number): string {
  const measured = stations.volumeOf(at("line"));
  const fromMass = `${lines.at("mass", index)}*1000/BLADE.DENSITY(${at("grade")})`;
  return `IF(N(${at("tang")})=0,0,IF(N(${measured})=0,${fromMass},${measured}))`;
}

/** The stock of a line: that of its own row where it is of its steel, else the first of its steel. */
function stockOf(steels: Steels, at: At, index: number): string {
  const found = `IFERROR(INDEX(${steels.block("id")},MATCH(${at("grade")},${steels.block("grade")},0)),"")`;
  return index < steels.count
    ? `IF(${steels.at("grade", index)}=${at("grade")},${steels.at("id", index)},${found})`
    : found;
}

const needs = (...keys: CutKey[]) => ({ needs: (at: At) => keys.map(at) });

const first = (column: number) => fixedName(FIRST_ROW, column);
/** Cells of the same column from the first row to that of the line. */
const downTo = (cell: string) => `${first(readCellName(cell.replaceAll("$", ""))?.column ?? 0)}:${cell}`;

/** How many lines are bought from the same supplier, up to this one. */
const rank = (at: At) => `COUNTIF(${downTo(at("supplier"))},${at("supplier")})`;

/** Pages are counted in the order in which the suppliers come; so many lines stand on each. */
function pageFormula(at: At, index: number): string {
  if (index === 0) return `IF(${at("supplier")}="","",1)`;
  const above = downTo(shifted(at("page"), -1, 0));
  const suppliers = downTo(shifted(at("supplier"), -1, 0));
  const begins = `MOD(${rank(at)}-1,${LINES_A_PAGE})=0`;
  return `IF(${at("supplier")}="","",IF(${begins},MAX(${above})+1,MAXIFS(${above},${suppliers},${at("supplier")})))`;
}

const slotFormula = (at: At) =>
  `IF(${at("supplier")}="","",${at("page")}*10+MOD(${rank(at)}-1,${LINES_A_PAGE})+1)`;

/** Blanks of each line, the bars they are cut from and what those cost. */
export function cutListSheet(data: TemplateData, sources: CutSources): TableSheet<CutKey> {
  const { cover, lines, steels } = sources;
  const { blanks, steels: bought } = data;
  const allowances = (["forgeGrind", "forgeScale", "forgeCrop", "tong"] as const)
    .map((key) => cover.at(key))
    .join(",");
  const ofStock = (at: (key: CutKey) => string, key: SteelKey) =>
    `IF(${at("steel")}="","",${steels.lookup(key, at("steel"))})`;
  const sizes = ["grade", "width", "thickness", "length", "starts", "bar"] as const;
  const order = (at: (key: CutKey) => string, column: number, rack: string) =>
    `INDEX(BLADE.STEEL_ORDER(${sizes.map(at).join(",")},${cover.at("kerf")},${cover.at("trim")},${rack}),1,${column})`;
  // What lies in the rack is used once: a line has what those above leave of the same heat.
  const rackOf = (at: (key: CutKey) => string, index: number) => {
    const inAll = `N(${steels.lookup("rack", at("steel"))})`;
    const above = (key: CutKey) => downTo(shifted(at(key), -1, 0));
    const used = index === 0 ? "0" : `SUMIF(${above("steel")},${at("steel")},${above("kilograms")})`;
    return `IF(${at("steel")}="",0,IFERROR(MAX(0,${inAll}-${used}),0))`;
  };
  const isCut = (at: (key: CutKey) => string, formula: string) =>
    `IF(OR(${(["grade", "length", "width", "thickness", "starts", "bar"] as const).map((key) => `${at(key)}=""`).join(",")}),"",${formula})`;
  const columns: TableColumns<CutKey> = {
    line: lineColumns<CutKey>(() => lines, 0).line,
    grade: calcColumn("Grade", STEEL_WIDTH, (_, index) => lines.at("steel", index), {
      needs: (_, index) => [lines.at("steel", index)],
    }),
    steel: eitherColumn(
      "Steel in stock",
      56,
      pick(bought, 0),
      (at, index) => stockOf(steels, at, index),
      needs("grade"),
    ),
    good: calcColumn("Good wanted", 60, (_, index) => lines.at("good", index), {
      format: "0",
      needs: (_, index) => [lines.at("good", index)],
    }),
    starts: calcColumn("Starts", 50, (_, index) => lines.at("starts", index), { format: "0" }),
    chance: calcColumn(
      "Chance of enough",
      64,
      (at, index) => `BLADE.CHANCE_OF_ENOUGH(${at("starts")},${at("good")},${lines.at("yield", index)})`,
      { format: "0.000", ...needs("starts", "good") },
    ),
    // A line with a tang's mass is forged: its volume is that of its stations, else that of its mass.
    volume: eitherColumn("Forged: blade mm³", 76, [], (at, index) => volumeOf(sources, at, index), {
      format: "#,##0",
      ...needs("grade"),
    }),
    tang: typedColumn("Forged: tang g", 62, data.tang, { format: "0" }),
    length: eitherColumn(
      "Blank length mm",
      72,
      pick(blanks, 0),
      (at, index) =>
        `IF(N(${at("volume")})=0,${inMillimetres(lines.at("length", index))}+${cover.at("blankExtra")},BLADE.FORGE_LENGTH(${at("volume")}+N(${at("tang")})*1000/BLADE.DENSITY(${at("grade")}),${at("width")},${at("thickness")},${allowances}))`,
      { format: "0.0", needs: (at, index) => [lines.at("length", index), at("grade")] },
    ),
    width: eitherColumn("Width mm", 56, [], (at) => ofStock(at, "width"), {
      format: "0.0",
      ...needs("steel"),
    }),
    thickness: eitherColumn("Thickness mm", 70, [], (at) => ofStock(at, "thickness"), {
      format: "0.0",
      ...needs("steel"),
    }),
    bar: eitherColumn("Bar mm", 56, pick(blanks, 3), () => cover.at("barLength"), { format: "0" }),
    rack: calcColumn("In the rack kg", 58, rackOf, { format: "0.0" }),
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
    bars: calcColumn("Bars to buy", 52, (at) => isCut(at, order(at, 3, at("rack"))), { format: "0" }),
    buy: calcColumn("To buy kg", 56, (at) => isCut(at, order(at, 4, at("rack"))), { format: "0.0" }),
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
    check: calcColumn("Cross-check", 190, (at, index) => whatIsOdd(sources, at, index), {
      isStatus: true,
      wrap: true,
      ...needs("grade"),
    }),
    supplier: calcColumn(
      "Bought from",
      100,
      (at) =>
        `IF(N(${at("bars")})=0,"",IF(${ofStock(at, "supplier")}="",${cover.at("supplier")}&"",${ofStock(at, "supplier")}))`,
      { wrap: true },
    ),
    page: calcColumn("Order page", 50, (at, index) => pageFormula(at, index), { format: "0" }),
    slot: calcColumn("Page and place", 56, (at) => slotFormula(at), { format: "0" }),
  };
  return new TableSheet("Cut list", columns, lines.count, {
    title: "Cut list: blanks, bars to buy, steel cost",
    note: "To buy: after what is in the rack. Cost: of whole bars, those in the rack too. A forged line: type the tang's mass; the blade's volume (of its stations, else of its mass) and the blank's length follow.",
  });
}

export type CutList = TableSheet<CutKey>;
