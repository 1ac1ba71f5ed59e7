import { LOTS_RECEIVED } from "../sheets/sheets-of-the-plan";

/** How an answer is read, and so in which words it may be given. */
export type AnswerKind =
  | "money"
  | "per"
  | "lengths"
  | "week"
  | "date"
  | "temperature"
  | "hardness"
  | "mass %"
  | "count"
  | "choice"
  | "words";

/** A column that the other side fills in. */
export interface AnswerField {
  readonly heading: string;
  readonly kind: AnswerKind;
  /** What to type, in plain words: the note on the heading. */
  readonly note: string;
  /** Pixels. */
  readonly width: number;
  /** Offered as a drop-down. */
  readonly words?: readonly string[];
  /** Heading of the plan's column that takes the answer; the log alone keeps an answer without one. */
  readonly goesTo?: string;
  /** The plan's sheet with that column, where it is another than that of the form. */
  readonly sheet?: string;
}

/** A column that tells what is asked about: it stands in the copy and is locked. */
export interface ToldField {
  readonly heading: string;
  readonly width: number;
  readonly format?: string;
}

/** The table on which the other side answers a paper: a row for each line, told columns first. */
export interface AnswerForm {
  /** Letter in front of the keys of its rows. */
  readonly mark: string;
  /** Name of its sheet in a copy. */
  readonly name: string;
  /** The paper that it answers. */
  readonly paper: string;
  /** For whom, as a workbook is shared for somebody. */
  readonly audience: "supplier" | "heat-treater" | "customer";
  readonly told: readonly ToldField[];
  readonly asked: readonly AnswerField[];
  /** Whether whoever is asked may be asked about any line, bought there or not. */
  readonly asksAnybody?: boolean;
  /** Whether the elements of the plan's analysis are asked for too, a column each. */
  readonly asksAnalysis?: boolean;
  /** Headings without which a row that was begun is half filled. */
  readonly needs: readonly string[];
  /** The plan's sheet that takes the answers. */
  readonly sheet: string;
}

/** Units that a price of steel is given for, and those of a price of heat treatment. */
export const PRICE_UNITS = ["kg", "lb", "100 kg", "t", "bar"] as const;
const TREATMENT_UNITS = ["kg", "lb", "piece", "lot"] as const;

/** What a customer can say to a line of a quote. */
const ANSWERS_TO_QUOTE = ["accepted", "changed", "refused"] as const;

/** Label of the day by which an answer is wanted, on the letters that ask and in the register. */
export const ANSWER_BY = "Answer by";
/** Said where the sender names no day. */
export const USUAL_TIME = "within a week";

export const KEY = "Key";
export const ANSWERED_BY = "Answered by";
export const ANSWERED_ON = "Date";
/** Label of whom the table was made for. */
export const ASKED_OF = "Asked of";

const price = (goesTo: string): AnswerField => ({
  heading: "Price",
  kind: "money",
  note: "A figure in the currency named above, without tax, surcharges counted in: 3.85 or 3,85.",
  width: 58,
  goesTo,
});

const perUnit = (words: readonly string[]): AnswerField => ({
  heading: "Price for",
  kind: "per",
  note: `What the price is for: ${words.join(", ")}. Empty means kg.`,
  width: 56,
  words,
});

const MINIMUM: AnswerField = {
  heading: "Minimum charge",
  kind: "money",
  note: "The least that an order of this comes to; empty where there is none.",
  width: 66,
};
const WEEK: AnswerField = {
  heading: "Week of delivery",
  kind: "week",
  note: "Calendar week of delivery: 2026-W41, week 41, or a day such as 2026-10-05.",
  width: 72,
};
const BAR_LENGTHS: AnswerField = {
  heading: "Bar lengths in stock mm",
  kind: "lengths",
  note: "Lengths of bar in stock, a semicolon between them: 3000; 6000. Other units may be written: 3 m.",
  width: 90,
};
const REMARKS: AnswerField = {
  heading: "Remarks",
  kind: "words",
  note: "Anything else, in a few words.",
  width: 116,
};

const STEEL_LINE: readonly ToldField[] = [
  { heading: "Line", width: 46 },
  { heading: "Grade", width: 88 },
  { heading: "Form", width: 84 },
  { heading: "Condition asked", width: 110 },
  { heading: "Section", width: 100 },
  { heading: "Bars", width: 84 },
  { heading: "kg", width: 44, format: "0.0" },
];

const ENQUIRY: AnswerForm = {
  mark: "E",
  name: "Answer to enquiry",
  paper: "Steel enquiry",
  audience: "supplier",
  told: STEEL_LINE,
  asked: [
    price("Price"),
    perUnit(PRICE_UNITS),
    { ...MINIMUM, goesTo: "Minimum charge" },
    {
      ...MINIMUM,
      heading: "Freight",
      note: "Freight of the whole delivery, said once; empty where it is free.",
      goesTo: "Freight",
    },
    { ...BAR_LENGTHS, goesTo: "Bar length mm" },
    { ...WEEK, goesTo: "Week" },
    {
      heading: "Equal grade offered",
      kind: "words",
      note: "Name of an equal grade, where another is offered.",
      width: 92,
    },
    { ...REMARKS, goesTo: "Supplier's remarks" },
  ],
  asksAnybody: true,
  needs: ["Price", "Week of delivery"],
  sheet: "Offers",
};

const ORDER: AnswerForm = {
  mark: "O",
  name: "Answer to order",
  paper: "Steel order",
  audience: "supplier",
  told: STEEL_LINE,
  asked: [
    price("Price a kg"),
    perUnit(PRICE_UNITS),
    { ...WEEK, goesTo: "Delivery" },
    {
      heading: "Heat no.",
      kind: "words",
      note: "As on the certificate and on the bars.",
      width: 84,
      goesTo: "Heat no.",
    },
    {
      heading: "Condition",
      kind: "words",
      note: "Condition as delivered, with its hardness where known.",
      width: 110,
      goesTo: "Condition",
    },
    REMARKS,
  ],
  asksAnalysis: true,
  needs: [],
  sheet: "Steel and heats",
};

const TREATMENT: AnswerForm = {
  mark: "H",
  name: "Answer to heat treatment",
  paper: "Heat-treat order",
  audience: "heat-treater",
  told: [
    { heading: "Batch", width: 50 },
    { heading: "Line", width: 46 },
    { heading: "Part", width: 108 },
    { heading: "Grade", width: 88 },
    { heading: "Pieces", width: 50, format: "0" },
    { heading: "kg", width: 44, format: "0.0" },
    { heading: "HRC asked", width: 76 },
  ],
  asked: [
    price("Outside: a kg"),
    perUnit(TREATMENT_UNITS),
    { ...MINIMUM, goesTo: "Outside: at least" },
    {
      ...MINIMUM,
      heading: "Set-up charge",
      note: "Charge for each lot beside the price; empty where there is none.",
      goesTo: "Outside: set-up",
    },
    {
      heading: "Back on",
      kind: "date",
      note: "Day on which the lot is ready: 2026-10-05.",
      width: 82,
      goesTo: "Back on",
      sheet: LOTS_RECEIVED,
    },
    {
      heading: "Temper as run °C",
      kind: "temperature",
      note: "Temper of the lot as it was run, in °C, as a figure or as the order has it: 2 × 2 h at 387 °C. Write °F behind a figure in that scale.",
      width: 70,
      goesTo: "Temper as run °C",
      sheet: LOTS_RECEIVED,
    },
    {
      heading: "Lot no.",
      kind: "words",
      note: "Your number of the lot, as on the certificate and on the furnace chart.",
      width: 80,
      goesTo: "Treatment lot no.",
      sheet: LOTS_RECEIVED,
    },
    {
      heading: "Hardened as run",
      kind: "words",
      note: "Furnace, temperature, soak and quench as they were run, and straightness outside the limit: vacuum, 845 °C, 18 min, oil at 60 °C; piece 4 bent 12 mm.",
      width: 116,
    },
    REMARKS,
  ],
  needs: [],
  sheet: "Heat batches",
};

const hardness = (heading: string): AnswerField => ({
  heading,
  kind: "hardness",
  note: "Reading in Rockwell C, one place after the point: 58.5. No other scale, please.",
  width: 52,
});

const READINGS: AnswerForm = {
  mark: "R",
  name: "Readings by piece",
  paper: "Heat-treat order",
  audience: "heat-treater",
  told: [
    { heading: "Batch", width: 50 },
    { heading: "Line", width: 46 },
    { heading: "No.", width: 40, format: "0" },
    { heading: "HRC asked", width: 70 },
  ],
  asked: [
    { heading: "Piece", kind: "words", note: "Number that is marked on the piece.", width: 110 },
    {
      heading: "Place of test",
      kind: "words",
      note: "Where it was read: tang, ricasso or cheek, ground clean; never the edge.",
      width: 120,
    },
    hardness("1st HRC"),
    hardness("2nd HRC"),
    hardness("3rd HRC"),
    { ...REMARKS, width: 180 },
  ],
  needs: ["Piece", "1st HRC", "2nd HRC", "3rd HRC"],
  sheet: "Hardness readings",
};

const QUOTE: AnswerForm = {
  mark: "Q",
  name: "Answer to quote",
  paper: "Quote",
  audience: "customer",
  told: [
    { heading: "Line", width: 46 },
    { heading: "Description", width: 268 },
    { heading: "Pieces", width: 56, format: "0" },
    { heading: "Price each", width: 76, format: "#,##0.00" },
  ],
  asked: [
    {
      heading: "Answer",
      kind: "choice",
      note: "accepted, changed or refused. With changed, please give the pieces wanted.",
      width: 84,
      words: ANSWERS_TO_QUOTE,
      goesTo: "Quantity as ordered",
    },
    {
      heading: "Pieces wanted",
      kind: "count",
      note: "A whole number, where it is another than the quote says.",
      width: 76,
    },
    { ...REMARKS, width: 180 },
  ],
  needs: ["Answer"],
  sheet: "Enquiry",
};

/** Every table of answers there is: what is asked of whom is said here alone. */
export const ANSWER_FORMS: readonly AnswerForm[] = [ENQUIRY, ORDER, TREATMENT, READINGS, QUOTE];

/** The element of a heading such as `C %`; `undefined` for any other heading. */
export const elementOf = (heading: string): string | undefined => /^([A-Z][a-z]?) %$/.exec(heading)?.[1];

/** The column of an element's content. */
function elementField(heading: string): AnswerField {
  const element = elementOf(heading) ?? heading;
  return {
    heading,
    kind: "mass %",
    note: `Content of ${element} in mass % by the mill's certificate; empty where it was not analysed.`,
    width: 52,
    goesTo: heading,
  };
}

/**
 * All that a form asks.
 *
 * @param elements - Headings of the plan's analysis, such as `C %`.
 */
export function fieldsOf({ asked, asksAnalysis }: AnswerForm, elements: readonly string[]): AnswerField[] {
  const analysis = asksAnalysis ? elements.filter((heading) => elementOf(heading)).map(elementField) : [];
  return [...asked, ...analysis];
}
