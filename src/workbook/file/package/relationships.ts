import { applyEdits, type Edit } from "./edits";
import type { Package } from "./package";
import { escapeXml, walkXml } from "./xml";

/** A link from one part to another. */
export interface Relationship {
  readonly id: string;
  /** Last word of the type's address: `worksheet`, `table`, `comments` … */
  readonly kind: string;
  /** Full name of the part it points at; `undefined` for an address outside the file. */
  readonly part: string | undefined;
  readonly start: number;
  readonly end: number;
}

/** Name of the part that holds the links of a part; `""` stands for the package itself. */
export function relationshipsPart(part: string): string {
  const slash = part.lastIndexOf("/") + 1;
  return `${part.slice(0, slash)}_rels/${part.slice(slash)}.rels`;
}

function resolved(from: string, target: string): string {
  if (target.startsWith("/")) return target.slice(1);
  const folders = from.split("/").slice(0, -1);
  for (const step of target.split("/")) {
    if (step === "..") folders.pop();
    else if (step !== ".") folders.push(step);
  }
  return folders.join("/");
}

/** The links of a part, in their order; none where it has no list of links. */
export function relationshipsOf(file: Package, part: string): Relationship[] {
  const name = relationshipsPart(part);
  if (!file.has(name)) return [];
  const found: Relationship[] = [];
  walkXml(name, file.text(name), {
    open({ name: element, attributes, start, end }) {
      if (element !== "Relationship") return;
      const type = attributes.Type ?? "";
      const outside = attributes.TargetMode === "External";
      found.push({
        id: attributes.Id ?? "",
        kind: type.slice(type.lastIndexOf("/") + 1),
        part: outside ? undefined : resolved(part, attributes.Target ?? ""),
        start,
        end,
      });
    },
  });
  return found;
}

/** Takes links out of the list of a part. */
export function removeRelationships(file: Package, part: string, gone: readonly Relationship[]): void {
  if (gone.length === 0) return;
  const name = relationshipsPart(part);
  const edits: Edit[] = gone.map(({ start, end }) => ({ start, end, text: "" }));
  file.setText(name, applyEdits(file.text(name), edits));
}

const EMPTY_LIST =
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n' +
  '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"></Relationships>';
const TYPES = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
/** The same in the strict form (ISO/IEC 29500-1 Annex A): one file keeps to one of the two. */
const STRICT_TYPES = "http://purl.oclc.org/ooxml/officeDocument/relationships/";

/** The way from the folder of one part to another part; simple readers follow no other form of a link. */
function relativeTarget(from: string, to: string): string {
  const folders = from.split("/").slice(0, -1);
  const steps = to.split("/");
  let shared = 0;
  while (shared < steps.length - 1 && folders[shared] === steps[shared]) shared += 1;
  return [...folders.slice(shared).map(() => ".."), ...steps.slice(shared)].join("/");
}

/**
 * Adds a link from a part to another.
 *
 * @param kind - Last word of the type's address.
 * @returns Its id, unused before.
 */
export function addRelationship(file: Package, part: string, kind: string, target: string): string {
  const name = relationshipsPart(part);
  const used = new Set(relationshipsOf(file, part).map(({ id }) => id));
  let number = used.size + 1;
  while (used.has(`rId${number}`)) number += 1;
  const id = `rId${number}`;
  const text = file.has(name) ? file.text(name) : EMPTY_LIST;
  // A list without links may be written as one empty element.
  const list = text.replace(/<((?:\w+:)?Relationships)\b([^>]*?)\s*\/>/, "<$1$2></$1>");
  const end = list.lastIndexOf("</");
  const prefix = /^<\/(\w+:)?/.exec(list.slice(end))?.[1] ?? "";
  const types = text.includes(STRICT_TYPES) ? STRICT_TYPES : TYPES;
  const link = `<${prefix}Relationship Id="${id}" Type="${types}${kind}" Target="${escapeXml(relativeTarget(part, target))}"/>`;
  file.setText(name, list.slice(0, end) + link + list.slice(end));
  return id;
}
