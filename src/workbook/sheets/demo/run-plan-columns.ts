import { cellName } from "../../../formula/addresses";
import type { CellModel } from "../../model/sheet-model";
import { type Filled, FORMAT, typed, worked } from "../parts/sheet-parts";
import type { ColumnKey } from "../planning-columns";
import demo from "../run-r07/run-plan.json";
import { COLUMN, FIRST_BLANK, isForged } from "./cut-list-sheet";
import { pastFigure } from "./history-sheet";
import { planningCell } from "./planning-sheet";

/** Names of the sheets that the run plan takes figures from. */
export interface Sheets {
  readonly planning: string;
  readonly cutList: string;
  readonly history: string;
}

/** Where a formula of the run's table stands and what it reads. */
export interface Place {
  /** Line of the run, from 0. */
  readonly line: number;
  readonly sheets: Sheets;
  /** Address of the blade's name in the same row. */
  readonly item: string;
  /** Address of the cell that says which yield is planned with. */
  readonly planWith: string;
}

export interface PlanColumn {
  /** As RUN_PLAN reads it. */
  readonly heading: string;
  readonly filled: Filled;
  readonly cell: (place: Place) => CellModel;
}

function linked(heading: string, key: ColumnKey, format?: string): PlanColumn {
  const cell = ({ line, sheets }: Place) =>
    worked(`='${sheets.planning}'!${planningCell(line, key)}`, format);
  return { heading, filled: "either", cell };
}

function fromCutList(heading: string, column: keyof typeof COLUMN): PlanColumn {
  const cell = ({ line, sheets }: Place) =>
    worked(`='${sheets.cutList}'!${cellOf(line, COLUMN[column])}`, FORMAT.tenth);
  return { heading, filled: "either", cell };
}

function cellOf(line: number, column: number): string {
  return cellName(FIRST_BLANK + line, column);
}

function planned(heading: string, formula: (place: Place) => string): PlanColumn {
  return { heading, filled: "either", cell: (place) => worked(formula(place), FORMAT.hundredth) };
}

/** A forged blade is longer than the bar it is drawn from, which RUN_PLAN holds for a slip: its length stays open. */
const length: PlanColumn = {
  heading: "length",
  filled: "either",
  cell: (place) =>
    isForged(place.line) ? typed(null) : linked("length", "length", FORMAT.tenth).cell(place),
};

const WORDS: ReadonlySet<string> = new Set(["price date", "model"]);

function listed(heading: keyof typeof demo.typed): PlanColumn {
  const format = WORDS.has(heading) ? undefined : FORMAT.hundredth;
  return { heading, filled: "type", cell: ({ line }) => typed(demo.typed[heading][line] ?? null, format) };
}

const past = (place: Place, figure: "yield" | "floor" | "hours" | "energy") =>
  pastFigure(place.item, figure, place.sheets.history);

const yieldOf = (place: Place) =>
  `=IF(${place.planWith}="floor",${past(place, "floor")},${past(place, "yield")})`;

const firstHours: PlanColumn = {
  heading: "hours first",
  filled: "either",
  cell: (place) => {
    const own = demo.firstHours[place.line] ?? null;
    return own === null ? worked(`=${past(place, "hours")}`, FORMAT.hundredth) : typed(own, FORMAT.hundredth);
  },
};

/** The columns of the run's table, left to right. */
export const planColumns: readonly PlanColumn[] = [
  linked("line", "line"),
  linked("blade", "item"),
  linked("steel", "steel"),
  linked("use", "use"),
  linked("good", "good", FORMAT.whole),
  planned("yield", yieldOf),
  linked("confidence", "confidence", FORMAT.hundredth),
  linked("target HRC", "aim", FORMAT.whole),
  linked("quench", "quench"),
  length,
  linked("width", "width", FORMAT.tenth),
  linked("thickness", "thickness", FORMAT.tenth),
  linked("grind", "grind"),
  linked("tip width", "tipWidth", FORMAT.tenth),
  linked("tip thickness", "tipThickness", FORMAT.tenth),
  linked("edge", "edge", FORMAT.tenth),
  listed("edge angle"),
  fromCutList("blank length", "length"),
  fromCutList("blank width", "width"),
  fromCutList("blank thickness", "thickness"),
  fromCutList("bar length", "bar"),
  listed("harden g"),
  listed("pieces a load"),
  listed("hold kWh"),
  planned("kWh a load", (place) => `=IFERROR(${past(place, "energy")},"")`),
  listed("oven h"),
  listed("outside heat"),
  listed("price kg"),
  listed("price date"),
  firstHours,
  listed("rate"),
  listed("model"),
  listed("set-up h"),
  listed("hour rate"),
  listed("overhead rate"),
  listed("cost a start"),
  listed("cost a good one"),
  listed("kWh price"),
  listed("margin"),
];
