import run from "./lines.json";

/** One line of a run as the smith fills it in. Lengths in mm, of the finished blade without its tang. */
export interface RunLine {
  readonly line: string;
  readonly item: string;
  readonly use: string;
  readonly steel: string;
  /** Good pieces ordered. */
  readonly good: number;
  /** Fraction of the pieces started that come out good. */
  readonly yield: number;
  readonly confidence: number;
  /** Hardness aimed at, HRC. */
  readonly aim: number;
  readonly quench: string;
  readonly grind: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly tipWidth: number;
  readonly tipThickness: number;
  /** Thickness behind the edge; `null` where the section has none. */
  readonly edge: number | null;
}

export interface Run {
  readonly name: string;
  readonly forge: string;
  readonly customers: readonly string[];
  readonly due: string;
  readonly lines: readonly RunLine[];
}

function lineFrom(row: readonly unknown[]): RunLine {
  return Object.fromEntries(run.columns.map((column, index) => [column, row[index]])) as unknown as RunLine;
}

/** The invented run that the planning sheet opens with. */
export const demoRun: Run = {
  name: run.run,
  forge: run.forge,
  customers: run.customers,
  due: run.due,
  lines: run.rows.map(lineFrom),
};
