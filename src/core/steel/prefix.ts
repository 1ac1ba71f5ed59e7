import type { System } from "./steel";

/** Words in front of a designation that name its system, and the systems they bind it to. */
const PREFIXES: readonly (readonly [RegExp, readonly System[]])[] = [
  [/^(?:AISI|SAE|ASTM|UNS)[\s\-/:]*(?:AISI|SAE|NO\.?)?/, ["SAE/AISI", "AISI tool", "AISI stainless"]],
  [/^(?:DIN[\s-]*)?(?:W\.?[\s-]*NR|MAT\.?[\s-]*NR|WERKSTOFF[\s-]*NR)\.?/, ["EN"]],
  [/^(?:DIN[\s-]*)?(?:EN|DIN|ISO)(?![A-Z])/, ["EN"]],
  [/^JIS/, ["JIS"]],
  [/^GB(?:\s*\/\s*T)?/, ["GB"]],
  [/^(?:GOST|ГОСТ)/, ["GOST"]],
];

/** A designation without the name of its system, and the systems that the name allows. */
export interface Prefixed {
  readonly rest: string;
  readonly systems: readonly System[];
}

/** Splits "DIN C75S" or "ГОСТ 45"; undefined where no system is named. */
export function splitPrefix(tidied: string): Prefixed | undefined {
  for (const [pattern, systems] of PREFIXES) {
    const found = pattern.exec(tidied);
    if (found === null) continue;
    const rest = tidied.slice(found[0].length).replace(/^[\s\-/.:]+/, "");
    if (rest !== "") return { rest, systems };
  }
  return undefined;
}
