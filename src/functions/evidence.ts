import { quantityText } from "../core/quantity-text";
import { NotAvailable } from "../core/refusal";
import { limitText, type Relation } from "../core/relation";
import { SOURCES, sourceText } from "../core/sources";
import { compositionText } from "../core/steel/composition-text";
import type { Steel } from "../core/steel/steel";
import { type Column, relationsOf, tableFunction, type WorksheetFunction } from "./declare";
import { text } from "./parameters";
import { steelOrNothing } from "./steel-argument";

const COLUMNS: readonly Column[] = [
  { label: "relation", unit: "text" },
  { label: "source", unit: "text" },
  { label: "range", unit: "text" },
  { label: "expected error", unit: "text" },
  { label: "kind of evidence", unit: "text" },
  { label: "composition used", unit: "text" },
];

/** Each input with its accepted span. */
export function rangeText(relation: Relation): string {
  const spans = Object.values(relation.inputs).map((limit) => `${limit.label}: ${limitText(limit)}`);
  return spans.length === 0 ? "no numeric range" : spans.join("; ");
}

/** The expected error in words. */
export function errorText({ error }: Relation): string {
  if (error.size === null) return error.kind;
  return `±${error.unit === "°C" ? `${error.size} °C` : quantityText(error.size, error.unit)}, ${error.kind}`;
}

/** Kind of evidence; a figure that nobody saw in a text says so. */
export function kindText({ evidence, source }: Relation): string {
  return SOURCES[source].seen === "MEMORY" ? `${evidence}, recalled, not confirmed` : evidence;
}

function row(relation: Relation, steel: Steel | undefined): string[] {
  const title = relation.note === undefined ? relation.title : `${relation.title}. ${relation.note}`;
  const source = `${sourceText(relation.source)}; ${relation.locator}`;
  const composition = steel === undefined ? "" : compositionText(steel);
  return [title, source, rangeText(relation), errorText(relation), kindText(relation), composition];
}

function named(functions: readonly WorksheetFunction[], given: string): WorksheetFunction {
  const name = given
    .replace(/^=?\s*(BLADE\.)?/i, "")
    .replace(/\(.*$/s, "")
    .trim()
    .toUpperCase();
  const found = functions.find((fn) => fn.name === name);
  if (found !== undefined) return found;
  const near = functions.filter((fn) => fn.name.includes(name) || name.includes(fn.name));
  const names = (near.length > 0 ? near : functions).map((fn) => fn.name).sort();
  throw new NotAvailable(`no function is called "${given}"; there are: ${names.join(", ")}`);
}

function evidence(fn: WorksheetFunction, steel: Steel | undefined): string[][] {
  const relations = relationsOf(fn, steel ?? null);
  if (relations.length > 0) return relations.map((relation) => row(relation, steel));
  return [
    [
      "exact: follows from the arguments alone",
      "",
      "",
      "none beyond rounding",
      "",
      steel === undefined ? "" : compositionText(steel),
    ],
  ];
}

/** EVIDENCE looks other functions up, so it is made from their list. */
export function evidenceFunction(functions: readonly WorksheetFunction[]): WorksheetFunction {
  return tableFunction({
    name: "EVIDENCE",
    summary:
      "Where an answer comes from: relation, source, range, expected error, kind of evidence, composition used.",
    parameters: {
      fn: text({
        label: "function",
        kind: "function name",
        help: 'Name of a function of this add-in in quotes: "TEMPERED_HRC".',
        accepts: 'a name in quotes such as "TEMPERED_HRC"',
        find: (given) => named(functions, String(given)),
      }),
      steel: steelOrNothing,
    },
    result: COLUMNS,
    relations: [],
    compute: ({ fn, steel }) => evidence(fn, steel),
  });
}
