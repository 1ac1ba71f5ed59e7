import { cellName, type Rectangle } from "../../../formula/addresses";
import { textLiteral } from "../../../formula/tokens";
import type { CellModel, SheetModel } from "../../model/sheet-model";
import type { Cover } from "../cover-sheet";
import { heading, helperSheet, inFront, note, type Row, words, worked } from "./sheet-parts";
import { NOT_ASSESSED } from "./treatment";

/** What stands where a paper leaves a point open: whoever gets it must ask. */
export const TO_AGREE = "to be agreed";

/** The usual caution of a paper that goes out. */
export const CAUTION =
  "Figures are estimates within their stated error: try one piece first. Follow local codes and licensed practice.";

/** A named point of a paper. */
export interface DocField {
  readonly label: string;
  /** A formula without its equals sign, or the text that stands until someone types another. */
  readonly formula?: string;
  readonly text?: string;
  readonly format?: string;
}

/** A point taken from another sheet; open while that is empty. */
export const taken = (label: string, reference: string, format?: string): DocField => ({
  label,
  formula: `IF(${reference}="","${TO_AGREE}",${reference})`,
  ...(format === undefined ? {} : { format }),
});

/** A point with a text that the smith may type over; open while there is none. */
export const stated = (label: string, text: string = TO_AGREE, format?: string): DocField => ({
  label,
  text,
  ...(format === undefined ? {} : { format }),
});

/** A point worked out by a formula of its own. */
export const told = (label: string, formula: string): DocField => ({ label, formula });

/** A temperature in °C as text in both scales, as part of a formula. */
export const bothScales = (celsius: string): string =>
  `ROUND(${celsius},0)&" °C ("&ROUND(${celsius}*9/5+32,0)&" °F)"`;

/** The hardness aimed at: as typed, else the middle of what the temper gives. */
export function aimOf(line: (key: "aim" | "low" | "high") => string): string {
  const [low, high] = [line("low"), line("high")];
  const middle = `IF(AND(ISNUMBER(${low}),ISNUMBER(${high})),ROUND((${low}+${high})/2,0),"${TO_AGREE}")`;
  return `IF(${line("aim")}="",${middle},${line("aim")})`;
}

/** A line's columns that say whether its hardness can be had. */
type Promised = (key: "status" | "temperC") => string;

/** Words of the status that no temper and no care can mend: no paper must ask for or promise such a hardness. */
export const BEYOND_REACH: readonly string[] = ["out of reach", "does not harden", NOT_ASSESSED];

/** True for a line of which no paper may name a hardness. */
export const isBeyondReach = (line: Promised): string =>
  `OR(${BEYOND_REACH.map((word) => `${line("status")}="${word}"`).join(",")},ISERROR(${line("temperC")}))`;

/** The band of the use as a paper asks for it. */
export const bandWords = (line: (key: "status" | "temperC" | "band") => string, unit = ""): string =>
  `IF(${isBeyondReach(line)},"hardness ${TO_AGREE}",${line("band")}&"${unit}")`;

/** The hardness aimed at, and what is to be said of it where the band that is asked for does not hold it. */
export function aimWords(
  line: (key: "status" | "temperC" | "aim" | "low" | "high" | "use") => string,
): string {
  return `IF(${isBeyondReach(line)},"${TO_AGREE}",${aimThatCanBeHad(line)})`;
}

/** An end of the range of a use: 1 the low one, 3 the high one. */
export const bandEnd = (use: string, column: number) => `INDEX(BLADE.BAND(${use}),1,${column})`;

function aimThatCanBeHad(line: (key: "aim" | "low" | "high" | "use") => string): string {
  const aim = aimOf(line);
  const use = line("use");
  const told = `IF(${aim}<${bandEnd(use, 1)},", below the range: agree first",IF(${aim}>${bandEnd(use, 3)},", above the range: agree first",""))`;
  return `IF(ISNUMBER(${aim}),${aim}&IFERROR(${told},""),${aim})`;
}

/** The band as a customer is promised it: where the shop itself aims beside it, the customer hears so before agreeing. */
export function quotedHardness(
  line: (key: "status" | "temperC" | "band" | "aim" | "low" | "high" | "use") => string,
): string {
  const aim = aimOf(line);
  const use = line("use");
  const isBeside = `IFERROR(AND(ISNUMBER(${aim}),OR(${aim}<${bandEnd(use, 1)},${aim}>${bandEnd(use, 3)})),FALSE)`;
  const expected = `IF(${isBeyondReach(line)},"",IF(${isBeside},", "&${aim}&" HRC expected: agree first",""))`;
  return `${bandWords(line, " HRC")}&${expected}`;
}

/** A heat number, or that nobody knows it yet. */
export const heatNumber = (reference: string, label = "Heat no."): DocField =>
  told(label, `IF(${reference}="","not known yet",${reference})`);

/** A length in mm; behind one that was typed in another unit its mm stand in brackets. */
export function lengthWords(cell: string): string {
  const figure = (millimetres: string) => `ROUND(${millimetres},2)&" mm"`;
  const read = `BLADE.LENGTH(${cell})`;
  const typed = `IF(RIGHT(${cell},2)="mm",${figure(read)},${cell}&" ("&${figure(read)}&")")`;
  return `IF(ISNUMBER(${cell}),${figure(cell)},IFERROR(${typed},${cell}&""))`;
}

/** A formula that waits until a paper has a subject. */
const waiting = (named: string, formula: string) => `=IF(${named}="","",${formula})`;

function valueCell({ formula, text, format }: DocField, named: string): CellModel {
  const content = formula ?? textLiteral(text ?? "");
  return {
    content: named === "" ? `=${content}` : waiting(named, content),
    role: formula === undefined ? "typed" : "words",
    wrap: true,
    ...(format === undefined ? {} : { format }),
  };
}

/** The same without boxes, names too as formulas: nothing shows on paper where there is no subject. */
export function openFieldRows(fields: readonly DocField[], named: string): Row[] {
  const name = (label: string): CellModel => ({
    content: waiting(named, textLiteral(label)),
    role: "openLabel",
    wrap: true,
  });
  return fieldRows(fields, named).map((row, at) =>
    row.map((cell, column) => {
      if (cell === undefined || column % 2 === 1) return cell && { ...cell, role: "open" };
      const field = fields[column === 0 ? at : Math.ceil(fields.length / 2) + at];
      return name(field?.label ?? "");
    }),
  );
}

/** Points two beside each other, name in front. Where `named` is a cell, all wait until it is filled. */
export function fieldRows(fields: readonly DocField[], named = ""): Row[] {
  const half = Math.ceil(fields.length / 2);
  return Array.from({ length: half }, (_, index) =>
    [fields[index], fields[half + index]].flatMap((field) =>
      field === undefined ? [] : [inFront(field.label), valueCell(field, named)],
    ),
  );
}

/** A part of a paper with its name. */
export const section = (name: string, fields: readonly DocField[], named = ""): Row[] => [
  [heading(name)],
  ...fieldRows(fields, named),
];

/** The head of a paper: who sends it and what it is. Without a forge it says nothing, never the name of the workbook. */
export function letterhead(cover: Cover, paper: string, named = ""): Row[] {
  const forge = cover.at("forge");
  const lines = ["address", "contact", "tax"] as const;
  const address = lines.map((key) => `IF(${cover.at(key)}="","",${cover.at(key)})`).join(",");
  const content = (formula: string) => (named === "" ? `=${formula}` : waiting(named, formula));
  return [
    [
      { content: content(`IF(${forge}="","",${forge})`), role: "title" },
      undefined,
      { content: content(textLiteral(paper)), role: "title" },
    ],
    [{ content: content(`TEXTJOIN(" · ",TRUE,${address})`), role: "note" }],
  ];
}

const SIGN: CellModel = { content: "", role: "typed" };

/** Cells to sign in, and the usual caution. */
export const signatures = (
  ours = "For the forge, date",
  theirs = "For the supplier, date",
): readonly Row[] => [[inFront(ours), SIGN, inFront(theirs), SIGN], [note(CAUTION)]];

/** Pixels of the four columns of a paper: one page wide at full size on A4 and on Letter. */
const DOC_WIDTHS = [122, 228, 122, 224] as const;

/** Papers of one kind, a page each: as many as there are subjects. */
export interface Pages {
  readonly name: string;
  readonly cover: Cover;
  /** What the paper is called at its head. */
  readonly paper: string;
  /** Formula for what the page is about, empty where there is none. */
  readonly subject: (page: number) => string;
  /** What stands in front of the subject. */
  readonly label: string;
  readonly count: number;
  /** Rows below the head; all pages have as many. @param row - The first of them. */
  readonly body: (page: number, named: string, row: number) => readonly Row[];
  /** Formulas for which page of its paper a page is, and of how many; each page is a paper of its own without. */
  readonly number?: (page: number, named: string) => readonly [page: string, of: string];
  /** Formula for the number of pages that have a subject. */
  readonly filled: string;
  readonly widths?: readonly number[];
  /** Pixels of columns beside the paper, which are not shown: a chart draws what stands in them. */
  readonly besideWidths?: readonly number[];
  /** Cells that are one cell, of a page whose rows below the head begin in a row. */
  readonly merged?: (row: number) => readonly Rectangle[];
}

/** Rows of the head of a page. */
const HEAD_ROWS = 3;

/** Where a page that begins in a row names its subject; a page without one is not printed. */
export const subjectPlace = (start: number) => ({ row: start + 2, column: 1 });

function onePage(pages: Pages, index: number, start: number): Row[] {
  const subject = subjectPlace(start);
  const named = cellName(subject.row, subject.column, "both");
  const head = letterhead(pages.cover, pages.paper, named);
  const [page, of] = pages.number?.(index, named) ?? ["1", "1"];
  return [
    ...head,
    [
      inFront(pages.label),
      worked(`=${pages.subject(index)}`),
      inFront("Page"),
      words(waiting(named, `${page}&" of "&${of}`)),
    ],
    ...pages.body(index, named, start + HEAD_ROWS),
  ];
}

/** A sheet of papers that go out, each on a page of its own, at full size. */
export function paperSheet(pages: Pages): SheetModel {
  const rows: Row[] = [];
  const breaksAfter: number[] = [];
  const merged: Rectangle[] = [];
  for (let index = 0; index < pages.count; index += 1) {
    merged.push(...(pages.merged?.(rows.length + HEAD_ROWS) ?? []));
    rows.push(...onePage(pages, index, rows.length));
    if (index < pages.count - 1) breaksAfter.push(rows.length - 1);
  }
  const widths = pages.widths ?? DOC_WIDTHS;
  const printed = { columns: widths.length, rows: `MAX(1,${pages.filled})*${rows.length / pages.count}` };
  const beside = pages.besideWidths ?? [];
  return docSheet(pages.name, rows, {
    columnWidths: [...widths, ...beside],
    hiddenColumns: beside.map((_, at) => widths.length + at),
    merged,
    print: { breaksAfter, isPaper: true, printed },
  });
}

/** A paper that goes out, one page wide and upright. */
export function docSheet(name: string, rows: readonly Row[], looks: Partial<SheetModel> = {}): SheetModel {
  return helperSheet(name, rows, {
    columnWidths: DOC_WIDTHS,
    rowHeights: {},
    print: { isPaper: true },
    ...looks,
  });
}
