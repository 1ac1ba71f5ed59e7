import blanks from "./run-r07/blanks.json";
import heats from "./run-r07/heats.json";
import history from "./run-r07/history.json";
import offers from "./run-r07/offers.json";
import example from "./run-r07/papers.json";
import came from "./run-r07/received.json";
import { demoRun, type RunLine } from "./run-r07/run";
import planned from "./run-r07/run-plan.json";
import swords from "./run-r07/swords.json";

type Cell = number | string | null;
export type DataRow = readonly Cell[];

/** What the cover of a run says; a figure that nobody has given yet stays open. */
export type CoverData = Partial<typeof example.cover> & {
  readonly run?: string;
  readonly forge?: string;
  readonly customers?: string;
  readonly steelBy?: string;
};

/** How a line is hardened and tempered, beyond its steel, target and quench. Lengths in mm, °C, hours. */
export interface RecipeData {
  readonly section?: number;
  readonly harden?: number;
  readonly tempers?: number;
  readonly hours?: number;
  readonly knownC?: number;
  readonly knownHrc?: number;
  readonly clay?: number;
  readonly clayFrom?: number;
  readonly quenchTo?: number;
  readonly subZeroHours?: number;
}

/** What a planning workbook is filled with. Lists in the order of the lines, or of what they list. */
export interface TemplateData {
  /** Title of the file. */
  readonly title: string;
  readonly cover: CoverData;
  readonly lines: readonly RunLine[];
  readonly recipes: readonly RecipeData[];
  readonly enquiry: readonly DataRow[];
  readonly elements: readonly string[];
  /** Steel, form, condition, supplier, kg, certificate; then grade, heat number and analysis; then price and its date. */
  readonly steels: readonly DataRow[];
  readonly heats: readonly DataRow[];
  readonly prices: readonly DataRow[];
  /** Supplier, steel, width, thickness, price, what it counts, bar length, bars in stock, minimum, freight, week, heat, remarks. */
  readonly offers: readonly DataRow[];
  /** Blank length, width, thickness, bar, kg in the rack. */
  readonly blanks: readonly DataRow[];
  /** Day, kg and bars received and the heat number on the bar, in the order of the steels. */
  readonly received: readonly DataRow[];
  /** Pieces back, day, treatment lot, temper as run and its hours, in the order of the batches. */
  readonly lotsReceived: readonly DataRow[];
  /** Mass of a forged blade's tang in g; `null` where a blade is cut from bar. */
  readonly tang: readonly (number | null)[];
  readonly swords: readonly (typeof swords.swords)[number][];
  readonly operations: readonly DataRow[];
  readonly batches: readonly DataRow[];
  readonly costs: readonly DataRow[];
  readonly readings: readonly DataRow[];
  readonly inspection: readonly DataRow[];
  readonly leadTimes: readonly string[];
  readonly shipping: readonly DataRow[];
  readonly lots: readonly DataRow[];
}

/** Place of the number of tempers in a batch of the demo. */
const CYCLES = 11;
/** Swords of the demo that the run makes: line and station set. */
const SWORDS_OF_RUN = 2;

/** The invented run as a filled planning workbook. */
export function exampleData(): TemplateData {
  const { run, forge, customers } = {
    run: demoRun.name,
    forge: demoRun.forge,
    customers: demoRun.customers.join(" and "),
  };
  return {
    title: `Run ${run} of ${forge} (example, invented)`,
    cover: { ...example.cover, run, forge, customers },
    lines: demoRun.lines,
    recipes: example.batches.map((batch) => ({ tempers: Number(batch[CYCLES]) })),
    enquiry: example.enquiry,
    elements: heats.elements,
    steels: example.steels,
    heats: heats.rows,
    prices: planned.typed["price kg"].map((price, index) => [
      price,
      planned.typed["price date"][index] ?? null,
    ]),
    offers: offers.rows,
    received: came.steels,
    lotsReceived: came.lots,
    blanks: blanks.rows,
    tang: example.tang,
    swords: swords.swords.slice(0, SWORDS_OF_RUN),
    operations: example.operations,
    batches: example.batches,
    costs: example.costs,
    readings: example.readings,
    inspection: example.inspection,
    leadTimes: example.quote,
    shipping: example.shipping,
    lots: history.rows,
  };
}

/** A planning workbook that is still to be filled in. */
export const EMPTY_DATA: TemplateData = {
  title: "Planning workbook",
  cover: {},
  lines: [],
  recipes: [],
  enquiry: [],
  elements: heats.elements,
  steels: [],
  heats: [],
  prices: [],
  offers: [],
  received: [],
  lotsReceived: [],
  blanks: [],
  tang: [],
  swords: [],
  operations: [],
  batches: [],
  costs: [],
  readings: [],
  inspection: [],
  leadTimes: [],
  shipping: [],
  lots: [],
};
