import { tidy } from "../normalize-name";
import { byLook, isCyrillic } from "../script";
import type { System } from "../steel";

/** Latin spellings of GOST letters, longer ones first. */
const TO_CYRILLIC: readonly (readonly [string, string])[] = [
  ["KH", "Х"],
  ["SH", "Ш"],
  ["TS", "Ц"],
  ["YU", "Ю"],
  ["A", "А"],
  ["B", "Б"],
  ["V", "В"],
  ["G", "Г"],
  ["D", "Д"],
  ["K", "К"],
  ["M", "М"],
  ["N", "Н"],
  ["P", "П"],
  ["R", "Р"],
  ["S", "С"],
  ["T", "Т"],
  ["U", "У"],
  ["Y", "У"],
  ["F", "Ф"],
  ["X", "Х"],
  ["H", "Х"],
];

function cyrillic(name: string): string {
  return TO_CYRILLIC.reduce((text, [latin, letter]) => text.replaceAll(latin, letter), name);
}

/**
 * A name as its system spells it, in capitals: without spaces and delivery condition, every dash a
 * hyphen, Latin look-alikes where the system writes Latin, Cyrillic where it writes Cyrillic.
 */
export function spelledFor(system: System, name: string): string {
  const tidied = tidy(name)
    .replace(/[‐‑‒–—―−]/g, "-")
    .replace(/\s*\+[A-Z]{1,3}\d*$/, "")
    .replace(/[\s_]+/g, "")
    .replace(/,/g, ".");
  if (system !== "GOST") return byLook(tidied);
  return isCyrillic(tidied) ? tidied : cyrillic(tidied);
}
