import { readCellName } from "../../formula/addresses";
import type { Cover } from "./cover-sheet";
import type { CutList } from "./cut-list-sheet";
import type { Lines } from "./lines-sheet";
import { dayOddities } from "./parts/day-checks";
import { checkFormula } from "./parts/remarks";
import { fixedName, millimetresOr0 } from "./parts/sheet-parts";
import {
  type CellOf,
  calcColumn,
  DATE_FORMAT,
  eitherColumn,
  FIRST_ROW,
  pick,
  STEEL_WIDTH,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import { NOT_ASSESSED } from "./parts/treatment";
import type { RecipeKey, Recipes } from "./recipe-sheet";
import type { DataRow } from "./template-data";

export type BatchKey =
  | "batch"
  | "where"
  | "treater"
  | "line"
  | "grade"
  | "starts"
  | "pieces"
  | "grams"
  | "kilograms"
  | "thickest"
  | "perLoad"
  | "loads"
  | "recipe"
  | "harden"
  | "hardenF"
  | "furnace"
  | "quench"
  | "temper"
  | "temperF"
  | "tempers"
  | "preheat"
  | "litres"
  | "rise"
  | "hold"
  | "temperEnergy"
  | "energy"
  | "rate"
  | "least"
  | "setUp"
  | "charge"
  | "backBy"
  | "check"
  | "page";

/** Steel leaves the oil at about this, °C; common practice, no source. */
const OUT_OF_OIL = 60;

export const OUTSIDE = "outside";

const inHouse = (at: CellOf<BatchKey>, formula: string) => `IF(${at("where")}="${OUTSIDE}","",${formula})`;

interface Sources {
  readonly cover: Cover;
  readonly lines: Lines;
  readonly recipes: Recipes;
  readonly cuts: CutList;
}

/** Mass of a blank as it is cut, g: what goes into the furnace unless it is weighed. */
function blankGrams(cuts: CutList, at: CellOf<BatchKey>): string {
  const cell = (key: "grade" | "length" | "width" | "thickness") => cuts.lookup(key, at("line"));
  const volume = (["length", "width", "thickness"] as const).map((key) => `N(${cell(key)})`).join("*");
  return `ROUND(${volume}*BLADE.DENSITY(${cell("grade")})/1000,0)`;
}

/** Pieces of a line that no row above has: the first row takes all, until fewer are typed there. */
function restOfLine(at: CellOf<BatchKey>, index: number): string {
  if (index === 0) return at("starts");
  const above = (key: BatchKey) => {
    const column = readCellName(at(key).replaceAll("$", ""))?.column ?? 0;
    return `${fixedName(FIRST_ROW, column)}:${fixedName(FIRST_ROW + index - 1, column)}`;
  };
  const rest = `${at("starts")}-SUMIF(${above("line")},${at("line")},${above("pieces")})`;
  return `IF(${at("starts")}="","",${rest})`;
}

/** Blades come back before the customer's day, since they are still to be ground and fitted. */
const backDay = (cover: Cover, cell: string) => ({
  cell,
  name: "back",
  notBefore: [[cover.today, "the day of the figures"]] as const,
  notAfter: [[cover.at("due"), "the day the run is due"]] as const,
});

/** The tang goes into the furnace too. @param blade - The cell with the length of the blade. */
export const lengthInFurnace = (cover: Cover, blade: string) =>
  `(${millimetresOr0(blade)}+N(${cover.at("blankExtra")}))`;

function whatIsOdd(
  { cover, lines, recipes }: Sources,
  at: CellOf<BatchKey>,
  columns: readonly [string, string],
) {
  const [batches, texts] = columns;
  const load = `N(${at("kilograms")})/MAX(1,N(${at("loads")}))`;
  const length = lengthInFurnace(cover, lines.lookup("length", at("line")));
  // Against the first row of the batch alone: counted down the whole column, every row would have to be worked out again
  // with each recipe that becomes another.
  const first = `INDEX(${texts},MATCH(${at("batch")},${batches},0))`;
  const isOwn = `${at("where")}<>"${OUTSIDE}"`;
  return checkFormula([
    { when: `COUNTIF(${lines.block("line")},${at("line")})=0`, said: `"no line "&${at("line")}` },
    {
      when: `AND(${isOwn},N(${cover.at("furnaceKg")})>0,${load}>N(${cover.at("furnaceKg")}))`,
      said: `"a load of "&TEXT(${load},"0.0")&" kg, the furnace takes "&${cover.at("furnaceKg")}`,
    },
    {
      when: `IFERROR(AND(${isOwn},N(${cover.at("furnaceLength")})>0,${length}>N(${cover.at("furnaceLength")})),FALSE)`,
      said: `"blade and tang of "&${length}&" mm, the furnace takes "&${cover.at("furnaceLength")}`,
    },
    { when: `IFERROR(${first}<>${at("recipe")},FALSE)`, said: `"another recipe in the same batch"` },
    {
      when: `N(${at("pieces")})<=0`,
      said: `"no pieces: rows above have all starts of the line"`,
    },
    {
      when: `IFERROR(LEFT(${recipes.lookup("through", at("line"))},4)="does",FALSE)`,
      said: `${recipes.lookup("through", at("line"))}&" in this quench"`,
    },
    ...dayOddities(backDay(cover, at("backBy"))),
  ]);
}

/** Heat batches: what goes into the furnace together, and what it costs. The recipe is that of the line. */
export function batchesSheet(
  rows: readonly DataRow[],
  sources: Sources,
  count: number,
): TableSheet<BatchKey> {
  const { cover, lines, recipes, cuts } = sources;
  const given = (column: number) => pick(rows, column);
  const ofOwnLine = (index: number, otherwise = index < lines.count ? lines.at("line", index) : "") =>
    index < lines.count ? `IF(${lines.at("line", index)}="","",${otherwise})` : `""`;
  const lineKnown = {
    needs: (at: CellOf<BatchKey>) => [at("line"), `IFERROR(${lines.lookup("steel", at("line"))},"?")`],
  };
  const started = { needs: (at: CellOf<BatchKey>) => [at("line"), at("pieces")] };
  const outside = (key: "outsideKg" | "outsideLeast" | "outsideSetUp") => (at: CellOf<BatchKey>) =>
    `IF(OR(${at("where")}<>"${OUTSIDE}",${cover.at(key)}=""),"",${cover.at(key)})`;
  const ofLine = (key: Parameters<Lines["lookup"]>[0]) => (at: CellOf<BatchKey>) =>
    lines.lookup(key, at("line"));
  const ofRecipe = (key: RecipeKey) => (at: CellOf<BatchKey>) => recipes.lookup(key, at("line"));
  /** A temper that was typed in °F stands here in °C. */
  const inCelsius = (at: CellOf<BatchKey>) => {
    const [celsius, fahrenheit] = [ofLine("temperC")(at), ofLine("temperF")(at)];
    return `IF(ISTEXT(${celsius}),IF(ISNUMBER(${fahrenheit}),ROUND((${fahrenheit}-32)*5/9,0),${celsius}),${celsius})`;
  };
  const perLoadKilograms = (at: CellOf<BatchKey>) => `${at("kilograms")}/${at("loads")}`;
  const WHOLE = { format: "0" };
  const TENTH = { format: "0.0" };
  const MONEY = { format: "#,##0.00" };
  const columns: TableColumns<BatchKey> = {
    // A row a line in its own batch, until other lines or other batches are typed.
    batch: eitherColumn("Batch", 50, given(0), (_, index) => ofOwnLine(index, `"B${index + 1}"`)),
    where: eitherColumn("Where", 90, given(1), () => `"in-house"`, {
      words: ["in-house", "forge, bits only", OUTSIDE],
      wrap: true,
    }),
    treater: eitherColumn(
      "Heat treater",
      110,
      given(12),
      (at) =>
        `IF(${at("where")}="${OUTSIDE}",IF(${cover.at("treater")}="","to be agreed",${cover.at("treater")}),"")`,
      { wrap: true },
    ),
    line: eitherColumn("Line", 46, given(2), (_, index) => ofOwnLine(index)),
    grade: calcColumn("Grade", STEEL_WIDTH, (at) => `${lines.lookup("steel", at("line"))}&""`, lineKnown),
    starts: calcColumn("Starts of the line", 56, ofLine("starts"), { ...WHOLE, ...lineKnown }),
    pieces: eitherColumn("Pieces", 50, given(13), restOfLine, { ...WHOLE, ...lineKnown }),
    grams: eitherColumn("g a piece at hardening", 74, given(3), (at) => blankGrams(cuts, at), {
      ...WHOLE,
      ...lineKnown,
    }),
    kilograms: calcColumn("kg in all", 50, (at) => `${at("pieces")}*N(${at("grams")})/1000`, {
      ...TENTH,
      ...started,
    }),
    thickest: calcColumn("Hardened mm", 72, ofRecipe("section"), { ...TENTH, ...lineKnown }),
    perLoad: eitherColumn(
      "Pieces a load",
      56,
      given(4),
      (at) =>
        `IF((N(${cover.at("furnaceKg")})=0)+(N(${at("grams")})=0)>0,"",MAX(1,INT(${cover.at("furnaceKg")}*1000/${at("grams")})))`,
      { ...WHOLE, ...started },
    ),
    loads: calcColumn(
      "Loads",
      46,
      (at) => `IF(N(${at("perLoad")})=0,1,ROUNDUP(${at("pieces")}/${at("perLoad")},0))`,
      { ...WHOLE, ...started },
    ),
    recipe: calcColumn("Recipe", 210, ofRecipe("text"), { wrap: true, ...lineKnown }),
    harden: calcColumn("Harden °C", 58, ofRecipe("harden"), { ...WHOLE, ...lineKnown }),
    hardenF: calcColumn("Harden °F", 58, ofRecipe("hardenF"), { ...WHOLE, ...lineKnown }),
    furnace: calcColumn("In the furnace min", 62, ofRecipe("furnace"), { ...WHOLE, ...lineKnown }),
    quench: calcColumn("Quench and bath", 200, ofRecipe("quench"), { wrap: true, ...lineKnown }),
    temper: calcColumn("Temper °C", 58, inCelsius, { ...WHOLE, ...lineKnown }),
    temperF: calcColumn("Temper °F", 58, ofLine("temperF"), { ...WHOLE, ...lineKnown }),
    tempers: calcColumn("Tempers", 120, ofRecipe("temperWords"), { wrap: true, ...lineKnown }),
    preheat: typedColumn("Preheat °C", 58, [], WHOLE),
    litres: typedColumn("Oil litres", 52, given(5), WHOLE),
    rise: calcColumn(
      "Oil warms by K",
      62,
      (at) =>
        inHouse(
          at,
          `IF(OR(N(${at("litres")})=0,N(${at("grams")})=0,NOT(ISNUMBER(${at("harden")}))),"",INDEX(BLADE.OIL_RISE(${perLoadKilograms(at)},${at("harden")},${OUT_OF_OIL},${at("litres")}),1,1))`,
        ),
      { ...TENTH, ...started },
    ),
    hold: typedColumn("Holding kWh", 58, given(6), TENTH),
    temperEnergy: typedColumn("Temper kWh", 56, given(7), TENTH),
    energy: calcColumn(
      "kWh in all",
      56,
      (at) =>
        inHouse(
          at,
          `IF(N(${at("kilograms")})=0,0,IF(ISNUMBER(${at("harden")}),BLADE.FURNACE(${at("kilograms")},${at("harden")}),"${NOT_ASSESSED}"))+N(${at("hold")})+N(${at("temperEnergy")})`,
        ),
      { ...TENTH, ...started },
    ),
    rate: eitherColumn("Outside: a kg", 66, given(8), outside("outsideKg"), MONEY),
    least: eitherColumn("Outside: at least", 66, given(9), outside("outsideLeast"), MONEY),
    setUp: eitherColumn("Outside: set-up", 66, given(10), outside("outsideSetUp"), MONEY),
    charge: calcColumn(
      "Outside charge",
      66,
      (at) =>
        `IF(${at("where")}="${OUTSIDE}",BLADE.OUTSIDE_CHARGE(${at("kilograms")},${at("rate")},${at("least")},${at("setUp")}),"")`,
      { ...MONEY, ...started },
    ),
    backBy: typedColumn("Back by", 82, [], { format: DATE_FORMAT }),
    check: calcColumn(
      "Cross-check",
      190,
      (at) => whatIsOdd(sources, at, [made().block("batch"), made().block("recipe")]),
      { isStatus: true, wrap: true, ...started },
    ),
    page: calcColumn(
      "Order page",
      50,
      (at) =>
        `IF(${at("where")}="${OUTSIDE}",COUNTIF(${fixedName(FIRST_ROW, 1)}:${at("where")},"${OUTSIDE}"),0)`,
      WHOLE,
    ),
  };
  const sheet = new TableSheet("Heat batches", columns, count, {
    title: "Heat batches: what is hardened together",
    note: "A row for each line, or part of a line, in a batch: repeat the batch to add a line, repeat the line to part it: type the pieces of the first, the next has the rest. The recipe is that of the line.",
    frozenColumns: 4,
  });
  const made = () => sheet;
  return sheet;
}

export type Batches = TableSheet<BatchKey>;
