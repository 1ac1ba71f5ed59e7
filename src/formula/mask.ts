/** Stands for a character that belongs to a text, a quoted sheet name or square brackets. */
export const HIDDEN = "\u0000";

function quotedEnd(formula: string, start: number): number {
  const quote = formula[start];
  let at = start + 1;
  while (at < formula.length) {
    if (formula[at] !== quote) at += 1;
    else if (formula[at + 1] === quote) at += 2;
    else return at + 1;
  }
  return formula.length;
}

/** Brackets nest; an apostrophe inside takes the next character as it is (ECMA-376 Part 1, 18.17.6.2). */
function bracketEnd(formula: string, start: number): number {
  let depth = 0;
  for (let at = start; at < formula.length; at += 1) {
    const letter = formula[at];
    if (letter === "'") at += 1;
    else if (letter === "[") depth += 1;
    else if (letter === "]") depth -= 1;
    if (depth === 0) return at + 1;
  }
  return formula.length;
}

/**
 * The formula with every text, quoted sheet name and bracketed part hidden, of the same length: what is found in
 * the mask is a part of the formula itself.
 */
export function maskOf(formula: string): string {
  let mask = "";
  let at = 0;
  while (at < formula.length) {
    const letter = formula[at] ?? "";
    const isQuoted = letter === '"' || letter === "'";
    if (!isQuoted && letter !== "[") {
      mask += letter;
      at += 1;
      continue;
    }
    const end = isQuoted ? quotedEnd(formula, at) : bracketEnd(formula, at);
    mask += HIDDEN.repeat(end - at);
    at = end;
  }
  return mask;
}

/**
 * Replaces what a pattern finds outside texts, quoted sheet names and brackets.
 *
 * @param pattern - With the `g` flag; it may match `HIDDEN` to take in a hidden part.
 * @param replacement - Gets the match and the stretch of the formula it stands for.
 */
export function replaceOutsideTexts(
  formula: string,
  pattern: RegExp,
  replacement: (match: RegExpMatchArray, original: string) => string,
): string {
  const pieces: string[] = [];
  let at = 0;
  for (const match of maskOf(formula).matchAll(pattern)) {
    const end = match.index + match[0].length;
    pieces.push(formula.slice(at, match.index), replacement(match, formula.slice(match.index, end)));
    at = end;
  }
  pieces.push(formula.slice(at));
  return pieces.join("");
}
