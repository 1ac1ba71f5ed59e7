import type { Package } from "../../file/package/package";
import { relationshipsOf } from "../../file/package/relationships";
import { walkXml } from "../../file/package/xml";
import { ItemText } from "../../file/strings";

/** The notes of a sheet by cell. */
export function noteTexts(file: Package, sheet: string): ReadonlyMap<string, string> {
  const part = relationshipsOf(file, sheet).find(({ kind }) => kind === "comments")?.part;
  const notes = new Map<string, string>();
  if (part === undefined || !file.has(part)) return notes;
  const item = new ItemText();
  let cell = "";
  walkXml(part, file.text(part), {
    open({ name, attributes }) {
      if (name === "comment") cell = attributes.ref ?? "";
      item.open(name);
    },
    text: (text) => item.add(text),
    close(name) {
      item.close(name);
      if (name === "comment") notes.set(cell, item.take());
    },
  });
  return notes;
}

/** True where a note keeps this formula, in lines of its own. */
export function keepsFormula(note: string, typed: string): boolean {
  return `\n${note.replaceAll("\r", "")}\n`.includes(`\n=${typed.replaceAll("\r", "")}\n`);
}
