import { zipSync } from "fflate";
import { COMPUTED_BY } from "../../share/provenance";
import { escapeXml } from "../package/xml";

export const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const LINKS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const TYPES = "application/vnd.openxmlformats-officedocument.";
const CORE = "metadata/core-properties";
/** The same workbook gives the same file on every day. */
const WRITTEN = "2026-01-01T00:00:00Z";

/** A part of a new file. */
export interface Part {
  readonly name: string;
  /** What stands behind the usual beginning of types of office files; `undefined` where the file ending says the type. */
  readonly type?: string;
  readonly xml: string;
}

/** A part as a file holds it; its text is no longer needed, which of a large sheet is twice as much. */
export interface EncodedPart extends Omit<Part, "xml"> {
  readonly bytes: Uint8Array;
}

export const encoded = ({ xml, ...part }: Part): EncodedPart => ({
  ...part,
  bytes: new TextEncoder().encode(xml),
});

/** A link from a part to another. */
export interface Link {
  readonly id: string;
  readonly kind: string;
  /** From the folder of the linking part: simple readers follow no other form. */
  readonly target: string;
}

const linkType = (kind: string) => (kind === CORE ? `${PACKAGE}/relationships/${CORE}` : `${LINKS}/${kind}`);

/** The links of a part. */
export function linksXml(links: readonly Link[]): string {
  const entries = links.map(
    ({ id, kind, target }) => `<Relationship Id="${id}" Type="${linkType(kind)}" Target="${target}"/>`,
  );
  return `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${entries.join("")}</Relationships>`;
}

export const PROPERTIES = { core: "docProps/core.xml", app: "docProps/app.xml" } as const;
const PROPERTIES_TYPES = {
  core: "application/vnd.openxmlformats-package.core-properties+xml",
  app: "application/vnd.openxmlformats-officedocument.extended-properties+xml",
} as const;

/**
 * Which program's habits the file keeps. LibreOffice shows the stored values only of files that name this one; of all
 * others it works every formula out anew, and does not know our functions (found with LibreOffice 7.4).
 */
export const APP =
  `${HEAD}<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties">` +
  "<Application>Microsoft Excel</Application></Properties>";

/** Which version worked the values out (ECMA-376 Part 2, 11.1, "version"). */
export const VERSION = `<cp:version>${escapeXml(COMPUTED_BY)}</cp:version>`;

function propertiesXml(title: string): string {
  const day = (name: string) => `<dcterms:${name} xsi:type="dcterms:W3CDTF">${WRITTEN}</dcterms:${name}>`;
  return (
    `${HEAD}<cp:coreProperties xmlns:cp="${PACKAGE}/${CORE}" xmlns:dc="http://purl.org/dc/elements/1.1/" ` +
    'xmlns:dcterms="http://purl.org/dc/terms/" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">' +
    `<dc:creator>Blade Metallurgy</dc:creator><dc:title>${escapeXml(title)}</dc:title>${VERSION}` +
    `${day("created")}${day("modified")}</cp:coreProperties>`
  );
}

function typesXml(parts: readonly EncodedPart[]): string {
  const entries = parts.flatMap(({ name, type }) =>
    type === undefined ? [] : [`<Override PartName="/${name}" ContentType="${TYPES}${type}+xml"/>`],
  );
  const properties = (["core", "app"] as const).map(
    (kind) => `<Override PartName="/${PROPERTIES[kind]}" ContentType="${PROPERTIES_TYPES[kind]}"/>`,
  );
  const drawings = parts.some(({ name }) => name.endsWith(".vml"))
    ? '<Default Extension="vml" ContentType="application/vnd.openxmlformats-officedocument.vmlDrawing"/>'
    : "";
  return (
    `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ` +
    'ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
    `<Default Extension="xml" ContentType="application/xml"/>${drawings}${properties.join("")}${entries.join("")}</Types>`
  );
}

/** Packs the parts of a new workbook file, with what every such file has besides. */
export function packed(parts: readonly EncodedPart[], title: string): Uint8Array {
  const office = [
    { id: "rId1", kind: "officeDocument", target: "xl/workbook.xml" },
    { id: "rId2", kind: CORE, target: PROPERTIES.core },
    { id: "rId3", kind: "extended-properties", target: PROPERTIES.app },
  ];
  const usual: readonly Part[] = [
    { name: "[Content_Types].xml", xml: typesXml(parts) },
    { name: "_rels/.rels", xml: linksXml(office) },
    { name: PROPERTIES.core, xml: propertiesXml(title) },
    { name: PROPERTIES.app, xml: APP },
  ];
  const files = Object.fromEntries([...usual.map(encoded), ...parts].map(({ name, bytes }) => [name, bytes]));
  // Noon of the earliest day a zip can hold, in any time zone: the file does not depend on the clock.
  return zipSync(files, { mtime: new Date(1980, 0, 2, 12), level: 6 });
}
