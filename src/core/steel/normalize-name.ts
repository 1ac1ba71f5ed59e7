/** Characters that people put between the parts of a designation, or leave out. */
const SEPARATORS = /[\s\-‐‑‒–—―−_./,·()]+/g;
const BETWEEN_DIGITS = /(\d)[\s\-‐‑‒–—―−_./,·()]+(?=\d)/g;

/** Upper case, full-width characters made ordinary, outer spaces and quotes dropped. */
export function tidy(text: string): string {
  return text
    .normalize("NFKC")
    .replace(/["'“”„’]/g, "")
    .trim()
    .toUpperCase();
}

/**
 * The form in which names are compared: no separators, except one hyphen where digits meet, since
 * W1-8 is not W18 and HS6-5-2 is not HS652.
 */
export function tightKey(tidied: string): string {
  return tidied.replace(BETWEEN_DIGITS, "$1\u0000").replace(SEPARATORS, "").replaceAll("\u0000", "-");
}

/** The form without any separator: "10-95" for 1095. */
export function looseKey(tidied: string): string {
  return tidied.replace(SEPARATORS, "");
}
