import { mentionsOf } from "../../formula/references";
import { removeParts } from "../file/package/content-types";
import { applyEdits } from "../file/package/edits";
import { FileRefusal } from "../file/package/file-refusal";
import type { Package } from "../file/package/package";
import {
  type Relationship,
  relationshipsOf,
  relationshipsPart,
  removeRelationships,
} from "../file/package/relationships";
import { walkXml } from "../file/package/xml";
import { type LiveWorkbook, readLiveWorkbook } from "../file/read/live-workbook";
import { formulaTexts } from "./formula-texts";
import { forgetUnusedTexts } from "./left-out-strings";
import { elementsAt } from "./sheet-elements";
import { withSheets } from "./sheet-list";

/** Every part that can be reached from a part by links, that part included. */
function reachedFrom(file: Package, start: string): Set<string> {
  const reached = new Set<string>();
  const next = [start];
  for (let part = next.pop(); part !== undefined; part = next.pop()) {
    if (reached.has(part)) continue;
    reached.add(part);
    next.push(...relationshipsOf(file, part).flatMap((link) => (link.part === undefined ? [] : [link.part])));
  }
  return reached;
}

/** The link of each listed sheet, by its name. */
function sheetLinks(file: Package, main: string): Map<string, Relationship> {
  const byId = new Map(relationshipsOf(file, main).map((link) => [link.id, link]));
  const links = new Map<string, Relationship>();
  walkXml(main, file.text(main), {
    open({ name, attributes }) {
      const key = Object.keys(attributes).find((attribute) => /:id$/.test(attribute));
      const link = name === "sheet" && key !== undefined ? byId.get(attributes[key] ?? "") : undefined;
      if (link !== undefined) links.set(attributes.name ?? "", link);
    },
  });
  return links;
}

function removeSheets(file: Package, main: string, gone: readonly string[]): void {
  const all = sheetLinks(file, main);
  const links = gone.flatMap((name) => all.get(name) ?? []);
  const below = links.flatMap(({ part }) => (part === undefined ? [] : [...reachedFrom(file, part)]));
  removeRelationships(file, main, links);
  const kept = reachedFrom(file, "");
  const unused = [...new Set(below)].filter((part) => !kept.has(part));
  removeParts(file, [...unused, ...unused.map(relationshipsPart)]);
}

/** The list of sheet names that some programs keep with the properties of a file. */
function removeTitles(file: Package): void {
  const part = relationshipsOf(file, "").find(({ kind }) => kind === "extended-properties")?.part;
  if (part === undefined || !file.has(part)) return;
  const xml = file.text(part);
  const titles = elementsAt(part, xml, 1).filter(({ name }) => /^(?:HeadingPairs|TitlesOfParts)$/.test(name));
  file.setText(
    part,
    applyEdits(
      xml,
      titles.map(({ start, end }) => ({ start, end, text: "" })),
    ),
  );
}

function refuseWhereDataTravels(file: Package, mentions: (formula: string) => boolean): void {
  const travels = file.names().find((name) => /(?:^|\/)(?:pivotCache|model)\//i.test(name));
  if (travels !== undefined)
    throw new FileRefusal(
      "No copy was made: the workbook has a pivot table, which keeps a copy of the sheets left out. Share the whole workbook, or delete the pivot table.",
    );
  const chart = file
    .names()
    .filter((name) => /\/charts\/[^/]+\.xml$/i.test(name))
    .find((name) => formulaTexts(name, file.text(name)).some(mentions));
  if (chart !== undefined)
    throw new FileRefusal(
      `No copy was made: a chart (${chart}) draws figures of a sheet that is left out. Keep that sheet, or delete the chart.`,
    );
}

/** The names of the sheets to keep, spelt as the workbook spells them. @throws FileRefusal for one that is not there. */
export function chosenSheets(live: LiveWorkbook, wanted: readonly string[]): string[] {
  return wanted.map((name) => {
    const found = live.main.listed.find((listed) => listed.toLowerCase() === name.trim().toLowerCase());
    if (found !== undefined) return found;
    throw new FileRefusal(
      `The workbook has no sheet called "${name.trim()}". It has: ${live.main.listed.join(", ")}.`,
    );
  });
}

/**
 * A workbook file with only some of its sheets: parts, texts and names of the others are taken out with them.
 * Formulas that read a sheet left out keep their value in the file, and can no longer be calculated.
 *
 * @throws FileRefusal where a pivot table or a chart would carry figures of a sheet left out.
 */
export function withOnlySheets(bytes: Uint8Array, kept: readonly string[]): Uint8Array {
  const { file, main } = readLiveWorkbook(bytes);
  const gone = main.listed.filter((name) => !kept.includes(name));
  const mentions = mentionsOf(gone);
  removeSheets(file, main.name, gone);
  refuseWhereDataTravels(file, mentions);
  const sheets = main.listed.flatMap((name, from) => (kept.includes(name) ? [{ name, from }] : []));
  const changes = { sheets, opens: 0, isUnwanted: mentions };
  file.setText(main.name, withSheets(main.name, file.text(main.name), main.names, changes));
  removeTitles(file);
  const left = readLiveWorkbook(file.save());
  forgetUnusedTexts(left);
  return left.file.save();
}
