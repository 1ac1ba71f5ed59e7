import { NAMESPACE } from "../functions/namespace";
import { mayCallOurs, ownName } from "./functions-called";
import type { Token } from "./pieces";
import { rewritten } from "./tokens";

/** In front of our names in files, where the dot after the namespace becomes an underscore. */
const STORED_PREFIX = `_xldudf_${NAMESPACE}_`;

/** Our names written otherwise; the workbook that a file names in front of them goes. */
function withOwnNames(formula: string, write: (name: string) => string): string {
  if (!mayCallOurs(formula)) return formula;
  const own = (token: Token | undefined) => (token?.kind === "call" ? ownName(token.text) : undefined);
  return rewritten(formula, (token, next) => {
    if (token.kind === "sheet") return own(next) === undefined ? undefined : "";
    const name = own(token);
    return name === undefined ? undefined : write(name);
  });
}

/** The formula with our names as they are typed, with their dot; all else as it was. */
export function ownNamesTyped(formula: string): string {
  return withOwnNames(formula, (name) => `${NAMESPACE}.${name}`);
}

/** The formula with our names as a file must hold them for Excel to find them; all else as it was. */
export function storedForm(formula: string): string {
  return withOwnNames(formula, (name) => STORED_PREFIX + name);
}
