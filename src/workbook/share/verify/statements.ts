import { COMPUTED_BY, LABELS, PROVENANCE } from "../provenance";
import { digestOf, plainContent, type Values } from "../values";

/** What a copy says of itself, set against what it holds. */
export interface Statements {
  /** What computed the copy; `undefined` where it does not say. */
  readonly computedBy: string | undefined;
  /** True where that is the very version and data edition that verifies it. */
  readonly isThisVersion: boolean;
  readonly date: string | undefined;
  readonly source: string | undefined;
  readonly audience: string | undefined;
  /** Lines of an enquiry, as the copy says them. */
  readonly enquiry: string | undefined;
  /** By when an answer was wanted, and the number of the copy. */
  readonly by: string | undefined;
  readonly number: string | undefined;
  /** How many sheets of the workbook the sender left out of the copy. */
  readonly leftOut: number;
  /** Whether the values, Provenance among them, still have the SHA-256 that the copy was made with. */
  readonly digest: "as stated" | "not as stated" | "not stated";
  /** That SHA-256 itself, as stated. */
  readonly stated: string | undefined;
  readonly key: string | undefined;
  readonly signature: string | undefined;
}

/** Lines of Provenance that are made after the digest. */
const SEALS: readonly string[] = [LABELS.digest, LABELS.signature];

/** Reads the Provenance sheet: what stands beside a label. */
function besideLabels(values: Values): (label: string) => string | undefined {
  const cells = values.get(PROVENANCE) ?? new Map<string, never>();
  return (label) => {
    const found = [...cells].find(([cell, content]) => /^A\d/.test(cell) && plainContent(content) === label);
    const value = found && cells.get(`B${found[0].slice(1)}`);
    return value && plainContent(value);
  };
}

/** Tells the cells that the digest cannot cover: its own and those of what is signed by it. */
export function isSeal(values: Values): (sheet: string, cell: string) => boolean {
  const cells = values.get(PROVENANCE);
  const rows = new Set(
    [...(cells ?? [])].flatMap(([cell, content]) =>
      cell.startsWith("A") && SEALS.includes(plainContent(content)) ? [cell.slice(1)] : [],
    ),
  );
  return (sheet, cell) => sheet === PROVENANCE && rows.has(cell.replace(/^[A-Z]+/, ""));
}

/** Reads what a copy says of itself and checks the SHA-256 of its values. */
export async function statementsOf(shared: Values): Promise<Statements> {
  const beside = besideLabels(shared);
  const [computedBy, stated] = [beside(LABELS.computedBy), beside(LABELS.digest)];
  const isAsStated = stated === (await digestOf(shared, isSeal(shared)));
  return {
    computedBy,
    isThisVersion: computedBy === COMPUTED_BY,
    date: beside(LABELS.date),
    source: beside(LABELS.source),
    audience: beside(LABELS.audience),
    enquiry: beside(LABELS.enquiry),
    by: beside(LABELS.by),
    number: beside(LABELS.number),
    leftOut: Number(beside(LABELS.leftOut) ?? 0),
    digest: stated === undefined ? "not stated" : isAsStated ? "as stated" : "not as stated",
    stated,
    key: beside(LABELS.key),
    signature: beside(LABELS.signature),
  };
}
