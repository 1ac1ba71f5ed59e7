import { type CellStyle, EDGE_KINDS, type Edge, SIDES } from "../../model/workbook-data";
import { builtInFormat } from "../number-formats";
import type { Package } from "../package/package";
import { type OpenTag, walkXml } from "../package/xml";
import type { ColourOf } from "./theme-colors";

type Open<T> = { -readonly [K in keyof T]: T[K] };
type Attributes = OpenTag["attributes"];

export interface Styles {
  /** Dress of a cell by its `s` attribute. */
  readonly styles: readonly CellStyle[];
  /** Fill of a conditional format by its number. */
  readonly ruleFills: readonly (string | undefined)[];
}

const isOn = ({ val }: Attributes) => val === undefined || !/^(?:0|false|none)$/.test(val);
const ALIGNED = { horizontal: ["left", "center", "right"], vertical: ["top", "center", "bottom"] } as const;
const oneOf = <T extends string>(words: readonly T[], word: string | undefined) =>
  words.find((known) => known === word);

const FONT_MARKS = { b: "bold", i: "italic", u: "underline", strike: "strike" } as const;

/** Gathers the lists of the styles part; a cell's format names its place in each. */
class StylesReader {
  private readonly formats = new Map<number, string>();
  private readonly fonts: Open<CellStyle>[] = [];
  private readonly fills: Open<CellStyle>[] = [];
  private readonly borders: Partial<Record<string, Edge>>[] = [];
  readonly styles: Open<CellStyle>[] = [];
  readonly ruleFills: (string | undefined)[] = [];
  private readonly path: string[] = [];

  constructor(private readonly colourOf: ColourOf) {}

  open({ name, attributes }: OpenTag): void {
    const list = this.path[1] ?? "";
    this.path.push(name);
    if (name === "numFmt" && list === "numFmts")
      this.formats.set(Number(attributes.numFmtId), attributes.formatCode ?? "");
    else if (list === "fonts") this.inFonts(name, attributes);
    else if (list === "fills") this.inFills(name, attributes);
    else if (list === "borders") this.inBorders(name, attributes);
    else if (list === "cellXfs") this.inFormats(name, attributes);
    else if (list === "dxfs") this.inRules(name, attributes);
  }

  close(): void {
    this.path.pop();
  }

  private inFonts(name: string, attributes: Attributes): void {
    if (name === "font") this.fonts.push({});
    const font = this.fonts.at(-1);
    if (font === undefined) return;
    const mark = FONT_MARKS[name as keyof typeof FONT_MARKS];
    if (mark !== undefined && isOn(attributes)) font[mark] = true;
    if (name === "name" && attributes.val) font.font = attributes.val;
    if (name === "sz") font.size = Number(attributes.val);
    const color = name === "color" ? this.colourOf(attributes) : undefined;
    if (color !== undefined) font.color = color;
  }

  private inFills(name: string, attributes: Attributes): void {
    if (name === "fill") this.fills.push({});
    const fill = this.fills.at(-1);
    const color = name === "fgColor" ? this.colourOf(attributes) : undefined;
    if (fill !== undefined && color !== undefined) fill.fill = color;
  }

  private inBorders(name: string, attributes: Attributes): void {
    if (name === "border") this.borders.push({});
    const border = this.borders.at(-1);
    const side = name === "color" ? this.path.at(-2) : name;
    if (border === undefined || side === undefined || !SIDES.some((known) => known === side)) return;
    const before = border[side];
    const kind = oneOf(EDGE_KINDS, attributes.style);
    if (kind !== undefined && kind !== "none") border[side] = { kind, color: "#000000" };
    const color = name === "color" ? this.colourOf(attributes) : undefined;
    if (before !== undefined && color !== undefined) border[side] = { ...before, color };
  }

  private inFormats(name: string, attributes: Attributes): void {
    if (name === "xf") this.styles.push(this.styleOf(attributes));
    const style = this.styles.at(-1);
    if (name !== "alignment" || style === undefined) return;
    const horizontal = oneOf(ALIGNED.horizontal, attributes.horizontal);
    const vertical = oneOf(ALIGNED.vertical, attributes.vertical);
    if (horizontal !== undefined) style.horizontal = horizontal;
    if (vertical !== undefined) style.vertical = vertical;
    if (Number(attributes.indent) > 0) style.indent = Number(attributes.indent);
    if (/^(?:1|true)$/.test(attributes.wrapText ?? "")) style.wraps = true;
  }

  private styleOf({ numFmtId, fontId, fillId, borderId }: Attributes): Open<CellStyle> {
    const edges = this.borders[Number(borderId ?? 0)] ?? {};
    const number = Number(numFmtId ?? 0);
    const format = this.formats.get(number) ?? builtInFormat(number);
    return {
      ...this.fonts[Number(fontId ?? 0)],
      ...this.fills[Number(fillId ?? 0)],
      ...(Object.keys(edges).length === 0 ? {} : { edges }),
      ...(format === undefined || format === "General" ? {} : { format }),
    };
  }

  private inRules(name: string, attributes: Attributes): void {
    if (name === "dxf") this.ruleFills.push(undefined);
    if ((name !== "bgColor" && name !== "fgColor") || !this.path.includes("fill")) return;
    const color = this.colourOf(attributes);
    // In a conditional format a solid fill stands in the background colour, unlike in a cell's own.
    if (color !== undefined && (name === "bgColor" || this.ruleFills.at(-1) === undefined))
      this.ruleFills[this.ruleFills.length - 1] = color;
  }
}

/** Reads the styles of cells from the styles part; none where the file has no such part. */
export function readStyles(file: Package, part: string | undefined, colourOf: ColourOf): Styles {
  const reader = new StylesReader(colourOf);
  if (part !== undefined && file.has(part)) {
    walkXml(part, file.text(part), { open: (tag) => reader.open(tag), close: () => reader.close() });
  }
  return reader;
}
