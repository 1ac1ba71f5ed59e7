import { number, orNull, records, type TableRecord, text } from "../../../core/table";
import run from "./lines.json";

/** One line of a run as the smith fills it in. Lengths in mm, of the finished blade without its tang. */
const COLUMNS = {
  line: text,
  item: text,
  use: text,
  steel: text,
  /** Good pieces ordered. */
  good: number,
  /** Fraction of the pieces started that come out good. */
  yield: number,
  confidence: number,
  /** Hardness aimed at, HRC. */
  aim: number,
  quench: text,
  grind: text,
  length: number,
  width: number,
  thickness: number,
  tipWidth: number,
  tipThickness: number,
  /** Thickness behind the edge; `null` where the section has none. */
  edge: orNull(number),
};

export type RunLine = TableRecord<typeof COLUMNS> & {
  /** What some grinds need besides. */
  readonly bevel?: number;
  readonly curve?: number;
  readonly flat?: number;
  readonly rib?: number;
};

export interface Run {
  readonly name: string;
  readonly forge: string;
  readonly customers: readonly string[];
  readonly due: string;
  readonly lines: readonly RunLine[];
}

/** The invented run that the planning sheet opens with. */
export const demoRun: Run = {
  name: run.run,
  forge: run.forge,
  customers: run.customers,
  due: run.due,
  lines: records(run, COLUMNS),
};
