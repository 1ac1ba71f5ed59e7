import { pageMargins, pageRoom, pageSize } from "../../workbook/model/page-size";
import type { SheetData, WorkbookData } from "../../workbook/model/workbook-data";
import { button } from "../page/page";
import { printedParts, type ShownText } from "./printed-pages";
import { pageTable } from "./sheet-html";

/** Pixels that stay free around a page on the screen. */
const ROUND = 16;
/** Letters smaller than this part of their size are better left for a second page. */
const SMALLEST = 0.75;

/** What is printed, and what its cells show. */
export interface Printing {
  readonly workbook: WorkbookData;
  readonly shown: (sheet: string) => ShownText;
  /** Name of the file, which stands at the foot of what is no paper. */
  readonly file: string;
}

const quoted = (text: string) => `"${text.replace(/[\\"]/g, "\\$&").replace(/[\r\n]+/g, " ")}"`;

/** Size, margins, head and foot of the pages of a sheet, for the browser's own printing (CSS Paged Media Level 3). */
function pageRule(sheet: SheetData, { workbook, file }: Printing): string {
  const [width, height] = pageSize(sheet);
  const { side, end } = pageMargins(sheet);
  const size = `size:${width}mm ${height}mm;margin:${end}in ${side}in`;
  if (sheet.print?.isPaper) return `@page{${size}}`;
  const box = (place: string, content: string) =>
    `@${place}{content:${content};font:8pt sans-serif;color:#444}`;
  const boxes = [
    box("top-left", quoted(workbook.title ?? "")),
    box("top-right", quoted(sheet.name)),
    box("bottom-left", quoted(file)),
    box("bottom-right", '"Page " counter(page) " of " counter(pages)'),
  ];
  return `@page{${size};${boxes.join("")}}`;
}

/** The paper of one page, as large as it will be; what is wider than the paper is made smaller. */
function paperOf(sheet: SheetData, content: HTMLTableElement): HTMLElement {
  const [width, height] = pageSize(sheet);
  const { side, end } = pageMargins(sheet);
  const paper = document.createElement("div");
  paper.className = "paper";
  paper.style.cssText = `--page-width:${width}mm;--page-height:${height}mm;--page-margins:${end}in ${side}in`;
  const scale = Math.min(1, pageRoom(sheet)[0] / Number.parseFloat(content.style.width));
  if (scale < 1) content.style.setProperty("zoom", String(scale));
  const whole = document.createElement("div");
  whole.append(content);
  paper.append(whole);
  return paper;
}

/** A page of a paper says that it is one: what would run over its foot is made a little smaller. */
function fitToFoot(sheet: SheetData, paper: HTMLElement): void {
  const whole = paper.firstElementChild;
  if (sheet.print?.isPaper !== true || !(whole instanceof HTMLElement)) return;
  const room = pageRoom(sheet)[1] - 1;
  whole.style.removeProperty("zoom");
  if (whole.offsetHeight > room)
    whole.style.setProperty("zoom", String(Math.max(SMALLEST, room / whole.offsetHeight)));
}

/** A look at the pages of a sheet before they are printed; it lies over the page until it is closed. */
class PrintView {
  private readonly place = document.createElement("section");
  private readonly papers = document.createElement("div");
  private readonly choice = document.createElement("select");
  private readonly rule = document.createElement("style");
  private readonly count = document.createElement("span");
  private readonly before = document.activeElement;

  constructor(
    private readonly printing: Printing,
    first: string,
  ) {
    this.place.className = "print-view";
    this.place.setAttribute("role", "dialog");
    this.place.setAttribute("aria-modal", "true");
    this.place.setAttribute("aria-label", "Print");
    this.papers.className = "papers";
    this.papers.tabIndex = 0;
    this.count.setAttribute("role", "status");
    this.fillChoice(first);
    const bar = document.createElement("div");
    bar.className = "bar";
    const label = document.createElement("label");
    label.append("Sheet ", this.choice);
    bar.append(
      label,
      this.count,
      button("Print …", () => print()),
      button("Close", () => this.close()),
    );
    this.place.append(bar, this.papers);
    this.place.addEventListener("keydown", (pressed) => {
      if (pressed.key !== "Escape") return;
      pressed.stopPropagation();
      this.close();
    });
  }

  private fillChoice(first: string): void {
    const sheets = this.printing.workbook.sheets.filter(({ isHidden }) => !isHidden);
    const group = (name: string, isPaper: boolean) => {
      const made = document.createElement("optgroup");
      made.label = name;
      const own = sheets.filter(({ print }) => (print?.isPaper === true) === isPaper);
      made.append(...own.map((sheet) => new Option(sheet.name, sheet.name)));
      return own.length === 0 ? [] : [made];
    };
    this.choice.append(...group("Papers that go out", true), ...group("Sheets", false));
    this.choice.value = first;
    this.choice.addEventListener("change", () => this.show());
  }

  private show(): void {
    const sheet = this.printing.workbook.sheets.find(({ name }) => name === this.choice.value);
    if (sheet === undefined) return;
    const pages = printedParts(sheet, this.printing.shown(sheet.name)).flatMap((part) =>
      part.pages.map((page) => pageTable(part, page)),
    );
    this.rule.textContent = pageRule(sheet, this.printing);
    this.papers.replaceChildren(...pages.map((page) => paperOf(sheet, page)));
    this.fit();
    // Drawings take their size when they are first laid out.
    requestAnimationFrame(() => requestAnimationFrame(() => this.fitPages(sheet)));
    const { length } = pages;
    this.count.textContent =
      length === 0
        ? "Nothing to print"
        : sheet.print?.isPaper
          ? `${length} ${length === 1 ? "page" : "pages"}`
          : "";
  }

  private fitPages(sheet: SheetData): void {
    for (const paper of this.papers.children) if (paper instanceof HTMLElement) fitToFoot(sheet, paper);
  }

  /** A page that is wider than the window is shown smaller. */
  private fit(): void {
    const widest = Math.max(0, ...[...this.papers.children].map(({ clientWidth }) => clientWidth));
    const room = this.papers.clientWidth - 2 * ROUND;
    this.papers.style.setProperty("--fit", String(widest === 0 ? 1 : Math.min(1, room / widest)));
  }

  open(): void {
    for (const other of document.body.children) if (other instanceof HTMLElement) other.inert = true;
    document.head.append(this.rule);
    document.body.append(this.place);
    this.show();
    this.choice.focus();
  }

  private close(): void {
    this.place.remove();
    this.rule.remove();
    for (const other of document.body.children) if (other instanceof HTMLElement) other.inert = false;
    if (this.before instanceof HTMLElement) this.before.focus();
  }
}

/** Shows how a sheet will be printed. @param sheet - The one that is looked at first. */
export function openPrintView(printing: Printing, sheet: string): void {
  new PrintView(printing, sheet).open();
}
