import { applyEdits, type Edit } from "../file/package/edits";
import { escapeXml, walkXml, withAttribute } from "../file/package/xml";
import type { DefinedName } from "../file/read/workbook-part";
import { linkAttribute } from "./links";
import { elementsAt } from "./sheet-elements";

/** A sheet in the list of a copy. */
export interface CopiedSheet {
  readonly name: string;
  /** Place in the list of the workbook it was copied from; `undefined` for a sheet that was added. */
  readonly from: number | undefined;
  /** For an added sheet: the link to its part. */
  readonly link?: string;
}

function listText(xml: string, main: string, sheets: readonly CopiedSheet[]): string {
  const old = elementsAt(main, xml, 2).filter(({ name }) => name === "sheet");
  const ids = [...xml.matchAll(/\ssheetId\s*=\s*["'](\d+)/g)].map(([, id]) => Number(id));
  const prefix = /^<(\w+:)?/.exec(xml.slice(old[0]?.start ?? 0))?.[1] ?? "";
  return sheets
    .map(({ name, from, link }) => {
      const kept = from === undefined ? undefined : old[from];
      if (kept !== undefined) return xml.slice(kept.start, kept.end);
      const id = Math.max(0, ...ids) + 1;
      return `<${prefix}sheet name="${escapeXml(name)}" sheetId="${id}" ${linkAttribute(xml, link ?? "")}/>`;
    })
    .join("");
}

/** Names of one sheet follow it to its new place; unwanted names and those of sheets left out go. */
function nameEdits(
  xml: string,
  names: readonly DefinedName[],
  places: ReadonlyMap<number, number>,
  isUnwanted: (formula: string) => boolean,
): Edit[] {
  return names.flatMap(({ formula, sheet, start, end }): Edit[] => {
    const place = sheet === undefined ? undefined : places.get(sheet);
    if (isUnwanted(formula) || (sheet !== undefined && place === undefined))
      return [{ start, end, text: "" }];
    if (sheet === undefined) return [];
    const tagEnd = xml.indexOf(">", start) + 1;
    return [
      { start, end: tagEnd, text: withAttribute(xml.slice(start, tagEnd), "localSheetId", String(place)) },
    ];
  });
}

/** The sheet that opens, and nothing that asks for a calculation. */
function viewEdits(main: string, xml: string, opens: number): Edit[] {
  const tab = opens === 0 ? undefined : String(opens);
  const attributes: Readonly<Record<string, Readonly<Record<string, string | undefined>>>> = {
    workbookView: { activeTab: tab, firstSheet: undefined },
    calcPr: { fullCalcOnLoad: undefined, forceFullCalc: undefined },
  };
  const edits: Edit[] = [];
  walkXml(main, xml, {
    open({ name, start, end }) {
      const tag = xml.slice(start, end);
      const changes = Object.entries(attributes[name] ?? {});
      const text = changes.reduce((so, [attribute, value]) => withAttribute(so, attribute, value), tag);
      if (text !== tag) edits.push({ start, end, text });
    },
  });
  return edits;
}

/** How the list of sheets of a copy differs from that of its workbook. */
export interface SheetChanges {
  /** In their new order, some left out or added. */
  readonly sheets: readonly CopiedSheet[];
  /** Place of the sheet that opens. */
  readonly opens: number;
  /** Tells the defined names that must go by what they stand for. */
  isUnwanted(formula: string): boolean;
}

/** The main part of a workbook with another list of sheets. */
export function withSheets(
  main: string,
  xml: string,
  names: readonly DefinedName[],
  { sheets, opens, isUnwanted }: SheetChanges,
): string {
  const top = elementsAt(main, xml, 1);
  const list = top.find(({ name }) => name === "sheets");
  if (list === undefined) throw new RangeError("the workbook has no list of sheets");
  const places = new Map(
    sheets.flatMap(({ from }, place) => (from === undefined ? [] : [[from, place] as const])),
  );
  const close = xml.lastIndexOf("</", list.end - 1);
  const other = top.find(({ name }) => name === "externalReferences");
  const edited = applyEdits(xml, [
    { start: list.tagEnd, end: close, text: listText(xml, main, sheets) },
    ...nameEdits(xml, names, places, isUnwanted),
    ...(other === undefined ? [] : [{ start: other.start, end: other.end, text: "" }]),
    ...viewEdits(main, xml, opens),
  ]);
  return withoutEmptyNames(main, edited);
}

/** A list of names must not be empty (CT_DefinedNames, ECMA-376 Part 1, 18.2.6). */
function withoutEmptyNames(main: string, xml: string): string {
  const list = elementsAt(main, xml, 1).find(({ name }) => name === "definedNames");
  const isEmpty = list && !elementsAt(main, xml, 2).some(({ name }) => name === "definedName");
  return isEmpty ? xml.slice(0, list.start) + xml.slice(list.end) : xml;
}

/** A worksheet as the chosen one among its fellows, or as one of the others. */
export function withTabChosen(part: string, xml: string, isChosen: boolean): string {
  const edits: Edit[] = [];
  walkXml(part, xml, {
    open({ name, start, end }) {
      if (name !== "sheetView") return;
      const text = withAttribute(xml.slice(start, end), "tabSelected", isChosen ? "1" : undefined);
      edits.push({ start, end, text });
    },
  });
  return applyEdits(xml, edits);
}
