import type { Cells } from "../functions/cells";
import type { WorksheetFunction } from "../functions/declare";

/** What a card says under one name. */
type Fact =
  | { readonly type: "String"; readonly basicType: "String"; readonly basicValue: string }
  | { readonly type: "Double"; readonly basicType: "Double"; readonly basicValue: number };

/** A text that opens a card of facts (ExcelApi 1.19); formulas that read the cell get the text alone. */
export interface TextWithCard {
  readonly type: "String";
  readonly basicType: "String";
  readonly basicValue: string;
  readonly properties: Readonly<Record<string, Fact>>;
}

/** In bulk there are none: each card travels with every call that reads its cell. */
const MAX_CARDS = 20;

/** True where this Excel knows texts with properties; an older one shows an error for them. */
function takesCards(): boolean {
  try {
    return Office.context.requirements.isSetSupported("ExcelApi", "1.19");
  } catch {
    // As for formats: what cannot be told is answered plainly.
    return false;
  }
}

const firstCell = (given: unknown): unknown => (Array.isArray(given) ? firstCell(given[0]) : given);

const factOf = (value: number | string): Fact =>
  typeof value === "number"
    ? { type: "Double", basicType: "Double", basicValue: value }
    : { type: "String", basicType: "String", basicValue: value };

/**
 * Cards for the first cell of each row of an answer, where one argument asks for them and this Excel has them.
 *
 * @param args - Arguments as Excel hands them over.
 * @returns One a row; `undefined` for rows that stay plain.
 */
export function cardsFor(
  fn: WorksheetFunction,
  args: readonly unknown[],
  rows: Cells,
): readonly (TextWithCard | undefined)[] {
  if (fn.shape !== "row" || fn.card === undefined || rows.length > MAX_CARDS) return [];
  const { card, result } = fn;
  const asked = firstCell(args[Object.keys(fn.parameters).indexOf(card.parameter)]);
  if (String(asked).trim().toLowerCase() !== card.word || !takesCards()) return [];
  return rows.map((row) => {
    const [name] = row;
    if (typeof name !== "string" || name === "") return undefined;
    const facts = result.flatMap(({ label, unit }, at) => {
      const value = row[at];
      const heading = unit === "text" ? label : `${label} ${unit}`;
      return (typeof value === "string" && value !== "") || typeof value === "number"
        ? [[heading, factOf(value)] as const]
        : [];
    });
    return {
      type: "String",
      basicType: "String",
      basicValue: name,
      properties: Object.fromEntries(facts.slice(1)),
    };
  });
}
