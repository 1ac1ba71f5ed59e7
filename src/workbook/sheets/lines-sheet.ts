import { listedWords } from "./parts/listed-words";
import { type CellOf, type TableColumns, TableSheet } from "./parts/table-sheet";
import { type ColumnKey, columnKeys, type PlanningColumn, planningColumns } from "./planning-columns";
import type { RunLine } from "./run-r07/run";

const OPEN: RunLine = {
  line: "",
  item: "",
  use: "",
  steel: "",
  good: "",
  yield: "",
  confidence: "",
  aim: "",
  quench: "",
  grind: "",
  length: "",
  width: "",
  thickness: "",
  tipWidth: "",
  tipThickness: "",
  edge: null,
} as unknown as RunLine;

const WORDS: Readonly<Partial<Record<ColumnKey, string>>> = {
  steel: "STEELS",
  use: "USES",
  quench: "QUENCHES",
  grind: "GRINDS",
};

/** A paper shows less of a caution than a screen: words get more room here. */
const WIDER: Readonly<Partial<Record<ColumnKey, number>>> = {
  caution: 330,
  estimate: 330,
  status: 100,
  item: 110,
};

/** No caution is said too: a cell with an empty text is worked out anew by LibreOffice, which has no such function. */
function spoken(key: ColumnKey, content: number | string | null): number | string | null {
  if (key !== "caution" || typeof content !== "string") return content;
  const formula = content.replace(/^=/, "");
  return `=IF(${formula}="","none",${formula})`;
}

/** The lines of a run: what the smith decides, and what follows for hardness, temper, mass and starts. */
export function linesSheet(lines: readonly RunLine[], count: number): TableSheet<ColumnKey> {
  const columns = Object.fromEntries(
    columnKeys.map((key) => {
      const column: PlanningColumn = planningColumns[key];
      const words = WORDS[key];
      return [
        key,
        {
          ...column,
          width: WIDER[key] ?? column.width,
          ...(words === undefined ? {} : { words: listedWords(words) }),
          isStatus: key === "status",
          content: (at: CellOf<ColumnKey>, index: number) =>
            spoken(key, column.content(lines[index] ?? OPEN, at)),
        },
      ];
    }),
  ) as unknown as TableColumns<ColumnKey>;
  return new TableSheet("Lines", columns, count, {
    title: "Lines: what is made, of which steel, and what follows from it",
    note: "A row a line of the order. Mass: blade without tang. Temper is a starting point: test one and step up.",
    frozenColumns: 2,
  });
}

export type Lines = TableSheet<ColumnKey>;
