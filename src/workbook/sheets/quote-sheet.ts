import { cellName } from "../../formula/addresses";
import type { SheetModel } from "../model/sheet-model";
import type { Costs } from "./costs-sheet";
import type { Cover, CoverKey } from "./cover-sheet";
import type { Enquiry } from "./enquiry-sheet";
import type { Lines } from "./lines-sheet";
import {
  CAUTION,
  docSheet,
  isBeyondReach,
  lengthWords,
  letterhead,
  quotedHardness,
  TO_AGREE,
} from "./parts/doc-rows";
import { heading, note, type Row, typed, words, worked } from "./parts/sheet-parts";
import { DATE_FORMAT } from "./parts/table-sheet";

/** Row of the first line: below the letterhead, a note, the head rows, an empty row and the headings. */
const FIRST = 10;
const MONEY = "#,##0.00";
const HEADINGS = ["Line", "Description", "Pieces", "Price each", "Amount", "Ready"] as const;

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
    pair(["For", "customers"], ["Revision", "revision"]),
    pair(["Address", "customerAddress"], ["Date", "asOf", DATE_FORMAT]),
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

function lineRow({ lines, costs, enquiry }: Sources, index: number): Row {
  const at = (column: number) => `$${cellName(FIRST + index, column)}`;
  const line = at(0);
  const when = (formula: string) => `=IF(${line}="","",${formula})`;
  const size = `${lines.at("steel", index)}&", "&${lengthWords(lines.at("length", index))}&", "&${quotedHardness((key) => lines.at(key, index))}`;
  const price = costs.at("rounded", index);
  const isStopped = isBeyondReach((key) => lines.at(key, index));
  return [
    worked(`=IF(${lines.at("line", index)}="","",${lines.at("line", index)})`),
    words(when(`${lines.at("item", index)}&": "&${size}`)),
    worked(when(lines.at("good", index)), "0"),
    {
      ...worked(when(`IF(${isStopped},"${STOPPED}",IF(N(${price})=0,"${TO_AGREE}",${price}))`), MONEY),
      wrap: true,
    },
    worked(when(`IF(N(${at(3)})=0,${at(3)},${at(2)}*${at(3)})`), MONEY),
    worked(when(enquiry.at("ready", index)), DATE_FORMAT),
  ];
}

/** Said in place of a price that would promise what cannot be had. */
const STOPPED = "hardness to be agreed first";

/** The offer to the customer. */
export function quoteSheet(sources: Sources): SheetModel {
  const { count } = sources.lines;
  const { cover } = sources;
  const cell = (column: number, row: number) => cellName(row, column);
  const column = (at: number) => `${cell(at, FIRST)}:${cell(at, FIRST + count - 1)}`;
  const open = `SUMPRODUCT((${column(0)}<>"")*NOT(ISNUMBER(${column(4)})))`;
  const rows: Row[] = [
    ...letterhead(cover, "Quote"),
    [note("Prices without tax unless the currency says otherwise.")],
    ...headRows(cover),
    [],
    HEADINGS.map((text) => heading(text)),
    ...Array.from({ length: count }, (_, index) => lineRow(sources, index)),
    [
      heading("Together"),
      words(`=IF(${open}=0,"",${open}&" of the lines above not counted: still open")`),
      undefined,
      undefined,
      worked(`=SUM(${column(4)})`, MONEY),
    ],
    [],
    ...TERMS.map((text): Row => [note(text)]),
    [note(CAUTION)],
    [],
    [heading("For the forge"), typed(null), undefined, heading("For the buyer"), typed(null)],
  ];
  const place = rows.findIndex(([first]) => first?.content === HEADINGS[0]) + 1;
  if (place !== FIRST) throw new RangeError(`the first line of the quote stands in row ${place + 1}`);
  return docSheet("Quote", rows, {
    columnWidths: [76, 268, 56, 100, 100, 96],
    lines: [FIRST, FIRST + count - 1],
    print: { isPaper: true },
  });
}
