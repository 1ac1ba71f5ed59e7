import { DocSimpleSkeleton, FontCache } from "@univerjs/preset-sheets-core";

let isGuarded = false;

/**
 * Begins no line of a cell with a space. The grid breaks a word letter by letter where its space alone does not fit
 * any more, so that the space came to stand before the next line, and headings of two lines looked askew.
 */
export function guardLineBreaks(): void {
  if (isGuarded) return;
  isGuarded = true;
  const { calculate } = DocSimpleSkeleton.prototype;
  DocSimpleSkeleton.prototype.calculate = function () {
    const lines = calculate.call(this);
    const { _fontStyle: font } = this as unknown as { readonly _fontStyle: string };
    for (let at = lines.length - 1; at > 0; at -= 1) {
      const line = lines[at];
      if (line === undefined || !line.text.startsWith(" ")) continue;
      const text = line.text.trimStart();
      if (text === "") lines.splice(at, 1);
      else lines[at] = { ...line, text, width: FontCache.getMeasureText(text, font).width };
    }
    return lines;
  };
}
