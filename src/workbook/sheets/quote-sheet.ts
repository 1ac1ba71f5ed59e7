import { cellName } from "../../formula/addresses";
import type { SheetModel } from "../model/sheet-model";
import type { Costs } from "./costs-sheet";
import type { Cover, CoverKey } from "./cover-sheet";
import type { Enquiry } from "./enquiry-sheet";
import type { Lines } from "./lines-sheet";
import { CAUTION, TO_AGREE } from "./parts/doc-rows";
import { heading, helperSheet, note, type Row, title, typed, words, worked } from "./parts/sheet-parts";
import { DATE_FORMAT } from "./parts/table-sheet";

const FIRST = 9;
const MONEY = "#,##0.00";
const HEADINGS = [
  "Line",
  "Description",
  "Pieces",
  "Price each",
  "Amount",
  "Ready in",
  "Since the order",
] as const;

const TERMS: readonly string[] = [
  "Hardness is a band, read under the handle or on a coupon; it is not promised at the edge itself.",
  "Handmade pieces: length ± 2 %, mass ± 5 %, unless the line says otherwise (common practice, no source).",
  "A changed quantity or date is quoted anew.",
  "Legal check of making, selling, carrying and posting: by buyer and seller, each for their own place.",
];

function headRows(cover: Cover): Row[] {
  const pair = (left: [string, CoverKey, string?], right: [string, CoverKey, string?]): Row => {
    const cell = ([, key, format]: [string, CoverKey, string?]) => ({
      ...words(`=IF(${cover.at(key)}="","${TO_AGREE}",${cover.at(key)})`),
      ...(format === undefined ? {} : { format }),
    });
    return [heading(left[0]), cell(left), undefined, heading(right[0]), cell(right)];
  };
  return [
    pair(["Quote no.", "quoteNumber"], ["Run", "run"]),
    pair(["From", "forge"], ["Revision", "revision"]),
    pair(["For", "customers"], ["Date", "asOf", DATE_FORMAT]),
    pair(["Due", "due", DATE_FORMAT], ["Valid, days", "validDays", "0"]),
    pair(["Currency", "currency"], ["Deposit", "deposit", "0 %"]),
  ];
}

interface Sources {
  readonly cover: Cover;
  readonly lines: Lines;
  readonly costs: Costs;
  readonly enquiry: Enquiry;
}

function lineRow({ lines, costs, enquiry }: Sources, leadTimes: readonly string[], index: number): Row {
  const at = (column: number) => `$${cellName(FIRST + index, column)}`;
  const line = at(0);
  const when = (formula: string) => `=IF(${line}="","",${formula})`;
  const size = `${lines.at("steel", index)}&", "&${lines.at("length", index)}&" mm, "&${lines.at("band", index)}&" HRC"`;
  return [
    worked(`=IF(${lines.at("line", index)}="","",${lines.at("line", index)})`),
    words(when(`${lines.at("item", index)}&": "&${size}`)),
    worked(when(lines.at("good", index)), "0"),
    worked(when(`IF(N(${costs.at("rounded", index)})=0,"${TO_AGREE}",${costs.at("rounded", index)})`), MONEY),
    worked(when(`IF(N(${at(3)})=0,"${TO_AGREE}",${at(2)}*${at(3)})`), MONEY),
    typed(leadTimes[index] ?? null),
    words(when(enquiry.at("changed", index))),
  ];
}

/** The offer to the customer. */
export function quoteSheet(sources: Sources, leadTimes: readonly string[]): SheetModel {
  const { count } = sources.lines;
  const [first, last] = [cellName(FIRST, 4), cellName(FIRST + count - 1, 4)];
  const rows: Row[] = [
    [title("Quote")],
    [note("Prices without tax unless the currency says otherwise.")],
    ...headRows(sources.cover),
    [],
    HEADINGS.map((text) => heading(text)),
    ...Array.from({ length: count }, (_, index) => lineRow(sources, leadTimes, index)),
    [heading("Together"), undefined, undefined, undefined, worked(`=SUM(${first}:${last})`, MONEY)],
    [],
    ...TERMS.map((text): Row => [note(text)]),
    [note(CAUTION)],
    [],
    [heading("For the forge"), typed(null), undefined, heading("For the buyer"), typed(null)],
  ];
  return helperSheet("Quote", rows, {
    columnWidths: [84, 258, 56, 84, 92, 76, 90],
    rowHeights: { 0: 28 },
    statusColumns: [6],
    lines: [FIRST, FIRST + count - 1],
    print: {},
  });
}
