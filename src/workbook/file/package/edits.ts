/** A stretch of a part's text and what takes its place; an empty stretch inserts. */
export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/**
 * Carries out edits on a text; everything between them stays as it is. Insertions at one place keep their order.
 *
 * @throws RangeError where two edits overlap: they were made by mistake.
 */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  const ordered = edits
    .map((edit, order) => ({ ...edit, order }))
    .sort((a, b) => a.start - b.start || a.end - b.end || a.order - b.order);
  const pieces: string[] = [];
  let at = 0;
  for (const edit of ordered) {
    if (edit.start < at) throw new RangeError(`edits overlap at ${edit.start}`);
    pieces.push(text.slice(at, edit.start), edit.text);
    at = edit.end;
  }
  pieces.push(text.slice(at));
  return pieces.join("");
}
