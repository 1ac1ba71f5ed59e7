import { FIRST_OWN_FORMAT } from "../number-formats";
import { applyEdits, type Edit } from "../package/edits";
import type { Package } from "../package/package";
import { relationshipsOf } from "../package/relationships";
import { escapeXml, walkXml, withAttribute } from "../package/xml";
import { type LiveSheet, readLiveWorkbook } from "../read/live-workbook";
import { SheetEditor } from "./sheet-editor";

/** What became of the look of a cell; what is left out stays as it is. */
export interface ChangedLook {
  readonly row: number;
  readonly column: number;
  readonly bold?: boolean;
  /** Number format; empty for figures as they come. */
  readonly format?: string;
}

/** What became of the looks of a sheet's cells, and of rows that are shown or hidden now. */
export interface ChangedLooks {
  readonly cells: readonly ChangedLook[];
  readonly rows: readonly { readonly row: number; readonly isHidden: boolean }[];
}

type Look = Pick<ChangedLook, "bold" | "format">;

/** A list of the styles part: its entries as they are written, its opening tag, and where a further entry goes. */
interface List {
  readonly entries: string[];
  readonly start: number;
  readonly tagEnd: number;
  end: number;
}

const ENTRIES: Readonly<Record<string, string>> = { fonts: "font", cellXfs: "xf", numFmts: "numFmt" };

function listsIn(part: string, xml: string): ReadonlyMap<string, List> {
  const lists = new Map<string, List>();
  const path: string[] = [];
  let began = 0;
  const list = () => lists.get(path[1] ?? "");
  walkXml(part, xml, {
    open({ name, start, end }) {
      path.push(name);
      if (path.length === 2 && name in ENTRIES) lists.set(name, { entries: [], start, tagEnd: end, end });
      if (path.length === 3) began = start;
    },
    close(name, start, end) {
      if (path.length === 3 && ENTRIES[path[1] ?? ""] === name) list()?.entries.push(xml.slice(began, end));
      const own = path.length === 2 ? list() : undefined;
      if (own !== undefined) own.end = start;
      path.pop();
    },
  });
  return lists;
}

/** The same element with another attribute in its opening tag. */
function withOwn(element: string, name: string, value: string): string {
  const end = element.indexOf(">") + 1;
  return withAttribute(element.slice(0, end), name, value) + element.slice(end);
}

const BOLD = /<(?:\w+:)?b(?:\s[^>]*)?(?:\/>|>\s*<\/(?:\w+:)?b>)/;

/** A font with or without the mark for bold letters, which stands first (CT_Font, ECMA-376 Part 1, 18.8.22). */
function boldFont(font: string, isBold: boolean): string {
  const plain = font.replace(BOLD, "");
  if (!isBold) return plain;
  const [open = "", prefix = ""] = /^<((?:\w+:)?)font\b[^>]*?\/?>/.exec(plain) ?? [];
  if (open.endsWith("/>")) return `${open.slice(0, -2)}><${prefix}b/></${prefix}font>`;
  return `${open}<${prefix}b/>${plain.slice(open.length)}`;
}

/** Adds formats of cells to the styles part of a file; those that are there stay as they are. */
class StylesPatch {
  private readonly lists: ReadonlyMap<string, List>;
  private readonly added = new Map<string, string[]>();
  private readonly known = new Map<string, string>();

  constructor(
    private readonly file: Package,
    private readonly part: string,
  ) {
    this.lists = listsIn(part, file.text(part));
  }

  /** The `s` attribute of a cell that looks as before but for what changed. */
  styleFor(before: string | undefined, look: Look): string {
    const key = JSON.stringify([before ?? "0", look]);
    const known = this.known.get(key);
    if (known !== undefined) return known;
    let format = this.entry("cellXfs", Number(before ?? 0)) ?? "<xf/>";
    if (look.bold !== undefined) {
      const id = Number(/\sfontId="(\d+)"/.exec(format)?.[1] ?? 0);
      const font = boldFont(this.entry("fonts", id) ?? "<font/>", look.bold);
      format = withOwn(withOwn(format, "fontId", this.add("fonts", font)), "applyFont", "1");
    }
    if (look.format !== undefined) {
      const number = look.format === "" ? "0" : this.numberFormat(look.format);
      format = withOwn(withOwn(format, "numFmtId", number), "applyNumberFormat", "1");
    }
    const style = this.add("cellXfs", format);
    this.known.set(key, style);
    return style;
  }

  save(): void {
    const xml = this.file.text(this.part);
    const edits = [...this.added].flatMap(([name, entries]) => this.editsOf(xml, name, entries));
    this.file.setText(this.part, applyEdits(xml, edits));
  }

  private entry(list: string, at: number): string | undefined {
    return [...(this.lists.get(list)?.entries ?? []), ...(this.added.get(list) ?? [])][at];
  }

  /** @returns The place of the entry in its list. */
  private add(list: string, entry: string): string {
    const own = this.added.get(list) ?? [];
    const place = (this.lists.get(list)?.entries.length ?? 0) + own.push(entry) - 1;
    this.added.set(list, own);
    return String(place);
  }

  private numberFormat(code: string): string {
    const all = [...(this.lists.get("numFmts")?.entries ?? []), ...(this.added.get("numFmts") ?? [])];
    const ids = all.map((entry) => Number(/\snumFmtId="(\d+)"/.exec(entry)?.[1] ?? 0));
    const same = all.findIndex((entry) => entry.includes(` formatCode="${escapeXml(code)}"`));
    if (same >= 0) return String(ids[same]);
    const id = Math.max(FIRST_OWN_FORMAT - 1, ...ids) + 1;
    this.add("numFmts", `<${this.prefix}numFmt numFmtId="${id}" formatCode="${escapeXml(code)}"/>`);
    return String(id);
  }

  private get prefix(): string {
    const xml = this.file.text(this.part);
    return /<((?:\w+:)?)styleSheet\b/.exec(xml)?.[1] ?? "";
  }

  private editsOf(xml: string, name: string, entries: readonly string[]): Edit[] {
    const list = this.lists.get(name);
    if (list === undefined) {
      // Number formats stand first in the part (CT_Stylesheet, 18.8.39).
      const root = /<(?:\w+:)?styleSheet\b[^>]*>/.exec(xml);
      const start = (root?.index ?? 0) + (root?.[0].length ?? 0);
      const element = `${this.prefix}${name}`;
      const text = `<${element} count="${entries.length}">${entries.join("")}</${element}>`;
      return [{ start, end: start, text }];
    }
    const tag = xml.slice(list.start, list.tagEnd);
    const count = String(list.entries.length + entries.length);
    return [
      { start: list.start, end: list.tagEnd, text: withAttribute(tag, "count", count) },
      { start: list.end, end: list.end, text: entries.join("") },
    ];
  }
}

function patchSheet({ stored }: LiveSheet, { cells, rows }: ChangedLooks, styles: StylesPatch): string {
  const editor = new SheetEditor(stored);
  for (const { row, column, ...look } of cells)
    editor.setStyle(row, column, styles.styleFor(editor.cellAt(row, column)?.style, look));
  for (const { row, isHidden } of rows) {
    const found = stored.rows.find((each) => each.row === row);
    if (found === undefined) continue;
    const tag = stored.xml.slice(found.start, found.tagEnd);
    editor.replace(found.start, found.tagEnd, withAttribute(tag, "hidden", isHidden ? "1" : undefined));
  }
  return editor.text();
}

/** Writes changed letters, number formats and hidden rows into a workbook file; all else in it stays as it is. */
export function withLooks(bytes: Uint8Array, looks: ReadonlyMap<string, ChangedLooks>): Uint8Array {
  const live = readLiveWorkbook(bytes);
  const part = relationshipsOf(live.file, live.main.name).find(({ kind }) => kind === "styles")?.part;
  if (part === undefined || !live.file.has(part)) return bytes;
  const styles = new StylesPatch(live.file, part);
  for (const sheet of live.sheets) {
    const changed = looks.get(sheet.listed.name);
    if (changed !== undefined) live.file.setText(sheet.listed.part, patchSheet(sheet, changed, styles));
  }
  styles.save();
  return live.file.save();
}
