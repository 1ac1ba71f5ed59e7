import { applyEdits, type Edit } from "../file/package/edits";
import { walkXml, withAttribute } from "../file/package/xml";
import { formulaTexts } from "./formula-texts";
import { linkAttribute } from "./links";

/** An element with its place in the text of a part. */
export interface Element {
  readonly name: string;
  readonly start: number;
  readonly tagEnd: number;
  readonly end: number;
}

/** The elements at one depth of a part; depth 1 is right below the root. */
export function elementsAt(part: string, xml: string, depth: number): Element[] {
  const found: Element[] = [];
  const open: { name: string; start: number; tagEnd: number }[] = [];
  walkXml(part, xml, {
    open: ({ name, start, end }) => open.push({ name, start, tagEnd: end }),
    close(_, __, end) {
      const element = open.pop();
      if (element !== undefined && open.length === depth) found.push({ ...element, end });
    },
  });
  return found;
}

/** What follows `legacyDrawing` in a worksheet (CT_Worksheet, ECMA-376 Part 1, 18.3.1.99). */
const AFTER_NOTES = new Set([
  "legacyDrawingHF",
  "drawingHF",
  "picture",
  "oleObjects",
  "controls",
  "webPublishItems",
  "tableParts",
  "extLst",
]);

/** The worksheet with a link to the drawing of its notes. */
export function withNotesDrawing(part: string, xml: string, id: string): string {
  const next = elementsAt(part, xml, 1).find(({ name }) => AFTER_NOTES.has(name));
  const at = next?.start ?? xml.lastIndexOf("</");
  const prefix = /^<\/(\w+:)?/.exec(xml.slice(xml.lastIndexOf("</")))?.[1] ?? "";
  const link = `<${prefix}legacyDrawing ${linkAttribute(xml, id)}/>`;
  return xml.slice(0, at) + link + xml.slice(at);
}

function withoutRules(
  part: string,
  xml: string,
  rules: readonly Element[],
  isUnwanted: (formula: string) => boolean,
): Edit[] {
  return rules
    .filter(({ name }) => name === "conditionalFormatting" || name === "extLst")
    .filter(({ start, end }) => formulaTexts(part, xml.slice(start, end)).some(isUnwanted))
    .map(({ start, end }) => ({ start, end, text: "" }));
}

function withoutLists(
  part: string,
  xml: string,
  lists: Element | undefined,
  isUnwanted: (formula: string) => boolean,
): Edit[] {
  if (lists === undefined) return [];
  const all = elementsAt(part, xml, 2).filter(({ start, end }) => start > lists.start && end < lists.end);
  const gone = all.filter(({ start, end }) => formulaTexts(part, xml.slice(start, end)).some(isUnwanted));
  if (gone.length === 0) return [];
  if (gone.length === all.length) return [{ start: lists.start, end: lists.end, text: "" }];
  const tag = withAttribute(xml.slice(lists.start, lists.tagEnd), "count", String(all.length - gone.length));
  return [
    { start: lists.start, end: lists.tagEnd, text: tag },
    ...gone.map(({ start, end }) => ({ start, end, text: "" })),
  ];
}

/** The worksheet without the format rules and input lists that hold an unwanted formula. */
export function withoutRulesOn(part: string, xml: string, isUnwanted: (formula: string) => boolean): string {
  const top = elementsAt(part, xml, 1);
  const lists = top.find(({ name }) => name === "dataValidations");
  return applyEdits(xml, [
    ...withoutRules(part, xml, top, isUnwanted),
    ...withoutLists(part, xml, lists, isUnwanted),
  ]);
}
