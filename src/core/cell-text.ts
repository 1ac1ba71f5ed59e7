/** A text in a cell is no longer than this: more is not read. */
export const MAX_WORDS = 40;

/** How many words a text has. */
export function wordCount(text: string): number {
  return text.match(/\S+/g)?.length ?? 0;
}

/**
 * Parts joined to one text that a cell may hold, the weightiest first: a part that would make it too long
 * is left out, shorter ones behind it may still stand.
 */
export function withinWords(parts: readonly string[], separator = "; "): string {
  return parts.reduce((text, part) => {
    if (part === "") return text;
    const longer = text === "" ? part : `${text}${separator}${part}`;
    return text !== "" && wordCount(longer) > MAX_WORDS ? text : longer;
  }, "");
}
