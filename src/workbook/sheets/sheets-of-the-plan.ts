/** What one is doing when one works on a sheet, in the order of a run. */
export const STEPS = ["Asking", "Planning", "Buying", "Making", "Sending"] as const;

export type Step = (typeof STEPS)[number];

export interface PlanSheet {
  readonly name: string;
  readonly step: Step;
  /** What the sheet is for, as the cover says it. */
  readonly purpose: string;
  /** Headings of the columns without which a row of it is not finished. */
  readonly needs?: readonly string[];
  /** What a private sheet holds, as a refusal to share it says: no copy that goes out has it. */
  readonly holds?: string;
}

/** The sheet of hardened lots that came back. */
export const LOTS_RECEIVED = "Lots received";

/** Every sheet of the planning workbook in its order. */
export const SHEETS_OF_THE_PLAN: readonly PlanSheet[] = [
  { name: "Cover", step: "Asking", purpose: "who makes the run, rates, and what to do first" },
  {
    name: "Lines",
    step: "Planning",
    purpose: "what is made: use, steel, sizes; hardness, temper, starts",
    needs: ["Item", "Steel", "Use", "Quench", "Good wanted", "Length mm", "Width mm", "Thickness mm"],
  },
  { name: "Recipe", step: "Planning", purpose: "how each line is hardened and tempered, decided once" },
  {
    name: "Enquiry",
    step: "Asking",
    purpose: "what the customer asked for; changes since the order",
    needs: ["Customer"],
  },
  { name: "Stations", step: "Planning", purpose: "blades measured place by place" },
  {
    name: "Steel and heats",
    step: "Buying",
    purpose: "steel bought and in the rack, its mill figures",
    needs: ["Heat no.", "Price a kg"],
  },
  { name: "Steel choice", step: "Asking", purpose: "which steel of the rack for a line, and why" },
  { name: "Cut list", step: "Buying", purpose: "blanks, bars, steel cost", needs: ["Steel in stock"] },
  { name: "Standard route", step: "Planning", purpose: "the steps of every line without its own route" },
  {
    name: "Route",
    step: "Planning",
    purpose: "steps of lines with a route of their own",
    needs: ["Operation"],
  },
  {
    name: "Heat batches",
    step: "Planning",
    purpose: "what is hardened together, energy, charge",
    needs: ["Line"],
  },
  {
    name: "Hardness readings",
    step: "Making",
    purpose: "readings against band and thickness",
    needs: ["1st"],
  },
  {
    name: LOTS_RECEIVED,
    step: "Making",
    purpose: "hardened lots that came back, lot verdict, coupon for the next run",
  },
  {
    name: "Inspection",
    step: "Making",
    purpose: "how many to look at, whether the lot passes",
    needs: ["Looked at"],
  },
  {
    name: "Costs",
    step: "Planning",
    purpose: "cost of each line part by part, price",
    needs: ["First piece h"],
  },
  { name: "Price breaks", step: "Planning", purpose: "price for other quantities" },
  { name: "Quote", step: "Asking", purpose: "goes to the customer" },
  { name: "Steel enquiry", step: "Buying", purpose: "goes to each steel supplier before the order" },
  {
    name: "Offers",
    step: "Buying",
    purpose: "what suppliers answered; private, in no copy that goes out",
    needs: ["Price"],
    holds: "what suppliers ask",
  },
  {
    name: "Best offer",
    step: "Buying",
    purpose: "offers side by side, the cheapest mix; private",
    holds: "what suppliers ask",
  },
  { name: "Steel order", step: "Buying", purpose: "goes to each steel supplier" },
  {
    name: "Heat-treat order",
    step: "Making",
    purpose: "goes to whoever hardens outside, a page a line of a batch",
  },
  { name: "Certificate check", step: "Buying", purpose: "one heat, element by element" },
  { name: "Traveller", step: "Making", purpose: "goes through the shop, a page a line, blade numbers" },
  { name: "Shipping", step: "Sending", purpose: "boxes and papers", needs: ["Sent"] },
  { name: "Past lots", step: "Sending", purpose: "counts of finished runs for the next quote" },
  {
    name: "Register",
    step: "Sending",
    purpose: "what was sent to whom, when, which revision",
    holds: "what was sent to whom",
  },
  { name: "Lists", step: "Planning", purpose: "words of the drop-downs" },
  {
    name: "Cautions and sources",
    step: "Planning",
    purpose: "what may hurt; what the figures rest on",
  },
  { name: "Checks", step: "Planning", purpose: "known answers, and what needs a look" },
];

/** The sheet that remembers who answered what; a plan has it once answers were taken. */
export const LOG_SHEET = "Answers";

/** What the sheets hold that no copy has, by their names in small letters. */
export const PRIVATE_SHEETS: ReadonlyMap<string, string> = new Map([
  ...SHEETS_OF_THE_PLAN.flatMap(({ name, holds }) =>
    holds === undefined ? [] : [[name.toLowerCase(), holds] as const],
  ),
  [LOG_SHEET.toLowerCase(), "who answered what"],
]);

/** Sheets that only the demo run shows. */
export const SHEETS_OF_THE_DEMO: readonly PlanSheet[] = [
  { name: "Coupons", step: "Making", purpose: "hardness tests of the run's own steel, and what they change" },
  { name: "Section", step: "Planning", purpose: "how deep each section hardens, clay with it" },
  { name: "Balance", step: "Planning", purpose: "mass and balance of the swords" },
];
