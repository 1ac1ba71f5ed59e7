import { type LiveWorkbook, readLiveWorkbook } from "../../../src/workbook/file/read/live-workbook";
import { handMade } from "../hand-made";

export const text = (cell: string, words: string, more = "") =>
  `<c r="${cell}"${more} t="inlineStr"><is><t xml:space="preserve">${words}</t></is></c>`;
export const figure = (cell: string, value: number, more = "") => `<c r="${cell}"${more}><v>${value}</v></c>`;
/** A formula as typed; the signs of XML are written out. */
export const formula = (cell: string, typed: string, more = "") =>
  `<c r="${cell}"${more}><f>${typed.replaceAll("&", "&amp;").replaceAll("<", "&lt;")}</f><v>1</v></c>`;
export const row = (number: number, ...cells: string[]) => `<row r="${number}">${cells.join("")}</row>`;
export const data = (...rows: string[]) => `<sheetData>${rows.join("")}</sheetData>`;

const LINK = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const RELATIONSHIPS = "http://schemas.openxmlformats.org/package/2006/relationships";

/** The relationships of a part: id, kind, target. */
export const links = (...list: readonly (readonly [id: string, kind: string, target: string])[]) =>
  `<Relationships xmlns="${RELATIONSHIPS}">${list.map(([id, kind, target]) => `<Relationship Id="${id}" Type="${LINK}/${kind}" Target="${target}"/>`).join("")}</Relationships>`;

export interface Made {
  readonly sheets: Readonly<Record<string, string>>;
  readonly names?: Readonly<Record<string, string>>;
  readonly styles?: string;
  readonly parts?: Readonly<Record<string, string>>;
}

/** A workbook file of such sheets. */
export function made({ sheets, names = {}, styles, parts = {} }: Made): Uint8Array {
  const defined = Object.entries(names).map(
    ([name, meaning]) => `<definedName name="${name}">${meaning}</definedName>`,
  );
  const list = Object.keys(sheets).map(
    (_, at) => [`rId${at + 1}`, "worksheet", `worksheets/sheet${at + 1}.xml`] as const,
  );
  const styled =
    styles === undefined
      ? {}
      : {
          "xl/styles.xml": styles,
          "xl/_rels/workbook.xml.rels": links(...list, ["rIdY", "styles", "styles.xml"]),
        };
  return handMade({
    sheets,
    ...(defined.length > 0 && { names: `<definedNames>${defined.join("")}</definedNames>` }),
    parts: { ...styled, ...parts },
  });
}

export const live = (of: Made): LiveWorkbook => readLiveWorkbook(made(of));
