import { ask, cellText, firstRow, list } from "../parts/ask";

/** What a search of the grades is narrowed by; an empty text narrows nothing. */
export interface SteelQuestion {
  readonly name: string;
  readonly family: string;
  readonly use: string;
  readonly quench: string;
}

/** Baths as the hardening sheets name them. */
export const BATHS = ["water", "brine", "oil", "air", "salt", "polymer", "gas"] as const;

/** Verdicts under which a steel is worth a look for a use; STEELS_FOR explains each. */
const WORTH_A_LOOK = new Set(["inside", "likely inside", "uncertain"]);
const ALL_ROWS = 400;

/** Answers that do not change while the pane is open, by their question. */
const kept = new Map<string, ReadonlySet<string>>();

function once(key: string, work: () => readonly string[]): ReadonlySet<string> {
  const found = kept.get(key) ?? new Set(work());
  kept.set(key, found);
  return found;
}

/** Steels of one row are alike for a use and stand in one cell. */
function forUse(use: string): ReadonlySet<string> {
  return once(`use ${use}`, () => {
    const { rows } = ask("STEELS_FOR", use, null, null, null, null, null, null, ALL_ROWS);
    const fitting = rows.filter((row) => WORTH_A_LOOK.has(cellText(row[1] ?? null)));
    return fitting.flatMap((row) => cellText(row[0] ?? null).split(", "));
  });
}

/** The column `quench` of HARDENING, by the label it is declared with. */
const QUENCH_COLUMN = 6;

function forQuench(quench: string): ReadonlySet<string> {
  return once(`quench ${quench}`, () =>
    list(ask("STEELS")).filter((name) =>
      (firstRow(ask("HARDENING", name))[QUENCH_COLUMN] ?? "").split(/[^a-z]+/).includes(quench),
    ),
  );
}

/** Standard grades that a name of the trade often stands for, as the sentence of the refusal names them. */
function oftenMeant(name: string): readonly string[] {
  const { refusal } = ask("STEEL", name);
  const often = /a name of the trade, often ([^:]+):/.exec(refusal ?? "")?.[1] ?? "";
  return often === "" ? [] : often.split(", ");
}

/** Designations that answer to everything asked, in the order of the grade table. */
export function steelsFound({ name, family, use, quench }: SteelQuestion): readonly string[] {
  const named = list(ask("STEELS", family || null, null, name || null));
  const nicknames = name === "" ? [] : oftenMeant(name);
  const inFamily = family === "" ? null : new Set(list(ask("STEELS", family)));
  const all = [...new Set([...nicknames.filter((one) => inFamily?.has(one) ?? true), ...named])];
  const fits = use === "" ? null : forUse(use);
  const hardens = quench === "" ? null : forQuench(quench);
  return all.filter((one) => (fits?.has(one) ?? true) && (hardens?.has(one) ?? true));
}

/** What was asked, in words, for a search that finds nothing. */
export function nothingFound({ name, family, use, quench }: SteelQuestion): string {
  const asked = [
    name === "" ? "" : `"${name}" in its name`,
    family === "" ? "" : `family ${family}`,
    use === "" ? "" : `use ${use}`,
    quench === "" ? "" : `quench in ${quench}`,
  ].filter((part) => part !== "");
  return `No grade of the table has ${asked.join(", ")}: ask for less at once.`;
}
