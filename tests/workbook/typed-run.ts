import { Calculator } from "../../src/engine/calculation/calculator";
import type { CellValue } from "../../src/engine/cell-value";
import { cellName } from "../../src/formula/addresses";
import { patchWorkbook } from "../../src/workbook/file/patch/patch-workbook";
import type { SheetModel, WorkbookModel } from "../../src/workbook/model/sheet-model";
import { FIRST_ROW, HEADINGS } from "../../src/workbook/sheets/parts/table-sheet";
import { workbookOfModel } from "../../src/workbook/sheets/parts/workbook-of-model";

import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { kept } from "../kept";
import { EIGHT, type EightLine } from "./eight-lines";

/** One cell that a smith types: the sheet, what names the row, the heading above or the label beside, and the entry. */
export type Entry = readonly [sheet: string, row: string, heading: string, content: number | string];

/** A planning workbook into which cells are typed one after another, each calculated before the next. */
export class TypedPlan {
  private readonly calculator: Calculator;
  private readonly sheets: readonly SheetModel[];
  private model: WorkbookModel;
  typed = 0;
  /** Cells that came to an error, with the entry after which they did. */
  readonly errors: string[] = [];

  constructor(model: WorkbookModel) {
    this.model = model;
    this.sheets = model.sheets;
    const { sheets, tables } = workbookOfModel(model);
    const input = sheets.map(({ name, cells }) => {
      const rows: (CellValue | { formula: string })[][] = [];
      for (const { row, column, content } of cells) {
        if (content === undefined) continue;
        const filled = rows[row] ?? [];
        filled[column] = content as CellValue;
        rows[row] = filled;
      }
      return { name, rows };
    });
    this.calculator = new Calculator({ sheets: input as never, tables });
    this.note("blank", this.calculator.calculateAll());
  }

  dispose(): void {
    this.calculator.dispose();
  }

  /** The workbook as it was typed. */
  get workbook(): WorkbookModel {
    return this.model;
  }

  /** What a cell shows: its result, or the constant in it. */
  private shown(sheet: number, row: number, column: number): CellValue | undefined {
    const content = this.model.sheets[sheet]?.rows[row]?.[column]?.content ?? "";
    const isFormula = typeof content === "string" && content.startsWith("=");
    return isFormula ? this.calculator.at(sheet, row, column) : { value: content };
  }

  private note(entry: string, changed: readonly { sheet: number; row: number; column: number }[]): void {
    for (const { sheet, row, column } of changed) {
      const value = this.shown(sheet, row, column);
      if (value === undefined || !("error" in value)) continue;
      this.errors.push(`${entry}: ${this.sheets[sheet]?.name}!${cellName(row, column)} ${value.error}`);
    }
  }

  private place([sheet, row, heading]: Entry): readonly [sheet: number, row: number, column: number] {
    const at = this.sheets.findIndex(({ name }) => name === sheet);
    const { rows } = this.sheets[at] ?? { rows: [] };
    if (sheet === "Cover") return [at, rows.findIndex(([label]) => label?.content === heading), 1];
    const column = rows[HEADINGS]?.findIndex((cell) => cell?.content === heading) ?? -1;
    for (let place = FIRST_ROW; place < rows.length; place += 1) {
      const value = this.shown(at, place, 0);
      if (value !== undefined && "value" in value && value.value === row) return [at, place, column];
    }
    const free = rows.findIndex((_, place) => {
      const value = this.shown(at, place, 0);
      return place >= FIRST_ROW && (value === undefined || ("value" in value && value.value === ""));
    });
    return [at, free, column];
  }

  /** @returns The cell that was typed into, rows and columns counted from 0. */
  type(entry: Entry): { readonly row: number; readonly column: number } {
    const [sheet, row, column] = this.place(entry);
    const content = entry[3];
    if (sheet < 0 || row < 0 || column < 0) throw new RangeError(`no place for ${entry.join(", ")}`);
    this.typed += 1;
    const changed = this.calculator.change([{ sheet, row, column, content: { value: content } }]);
    this.note(entry.join(" "), changed);
    const sheets = this.model.sheets.map((each, at) =>
      at !== sheet
        ? each
        : {
            ...each,
            rows: each.rows.map((cells, r) =>
              r !== row
                ? cells
                : cells.map((cell, c) =>
                    c === column ? { ...(cell ?? { role: "typed" as const }), content } : cell,
                  ),
            ),
          },
    );
    this.model = { ...this.model, sheets };
    return { row, column };
  }
}

/** The cover of the run: who, for whom, until when, at what rates. */
const COVER: readonly (readonly [label: string, content: number | string])[] = [
  ["Run", "T-08"],
  ["Forge", "Tern Hollow Forge"],
  ["Address", "Mill Lane 4, Tern Hollow"],
  ["Telephone, e-mail", "bench@ternhollow.example"],
  ["Customer", "Low Meadow Guild"],
  ["Customer's address", "Market Row 11, Low Meadow"],
  ["Due", 46_412],
  ["Figures as of", 46_355],
  ["Currency", "EUR"],
  ["Labour an hour", 48],
  ["Overhead an hour", 17],
  ["Price a kWh", 0.3],
  ["Belts a start", 5],
  ["Fittings a good one", 9],
  ["Packing a good one", 2],
  ["Margin, share of price", 0.35],
  ["Outside hardening a kg", 6.5],
  ["Outside hardening at least", 120],
  ["Outside hardening set-up", 25],
  ["Furnace takes kg a load", 12],
  ["Furnace takes mm", 1000],
  ["Steel supplier", "Brackwater Steel Yard"],
  ["Heat treater", "Salt Lane Heat Treatment"],
  ["Prepared by", "planning bench"],
];

/** What is typed of each line, from left to right; the other columns follow. */
const TYPED: readonly (readonly [heading: string, key: keyof EightLine])[] = [
  ["Line", "line"],
  ["Item", "item"],
  ["Use", "use"],
  ["Steel", "steel"],
  ["Quench", "quench"],
  ["Good wanted", "good"],
  ["Length mm", "length"],
  ["Width mm", "width"],
  ["Thickness mm", "thickness"],
  ["Tip width mm", "tipWidth"],
  ["Tip thickness mm", "tipThickness"],
  ["Behind edge mm", "edge"],
];

/** What one line has apart from the others. */
const APART: readonly Entry[] = [
  ["Lines", "K4", "Grind", "rectangle"],
  ["Lines", "K5", "Grind", "diamond"],
  ["Lines", "K6", "Grind", "diamond"],
  ["Recipe", "K7", "Clay mm", 3],
  ["Recipe", "K8", "Sub-zero °C", -80],
  ["Recipe", "K8", "Sub-zero h", 1],
  ["Heat batches", "B5", "Where", "outside"],
  ["Heat batches", "B6", "Where", "outside"],
  ["Heat batches", "B8", "Where", "outside"],
];

/** All that is typed from the enquiry to the papers, in the order in which one comes by it. */
export const EIGHT_LINES: readonly Entry[] = [
  ...COVER.map(([label, content]): Entry => ["Cover", label, label, content]),
  ...EIGHT.flatMap((line) =>
    TYPED.flatMap(([heading, key]): Entry[] => {
      const content = line[key];
      return content === null ? [] : [["Lines", line.line, heading, content]];
    }),
  ),
  ...APART,
  ...EIGHT.map((_, at): Entry => ["Steel and heats", `S${at + 1}`, "Price a kg", 6 + at / 2]),
];

/** A plan as another program fills it: the entries in a blank file, nothing else, then calculated. */
async function filledElsewhere(plan: TypedPlan): Promise<Uint8Array> {
  const blank = planningTemplate();
  const changes = plan.workbook.sheets.map((sheet, at) => {
    const before = blank.sheets[at]?.rows ?? [];
    const cells = sheet.rows.flatMap((row, r) =>
      row.flatMap((cell, c) => {
        if (cell === undefined || cell.content === before[r]?.[c]?.content) return [];
        return [{ row: r, column: c, content: { value: cell.content } }];
      }),
    );
    return [sheet.name, cells] as const;
  });
  return (await patchWorkbook(await planningFile(blank), new Map(changes))).bytes;
}

let eight: TypedPlan | undefined;

/** The eight lines typed into a blank plan, once for all tests of a process; nothing more is typed into it. */
export function typedEight(): TypedPlan {
  if (eight !== undefined) return eight;
  eight = new TypedPlan(planningTemplate());
  for (const entry of EIGHT_LINES) eight.type(entry);
  eight.dispose();
  return eight;
}

/** The same eight lines as another program fills them in. */
export const filledEight = (): Promise<Uint8Array> =>
  kept("plan T-08 typed, filled elsewhere", () => filledElsewhere(typedEight()));
