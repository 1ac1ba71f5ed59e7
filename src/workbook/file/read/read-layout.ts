import { type Rectangle, readRectangle } from "../../../formula/addresses";
import type { Band, OfferedWords, PrintSetup, WordColor } from "../../model/workbook-data";
import { type OpenTag, walkXml } from "../package/xml";
import { columnPixels, rowPixels } from "../sizes";
import { readXstring } from "../strings";
import { wordOfFormula } from "../word-colors";
import { paperNumbered } from "../write/print-xml";
import type { StoredSheet } from "./stored-sheet";

type Attributes = OpenTag["attributes"];

/** What a worksheet part says besides its cells. */
export interface Layout {
  readonly columns: Map<number, Band>;
  readonly rows: Map<number, Band>;
  frozenRows: number;
  frozenColumns: number;
  readonly merged: Rectangle[];
  readonly offers: OfferedWords[];
  readonly colors: WordColor[];
  hidesGridLines: boolean;
  print: PrintSetup & { readonly breaksAfter: number[] };
  /** Hidden columns, however far a list of them reaches: first and last. */
  readonly hiddenColumns: (readonly [first: number, last: number])[];
  /** What the grid does not show, in words. */
  readonly unshown: Set<string>;
}

/** What is drawn over the cells, as a smith calls it. */
export const DRAWN = "pictures and charts";

/** Elements of a worksheet that the grid leaves out, as a smith calls them. */
const UNSHOWN: Readonly<Record<string, string>> = {
  drawing: DRAWN,
  legacyDrawing: "notes on cells",
  hyperlink: "links",
  autoFilter: "filters",
  sheetProtection: "protection",
  sparklineGroups: "small charts in cells",
  colBreaks: "page breaks between columns",
};

const areasIn = (sqref = ""): Rectangle[] => sqref.split(/\s+/).flatMap((name) => readRectangle(name) ?? []);

const isTrue = (text: string | undefined) => /^(?:1|true)$/.test(text ?? "");

/** Widest sheet of the file format; a stray column list must not run on without end. */
const MAX_COLUMNS = 16_384;
/** A list of widths that reaches this far styles the whole sheet, not columns somebody set. */
const WIDE_SPAN = 500;

/** The word that a rule looks for; `undefined` for a rule of another kind. */
function wordOfRule({ type, text }: Attributes, formula: string): string | undefined {
  if (type === "containsText") return text === undefined ? undefined : readXstring(text);
  return type === "expression" ? wordOfFormula(formula) : undefined;
}

class LayoutReader {
  readonly layout: Layout = {
    columns: new Map(),
    rows: new Map(),
    frozenRows: 0,
    frozenColumns: 0,
    merged: [],
    offers: [],
    colors: [],
    hidesGridLines: false,
    print: { landscape: false, breaksAfter: [], isPaper: true },
    hiddenColumns: [],
    unshown: new Set(),
  };
  private rule: { areas: Rectangle[]; attributes: Attributes } | undefined;
  private areas: Rectangle[] = [];
  private inRowBreaks = false;
  private first: string | undefined;
  private wordRule: { readonly attributes: Attributes; formula: string | undefined } | undefined;

  constructor(private readonly ruleFills: readonly (string | undefined)[]) {}

  open({ name, attributes }: OpenTag): void {
    const unshown = UNSHOWN[name];
    if (unshown !== undefined) this.layout.unshown.add(unshown);
    if (name === "col") this.column(attributes);
    if (name === "row") this.row(attributes);
    if (name === "pane") this.pane(attributes);
    if (name === "sheetView")
      this.layout.hidesGridLines = /^(?:0|false)$/.test(attributes.showGridLines ?? "");
    this.openPrint(name, attributes);
    if (name === "mergeCell") this.layout.merged.push(...areasIn(attributes.ref));
    this.openRule(name, attributes);
    if (name === "dataValidation") this.rule = { areas: areasIn(attributes.sqref), attributes };
    if (name === "formula1") this.first = "";
  }

  private openPrint(name: string, { id, orientation, paperSize }: Attributes): void {
    const { print } = this.layout;
    if (name === "rowBreaks") this.inRowBreaks = true;
    if (name === "colBreaks") this.inRowBreaks = false;
    if (name === "brk" && this.inRowBreaks) print.breaksAfter.push(Number(id) - 1);
    // Upright is what a sheet is that says nothing (CT_PageSetup, ECMA-376 Part 1, 18.3.1.63).
    // What has nothing of the workbook in its margins keeps them free.
    if (name === "oddHeader" || name === "oddFooter")
      this.layout.print = { ...this.layout.print, isPaper: false };
    if (name === "pageSetup") {
      const paper = paperNumbered(Number(paperSize));
      this.layout.print = { ...print, landscape: orientation === "landscape", paper };
    }
  }

  private openRule(name: string, attributes: Attributes): void {
    if (name === "conditionalFormatting") this.areas = areasIn(attributes.sqref);
    if (name === "cfRule") this.wordRule = { attributes, formula: undefined };
    if (name === "formula" && this.wordRule !== undefined) this.wordRule.formula ??= "";
  }

  text(text: string): void {
    if (this.first !== undefined) this.first += text;
    if (this.wordRule?.formula !== undefined) this.wordRule.formula += text;
  }

  close(name: string): void {
    if (name === "cfRule") this.closeColor();
    if (name !== "dataValidation" || this.rule === undefined) return;
    this.offer(this.rule.areas, this.rule.attributes, this.first ?? "");
    this.rule = undefined;
    this.first = undefined;
  }

  private column({ min, max, width, hidden }: Attributes): void {
    const [from, to] = [Number(min) - 1, Math.min(Number(max), MAX_COLUMNS) - 1];
    if (isTrue(hidden) || Number(width) === 0) this.layout.hiddenColumns.push([from, to]);
    if (to - from > WIDE_SPAN) return;
    const size = width === undefined ? {} : { size: columnPixels(Number(width)) };
    const band: Band = { ...size, ...(isTrue(hidden) ? { isHidden: true } : {}) };
    for (let column = from; column <= to; column += 1) this.layout.columns.set(column, band);
  }

  private row({ r, ht, hidden }: Attributes): void {
    if (ht === undefined && !isTrue(hidden)) return;
    const size = ht === undefined ? {} : { size: rowPixels(Number(ht)) };
    this.layout.rows.set(Number(r) - 1, { ...size, ...(isTrue(hidden) ? { isHidden: true } : {}) });
  }

  private pane({ xSplit = "0", ySplit = "0", state }: Attributes): void {
    if (state !== "frozen" && state !== "frozenSplit") return;
    this.layout.frozenRows = Number(ySplit);
    this.layout.frozenColumns = Number(xSplit);
  }

  private closeColor(): void {
    const { attributes = {}, formula = "" } = this.wordRule ?? {};
    this.wordRule = undefined;
    const fill = this.ruleFills[Number(attributes.dxfId ?? Number.NaN)];
    const word = wordOfRule(attributes, formula);
    if (word === undefined || fill === undefined)
      this.layout.unshown.add("colours by other rules than a word in the cell");
    else this.layout.colors.push({ areas: this.areas, word, fill });
  }

  private offer(areas: readonly Rectangle[], { type }: Attributes, first: string): void {
    const text = first.trim();
    if (type !== "list") this.layout.unshown.add("limits on what may be typed");
    else if (text.startsWith('"'))
      this.layout.offers.push({ areas, words: text.slice(1, -1).replaceAll('""', '"').split(",") });
    else this.layout.offers.push({ areas, range: text });
  }
}

/** The text of a worksheet part with its rows, but without their cells: they are most of it, and were read already. */
function withoutCells({ xml, rows, data }: StoredSheet): string {
  const heads = rows.map(({ start, tagEnd }) => `${xml.slice(start, tagEnd).replace(/\/?>$/, "")}/>`);
  return xml.slice(0, data.tagEnd) + heads.join("") + xml.slice(data.closeStart);
}

/** Reads widths, heights, frozen heads, merged cells, lists and colours of a worksheet part. */
export function readLayout(
  part: string,
  stored: StoredSheet,
  ruleFills: readonly (string | undefined)[],
): Layout {
  const reader = new LayoutReader(ruleFills);
  walkXml(part, withoutCells(stored), {
    open: (tag) => reader.open(tag),
    text: (text) => reader.text(text),
    close: (name) => reader.close(name),
  });
  return reader.layout;
}
