import { type CellStyle, type Edge, SIDES } from "../../model/workbook-data";
import { FIRST_OWN_FORMAT } from "../number-formats";
import { escapeXml } from "../package/xml";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

/** A list of the styles part; the same entry is written once. */
class Entries {
  private readonly places = new Map<string, number>();

  constructor(...first: readonly string[]) {
    for (const xml of first) this.placeOf(xml);
  }

  placeOf(xml: string): number {
    const place = this.places.get(xml) ?? this.places.size;
    this.places.set(xml, place);
    return place;
  }

  list(name: string): string {
    return `<${name} count="${this.places.size}">${[...this.places.keys()].join("")}</${name}>`;
  }
}

/** A colour with full opacity, as files write it. */
const argb = (color: string) => `FF${color.slice(1).toUpperCase()}`;
const flag = (name: string, isOn: boolean | undefined) => (isOn ? `<${name}/>` : "");

function fontXml({ font, size, bold, italic, underline, strike, color }: CellStyle): string {
  const marks = flag("b", bold) + flag("i", italic) + flag("strike", strike) + flag("u", underline);
  const ink = color === undefined ? "" : `<color rgb="${argb(color)}"/>`;
  return `<font>${marks}<sz val="${size ?? 11}"/>${ink}<name val="${escapeXml(font ?? "Calibri")}"/></font>`;
}

function fillXml(color: string): string {
  return `<fill><patternFill patternType="solid"><fgColor rgb="${argb(color)}"/><bgColor indexed="64"/></patternFill></fill>`;
}

function edgeXml(side: string, edge: Edge | undefined): string {
  if (edge === undefined) return `<${side}/>`;
  return `<${side} style="${edge.kind}"><color rgb="${argb(edge.color)}"/></${side}>`;
}

function borderXml(edges: CellStyle["edges"]): string {
  return `<border>${SIDES.map((side) => edgeXml(side, edges?.[side])).join("")}<diagonal/></border>`;
}

function alignmentXml({ horizontal, vertical, indent, wraps }: CellStyle): string {
  if (horizontal === undefined && vertical === undefined && indent === undefined && !wraps) return "";
  const along = horizontal === undefined ? "" : ` horizontal="${horizontal}"`;
  const down = vertical === undefined ? "" : ` vertical="${vertical}"`;
  const room = indent === undefined ? "" : ` indent="${indent}"`;
  return `<alignment${along}${down}${room}${wraps ? ' wrapText="1"' : ""}/>`;
}

/** Collects the styles of a workbook's cells and writes the styles part. */
export class StylesWriter {
  private readonly formats = new Map<string, number>();
  private readonly fonts = new Entries(fontXml({}));
  // The first two fills are given to every workbook (ECMA-376 Part 1, 18.8.20).
  private readonly fills = new Entries(
    '<fill><patternFill patternType="none"/></fill>',
    '<fill><patternFill patternType="gray125"/></fill>',
  );
  private readonly borders = new Entries(borderXml(undefined));
  private readonly cells = new Entries('<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"></xf>');
  private readonly rules: string[] = [];

  /** The `s` attribute of a cell with this style. */
  styleOf(style: CellStyle | undefined): number {
    if (style === undefined) return 0;
    const ids = [
      ["numFmtId", this.formatOf(style.format)],
      ["fontId", this.fonts.placeOf(fontXml(style))],
      ["fillId", style.fill === undefined ? 0 : this.fills.placeOf(fillXml(style.fill))],
      ["borderId", this.borders.placeOf(borderXml(style.edges))],
      ["xfId", 0],
    ];
    const applied = ["NumberFormat", "Font", "Fill", "Border", "Alignment"].map((what) => `apply${what}="1"`);
    const attributes = ids.map(([name, id]) => `${name}="${id}"`);
    const lock = style.isUnlocked ? ' applyProtection="1"' : "";
    const unlocked = style.isUnlocked ? '<protection locked="0"/>' : "";
    return this.cells.placeOf(
      `<xf ${[...attributes, ...applied].join(" ")}${lock}>${alignmentXml(style)}${unlocked}</xf>`,
    );
  }

  /** The `dxfId` of a rule that fills cells with a colour. */
  ruleOf(color: string): number {
    const xml = `<dxf><fill><patternFill patternType="solid"><bgColor rgb="${argb(color)}"/></patternFill></fill></dxf>`;
    const known = this.rules.indexOf(xml);
    return known < 0 ? this.rules.push(xml) - 1 : known;
  }

  private formatOf(format: string | undefined): number {
    if (format === undefined) return 0;
    const id = this.formats.get(format) ?? FIRST_OWN_FORMAT + this.formats.size;
    this.formats.set(format, id);
    return id;
  }

  text(): string {
    const formats = [...this.formats].map(
      ([code, id]) => `<numFmt numFmtId="${id}" formatCode="${escapeXml(code)}"/>`,
    );
    const own =
      formats.length === 0 ? "" : `<numFmts count="${formats.length}">${formats.join("")}</numFmts>`;
    const base = '<xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>';
    return (
      `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<styleSheet xmlns="${MAIN}">${own}` +
      this.fonts.list("fonts") +
      this.fills.list("fills") +
      this.borders.list("borders") +
      `<cellStyleXfs count="1">${base}</cellStyleXfs>` +
      this.cells.list("cellXfs") +
      '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>' +
      `<dxfs count="${this.rules.length}">${this.rules.join("")}</dxfs></styleSheet>`
    );
  }
}
