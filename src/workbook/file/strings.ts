import type { Package } from "./package/package";
import { walkXml } from "./package/xml";

const ESCAPED = /_x([0-9A-Fa-f]{4})_/g;
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters XML cannot hold
const UNWRITABLE = /[\u0000-\u0008\u000b-\u001f\ufffe\uffff]|_(?=x[0-9A-Fa-f]{4}_)/g;

/** Text as a cell shows it, from the form in which a file holds it (ST_Xstring, ECMA-376 Part 1, 22.9.2.19). */
export function readXstring(text: string): string {
  return text.replace(ESCAPED, (_, digits: string) => String.fromCharCode(Number.parseInt(digits, 16)));
}

/** The form in which a file holds a text; XML characters are still to be escaped. */
export function writeXstring(text: string): string {
  return text.replace(
    UNWRITABLE,
    (letter) => `_x${letter.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`,
  );
}

/**
 * Gathers the text of a string item: runs of rich text joined, phonetic guides left out.
 * Feed it the visits of everything inside the item.
 */
export class ItemText {
  private text = "";
  private inText = false;
  private guides = 0;

  open(name: string): void {
    if (name === "rPh") this.guides += 1;
    if (name === "t") this.inText = this.guides === 0;
  }

  add(text: string): void {
    if (this.inText) this.text += text;
  }

  close(name: string): void {
    if (name === "rPh") this.guides -= 1;
    if (name === "t") this.inText = false;
  }

  /** The text so far; the next item starts empty. */
  take(): string {
    const text = readXstring(this.text);
    this.text = "";
    return text;
  }
}

/** The shared strings of a workbook, in their order. */
export function readSharedStrings(file: Package, part: string | undefined): string[] {
  if (part === undefined || !file.has(part)) return [];
  const strings: string[] = [];
  const item = new ItemText();
  walkXml(part, file.text(part), {
    open: ({ name }) => item.open(name),
    text: (text) => item.add(text),
    close(name) {
      item.close(name);
      if (name === "si") strings.push(item.take());
    },
  });
  return strings;
}
