import { asksForAddIn } from "../../formula/functions-called";
import { namesOtherFile } from "../../formula/references";
import { removeParts } from "../file/package/content-types";
import { applyEdits, type Edit } from "../file/package/edits";
import { FileRefusal } from "../file/package/file-refusal";
import type { Package } from "../file/package/package";
import { relationshipsOf, relationshipsPart, removeRelationships } from "../file/package/relationships";
import { walkXml } from "../file/package/xml";
import type { LiveWorkbook } from "../file/read/live-workbook";
import { tableParts } from "../file/read/tables";
import { formulaTexts } from "./formula-texts";

/** A formula that could not be worked out without the add-in or without another file. */
export const isLive = (formula: string): boolean => asksForAddIn(formula) || namesOtherFile(formula);

/** Links from the package or the workbook that a copy of values does not need: calculation order, other files, add-ins. */
const UNWANTED = new Set(["calcChain", "externalLink", "webextensiontaskpanes"]);

function removeTree(file: Package, owner: string): void {
  const gone = relationshipsOf(file, owner).filter(({ kind }) => UNWANTED.has(kind));
  const parts = gone.flatMap(({ part }) => (part === undefined ? [] : [part]));
  const below = parts.flatMap((part) =>
    relationshipsOf(file, part).flatMap((link) => (link.part === undefined ? [] : [link.part])),
  );
  removeRelationships(file, owner, gone);
  removeParts(file, [...parts, ...below, ...parts.map(relationshipsPart)]);
}

/** The rules by which a table fills its columns; the values they gave stand in the cells. */
function withoutColumnFormulas(part: string, xml: string): string {
  const edits: Edit[] = [];
  let start = -1;
  walkXml(part, xml, {
    open(tag) {
      if (/^(?:calculatedColumn|totalsRow)Formula$/.test(tag.name)) start = tag.start;
    },
    close(name, _, end) {
      if (!/^(?:calculatedColumn|totalsRow)Formula$/.test(name)) return;
      edits.push({ start, end, text: "" });
    },
  });
  return applyEdits(xml, edits);
}

/** Marks of dynamic arrays; they have nothing to mark once all formulas are values. */
function removeArrayMarks(file: Package, live: LiveWorkbook): void {
  const isMarked = live.sheets.some(({ listed }) =>
    /<(?:\w+:)?c\s[^>]*\s(?:cm|vm)=/.test(file.text(listed.part)),
  );
  const links = relationshipsOf(file, live.main.name).filter(({ kind }) => kind === "sheetMetadata");
  if (isMarked || links.length === 0) return;
  removeRelationships(file, live.main.name, links);
  removeParts(
    file,
    links.flatMap(({ part }) => (part === undefined ? [] : [part])),
  );
}

/** Takes everything out of a copy that belongs to formulas, to other files or to an add-in. */
export function stripLiveParts(file: Package, live: LiveWorkbook): void {
  removeTree(file, "");
  removeTree(file, live.main.name);
  for (const { listed } of live.sheets) {
    for (const part of tableParts(file, listed)) {
      const xml = file.text(part);
      const plain = withoutColumnFormulas(part, xml);
      if (plain !== xml) file.setText(part, plain);
    }
  }
  removeArrayMarks(file, live);
}

function holdsLiveFormula(part: string, xml: string): boolean {
  // Reading the XML takes time, and a text may well name what no formula calls.
  if (!xml.toLowerCase().includes("_xldudf_") && !/\[\d+\]/.test(xml)) return false;
  return formulaTexts(part, xml).some(isLive);
}

/** Refuses a copy that still holds a formula of an add-in or of another file: it must not reach anyone. */
export function refuseTraces(file: Package): void {
  const part = file.names().find((name) => {
    if (/webextension|externalLinks\//i.test(name)) return true;
    const isXml = /\.(?:xml|rels)$/i.test(name);
    return isXml && (/webextension/i.test(file.text(name)) || holdsLiveFormula(name, file.text(name)));
  });
  if (part !== undefined) {
    throw new FileRefusal(
      `No copy was made: part ${part} of the workbook still asks for an add-in or for another file. Take out the chart, drawing or rule that does, and try again.`,
    );
  }
}
