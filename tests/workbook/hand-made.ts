import { strToU8, unzipSync, zipSync } from "fflate";

const MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const RELS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const DECLARATION = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const SHEET_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";
export const WORKBOOK_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml";

export interface HandMade {
  /** Sheet names and the XML inside `<worksheet>`. */
  readonly sheets: Readonly<Record<string, string>>;
  /** Shared strings, as `<si>` elements. */
  readonly strings?: string;
  /** Inside `<workbook>`, after the sheets. */
  readonly names?: string;
  /** Further parts, or others in place of those made here. */
  readonly parts?: Readonly<Record<string, string>>;
  readonly type?: string;
}

export const worksheet = (inside: string): string => `${DECLARATION}<worksheet ${MAIN}>${inside}</worksheet>`;

function workbookParts({
  sheets,
  strings,
  names = "",
  type = WORKBOOK_TYPE,
}: HandMade): Record<string, string> {
  const list = Object.keys(sheets);
  const links = list.map(
    (_, n) =>
      `<Relationship Id="rId${n + 1}" Type="${RELS}/worksheet" Target="worksheets/sheet${n + 1}.xml"/>`,
  );
  const shared = `<Relationship Id="rIdS" Type="${RELS}/sharedStrings" Target="sharedStrings.xml"/>`;
  const listed = list.map((name, n) => `<sheet name="${name}" sheetId="${n + 1}" r:id="rId${n + 1}"/>`);
  const types = list.map(
    (_, n) => `<Override PartName="/xl/worksheets/sheet${n + 1}.xml" ContentType="${SHEET_TYPE}"/>`,
  );
  return {
    "[Content_Types].xml": `${DECLARATION}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="${type}"/>${types.join("")}</Types>`,
    "_rels/.rels": `${DECLARATION}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${RELS}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `${DECLARATION}<workbook ${MAIN} xmlns:r="${RELS}"><sheets>${listed.join("")}</sheets>${names}</workbook>`,
    "xl/_rels/workbook.xml.rels": `${DECLARATION}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${links.join("")}${strings === undefined ? "" : shared}</Relationships>`,
    ...Object.fromEntries(
      list.map((name, n) => [`xl/worksheets/sheet${n + 1}.xml`, worksheet(sheets[name] ?? "")]),
    ),
    ...(strings === undefined
      ? {}
      : { "xl/sharedStrings.xml": `${DECLARATION}<sst ${MAIN}>${strings}</sst>` }),
  };
}

/** A workbook file from XML written out by hand. */
export function handMade(made: HandMade): Uint8Array {
  const parts = { ...workbookParts(made), ...made.parts };
  return zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])));
}

/** Text of every part of a file, read with a zip library and nothing of ours. */
export function partsOf(file: Uint8Array): Record<string, string> {
  return Object.fromEntries(
    Object.entries(unzipSync(file)).map(([name, bytes]) => [
      name,
      new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes),
    ]),
  );
}

/** The XML inside `<worksheet>` of a hand-made sheet. */
export function insideSheet(file: Uint8Array, number = 1): string {
  const text = partsOf(file)[`xl/worksheets/sheet${number}.xml`] ?? "";
  return text.slice(text.indexOf(">", text.indexOf("<worksheet")) + 1, text.lastIndexOf("</worksheet>"));
}
