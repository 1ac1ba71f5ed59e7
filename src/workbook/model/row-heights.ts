import type { CellModel } from "./sheet-model";

/** Pixels of a line of text at 10 points, of a letter in a wide font, and of what a cell keeps free at its sides. */
const LINE = 17;
const LETTER = 6.4;
const BOLD = 7.3;
const MARGIN = 15;
const PADDING = 3;
const TITLE = 28;

/** Lines that one paragraph needs where it breaks between words. */
function paragraphLines(paragraph: string, letters: number): number {
  let [lines, filled] = [1, 0];
  for (const { length } of paragraph.split(" ")) {
    const wanted = filled === 0 ? length : filled + 1 + length;
    if (wanted > letters && filled > 0) lines += 1;
    lines += Math.ceil(length / letters) - 1;
    filled = wanted <= letters ? wanted : length % letters || letters;
  }
  return lines;
}

const linesOf = (text: string, letters: number) =>
  text.split("\n").reduce((sum, paragraph) => sum + paragraphLines(paragraph, letters), 0);

/** A cell of a row as it is shown, and the pixels of its column. */
export interface ShownCell {
  readonly model: CellModel;
  readonly text: string;
  readonly width: number;
}

/**
 * Pixels of a row whose texts break into lines; `undefined` where one line does. A file has to say so: LibreOffice
 * does not find it out by itself.
 */
export function heightOf(cells: readonly ShownCell[]): number | undefined {
  const lines = cells.map(({ model, text, width }) => {
    if (model.wrap !== true) return 1;
    const letter = model.role === "heading" || model.role === "label" ? BOLD : LETTER;
    return linesOf(text, Math.max(1, Math.floor((width - MARGIN) / letter)));
  });
  const most = Math.max(1, ...lines);
  if (cells.some(({ model }) => model.role === "title")) return Math.max(TITLE, most * LINE + PADDING);
  return most === 1 ? undefined : most * LINE + PADDING;
}
