import type { LiveWorkbook } from "../file/read/live-workbook";
import { OUTSIDE } from "../sheets/batches-sheet";
import { BEYOND_REACH, TO_AGREE } from "../sheets/parts/doc-rows";
import { PlanSheet } from "../sheets/plan-sheet";
import { isPlan } from "../sheets/plan-table";
import type { PlanName } from "./copy-number";
import type { AnswerForm } from "./forms";

type Told = number | string;

/** A line that somebody is asked about. */
export interface AskedLine {
  /** In the words of the plan, whatever row it stands in: `L1/S1`. */
  readonly line: string;
  /** Who is asked. */
  readonly whom: string;
  /** What the copy tells of it, by heading. */
  readonly told: Readonly<Record<string, Told>>;
}

/** The sheets of a planning workbook, read by their headings, with what the plan is called. */
export interface Plan {
  readonly name: PlanName;
  readonly currency: string;
  readonly sheets: ReadonlyMap<string, PlanSheet>;
  readonly elements: readonly string[];
}

/** Reads a planning workbook; `undefined` where a workbook is laid out otherwise. */
export function planOf(live: LiveWorkbook): Plan | undefined {
  if (!isPlan(live)) return undefined;
  const sheets = new Map(live.sheets.map((sheet) => [sheet.listed.name, new PlanSheet(live, sheet)]));
  const beside = (label: string) => wordsIn(sheets.get("Cover")?.beside(label).value);
  return {
    name: { run: beside("Run"), forge: beside("Forge") },
    currency: beside("Currency"),
    sheets,
    elements: (sheets.get("Steel and heats")?.headings ?? []).filter((heading) => / %$/.test(heading)),
  };
}

const wordsIn = (value: unknown): string => (value === undefined ? "" : String(value).trim());
const figureIn = (value: unknown): number => (typeof value === "number" ? value : 0);

/** Cells of a sheet's row as words and figures; empty where a sheet or a heading is missing. */
class Row {
  constructor(
    private readonly sheet: PlanSheet | undefined,
    private readonly row: number,
  ) {}

  words(heading: string): string {
    return wordsIn(this.sheet?.under(heading, this.row).value);
  }

  figure(heading: string): number {
    return figureIn(this.sheet?.under(heading, this.row).value);
  }

  /** A length as a paper tells it: a bare figure is in mm. */
  length(heading: string): string {
    const value = this.sheet?.under(heading, this.row).value;
    return typeof value === "number" ? `${Math.round(value * 100) / 100} mm` : wordsIn(value);
  }
}

const rowsOf = ({ sheets }: Plan, name: string, heading: string): Row[] =>
  (sheets.get(name)?.rowsWith(heading) ?? []).map((row) => new Row(sheets.get(name), row));

/** The row of a sheet that a name stands in. */
function rowNamed(plan: Plan, name: string, heading: string, wanted: string): Row {
  const sheet = plan.sheets.get(name);
  const row = sheet?.rowsWith(heading).find((at) => wordsIn(sheet.under(heading, at).value) === wanted);
  return new Row(row === undefined ? undefined : sheet, row ?? -1);
}

const oneDecimal = (value: number) => Math.round(value * 10) / 10;
const sameName = (a: string, b: string) => a.trim().toLowerCase() === b.trim().toLowerCase();

/** Lines for which bars are bought, whoever sells them. */
function steelLines(plan: Plan): AskedLine[] {
  const bought = rowsOf(plan, "Cut list", "Bars to buy").filter((row) => row.figure("Bars to buy") > 0);
  return bought.map((row) => {
    const steel = row.words("Steel in stock");
    const stock = rowNamed(plan, "Steel and heats", "Steel", steel);
    const bars = row.figure("Bars to buy");
    return {
      line: `${row.words("Line")}/${steel}`,
      whom: row.words("Bought from"),
      told: {
        Line: row.words("Line"),
        Grade: row.words("Grade"),
        Form: stock.words("Form"),
        "Condition asked": stock.words("Condition"),
        Section: `${row.length("Thickness mm")} × ${row.length("Width mm")}`,
        Bars: `${bars} of ${row.length("Bar mm")}`,
        kg: oneDecimal(row.figure("To buy kg")),
      },
    };
  });
}

/** The hardness of a line as its order asks for it: none that its steel does not reach. */
function hardnessAsked(line: Row): string {
  const isBeyond = BEYOND_REACH.includes(line.words("Against the band")) || line.words("Temper °C") === "";
  return isBeyond ? TO_AGREE : line.words("Band HRC");
}

/** A lot that goes out: a line of a batch. */
interface Lot {
  readonly name: string;
  readonly whom: string;
  readonly pieces: number;
  readonly told: Readonly<Record<string, Told>>;
}

function lots(plan: Plan): Lot[] {
  const usual = wordsIn(plan.sheets.get("Cover")?.beside("Heat treater").value);
  return rowsOf(plan, "Heat batches", "Batch")
    .filter((row) => row.words("Where") === OUTSIDE)
    .map((row) => {
      const line = row.words("Line");
      const own = rowNamed(plan, "Lines", "Line", line);
      const pieces = row.figure("Pieces");
      return {
        name: `${row.words("Batch")}/${line}`,
        whom: row.words("Heat treater") || usual,
        pieces,
        told: {
          Batch: row.words("Batch"),
          Line: line,
          Part: own.words("Item"),
          Grade: row.words("Grade"),
          Pieces: pieces,
          kg: oneDecimal(row.figure("kg in all")),
          "HRC asked": hardnessAsked(own),
        },
      };
    });
}

const lotLines = (plan: Plan): AskedLine[] =>
  lots(plan).map(({ name, whom, told }) => ({ line: name, whom, told }));

/** How many pieces of a lot are tested, as the heat-treat order says it; common practice, no source. */
const tested = (pieces: number) => Math.min(pieces, Math.max(3, Math.ceil(pieces / 5)));

function pieceLines(plan: Plan): AskedLine[] {
  return lots(plan).flatMap(({ name, whom, pieces, told }) =>
    Array.from({ length: tested(pieces) }, (_, at) => ({
      line: `${name}/${at + 1}`,
      whom,
      told: { ...told, "No.": at + 1 },
    })),
  );
}

/** The lines of the quote, as that paper tells them. */
function quoteLines(plan: Plan): AskedLine[] {
  const sheet = plan.sheets.get("Quote");
  return rowsOf(plan, "Lines", "Line").flatMap((row) => {
    const line = row.words("Line");
    const place = sheet?.rowBeginning(line);
    if (sheet === undefined || place === undefined) return [];
    const [description, pieces, price] = [1, 2, 3].map((column) => sheet.cell(place, column).value);
    return [
      {
        line,
        whom: rowNamed(plan, "Enquiry", "Line", line).words("Customer"),
        told: {
          Line: line,
          Description: wordsIn(description),
          Pieces: figureIn(pieces),
          "Price each": typeof price === "number" ? price : wordsIn(price),
        },
      },
    ];
  });
}

const SOURCES: Readonly<Record<string, (plan: Plan) => AskedLine[]>> = {
  E: steelLines,
  O: (plan) => steelLines(plan).filter(({ whom }) => whom !== ""),
  H: lotLines,
  R: pieceLines,
  Q: quoteLines,
};

function unlike(lines: readonly AskedLine[]): AskedLine[] {
  const seen = new Set<string>();
  return lines.filter(({ line }) => seen.size < seen.add(line).size);
}

/**
 * The lines of the plan that a form asks about, each once.
 *
 * @param whom - Only those of that one; all of them without it.
 */
export function linesAsked(plan: Plan, { mark }: AnswerForm, whom?: string): AskedLine[] {
  const all = unlike(SOURCES[mark]?.(plan) ?? []);
  return whom === undefined ? all : all.filter((line) => sameName(line.whom, whom));
}

/** Whether the lines are made for more than one customer. */
export const hasSeveralCustomers = (plan: Plan): boolean =>
  new Set(rowsOf(plan, "Enquiry", "Customer").map((row) => row.words("Customer").toLowerCase())).size > 1;
