import { editDistance } from "../core/steel/name-suggestions";
import { NAMESPACE } from "../functions/namespace";
import { calledNames } from "./functions-called";

const bare = (name: string) => name.slice(name.lastIndexOf(".") + 1);

/** How far a known name is from the one typed; a part of a name typed whole counts as near. */
function farness(typed: string, known: string): number {
  const [a, b] = [bare(typed), bare(known)];
  const contains = a.length >= 3 && b.length >= 3 && (a.includes(b) || b.includes(a));
  return contains ? Math.min(1.5, editDistance(a, b)) : editDistance(a, b);
}

/** At most three known names that someone may have meant; our own stand before the engine's. */
function nearNames(typed: string, names: ReadonlySet<string>): string[] {
  const length = bare(typed).length;
  const allowed = length <= 3 ? 1.5 : Math.max(2, Math.floor(length / 3));
  const ours = (name: string) => (name.startsWith(`${NAMESPACE}.`) ? 0 : 1);
  return [...names]
    .filter((name) => !typed.startsWith(`${NAMESPACE}.`) || ours(name) === 0)
    .map((name) => ({ name, far: farness(typed, name) }))
    .filter(({ far }) => far <= allowed)
    .sort((a, b) => a.far - b.far || ours(a.name) - ours(b.name) || a.name.localeCompare(b.name))
    .slice(0, 3)
    .map(({ name }) => name);
}

/** The sentence for `#NAME?`: which name is unknown, and which were near. */
export function unknownNameSentence(formula: string, names: ReadonlySet<string>): string {
  const unknown = calledNames(formula).find((name) => !names.has(name));
  if (unknown === undefined)
    return 'the formula holds a name that is not known here: put texts and grades in double quotes, "1095"';
  const near = nearNames(unknown, names);
  const hint = near.length > 0 ? `; near: ${near.join(", ")}` : "";
  return `no function is called ${unknown}${hint}`;
}
