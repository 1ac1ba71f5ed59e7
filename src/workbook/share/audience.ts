import { FileRefusal } from "../file/package/file-refusal";
import type { LiveWorkbook } from "../file/read/live-workbook";
import { PRIVATE_SHEETS } from "../sheets/sheets-of-the-plan";

/** Somebody a workbook is shared with, and the sheets that concern that one. */
export interface Audience {
  /** As the command line takes it. */
  readonly word: string;
  readonly label: string;
  /** How the names of the sheets begin, in small letters, with one space between words. */
  readonly sheets: readonly RegExp[];
}

const HEAT_TREAT_ORDER = /^heat treat(?:ment|ing|ers?|er s)? (?:work )?order/;
const STEEL_ORDER = /^steel (?:purchase )?(?:order|enquiry)/;

/** Everybody a workbook can be shared for. */
export const AUDIENCES: readonly Audience[] = [
  { word: "supplier", label: "Steel supplier", sheets: [STEEL_ORDER] },
  { word: "heat-treater", label: "Heat treater", sheets: [HEAT_TREAT_ORDER] },
  { word: "customer", label: "Customer", sheets: [/^quot(?:e|ation)\b/] },
];

/** Letters in lower case, all that stands between them as one space. */
const plain = (name: string) =>
  name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

/** The sheets that somebody gets, of those a workbook has. */
export function sheetsFor({ sheets }: Audience, names: readonly string[]): string[] {
  return names.filter((name) => sheets.some((words) => words.test(plain(name))));
}

const PAPERS = [HEAT_TREAT_ORDER, STEEL_ORDER];

/** Papers that somebody acts on first, the others in their order. */
function papersFirst(names: readonly string[]): string[] {
  const rankOf = (name: string) => {
    const place = PAPERS.findIndex((words) => words.test(plain(name)));
    return place < 0 ? PAPERS.length : place;
  };
  return [...names].sort((a, b) => rankOf(a) - rankOf(b));
}

const heldIn = (name: string) => PRIVATE_SHEETS.get(name.trim().toLowerCase());

/** Names of the sheets that can be seen and may be shared. */
export const visibleSheets = ({ main }: LiveWorkbook): string[] =>
  main.sheets.filter(({ isHidden, name }) => !isHidden && heldIn(name) === undefined).map(({ name }) => name);

function audienceNamed(word: string): Audience {
  const found = AUDIENCES.find((audience) => audience.word === plain(word).replaceAll(" ", "-"));
  if (found !== undefined) return found;
  throw new FileRefusal(
    `"${word}" is nobody the sheets can be chosen for; give ${AUDIENCES.map(({ word: known }) => known).join(", ")}.`,
  );
}

/** What is to be shared: everything that can be seen, the sheets named, or what concerns somebody. */
export type Choice =
  | { readonly kind: "all" }
  | { readonly kind: "sheets"; readonly names: readonly string[] }
  | {
      readonly kind: "for";
      readonly whom: string;
      /** The one whose lines alone travel. */
      readonly name?: string;
      /** Lines of an enquiry to that one, whoever they are bought from; none named means all. */
      readonly enquiry?: readonly string[];
      /** Of the sheets that concern that one, only these. */
      readonly names?: readonly string[];
    };

function named(live: LiveWorkbook, wanted: readonly string[]): string[] {
  const known = live.main.sheets.map(({ name }) => name);
  const found = wanted.map((name) => {
    const sheet = known.find((listed) => listed.toLowerCase() === name.trim().toLowerCase());
    const held = sheet === undefined ? undefined : heldIn(sheet);
    if (held !== undefined)
      throw new FileRefusal(`The sheet "${sheet}" holds ${held} and stays in the workbook.`);
    if (sheet !== undefined) return sheet;
    throw new FileRefusal(`The workbook has no sheet called "${name.trim()}". It has: ${known.join(", ")}.`);
  });
  return [...new Set(found)];
}

function concerning(live: LiveWorkbook, word: string, only?: readonly string[]): string[] {
  const audience = audienceNamed(word);
  const known = visibleSheets(live);
  const wanted = only === undefined ? known : named(live, only);
  const found = sheetsFor(audience, known).filter((name) => wanted.includes(name));
  if (found.length > 0) return found;
  throw new FileRefusal(
    `The workbook has no sheet for the ${audience.label.toLowerCase()}: name the sheets to share. It has: ${known.join(", ")}.`,
  );
}

/**
 * The names of the sheets to share, spelt as the workbook spells them.
 *
 * @throws FileRefusal for a sheet that is not there, and where nothing is left to share.
 */
export function chosenSheets(live: LiveWorkbook, choice: Choice): string[] {
  const chosen =
    choice.kind === "all"
      ? visibleSheets(live)
      : choice.kind === "sheets"
        ? named(live, choice.names)
        : concerning(live, choice.whom, choice.names);
  if (chosen.length === 0) throw new FileRefusal("No sheet was named to be shared.");
  return papersFirst(chosen);
}
