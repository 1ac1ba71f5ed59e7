import { cellName } from "../../../formula/addresses";
import type { CellModel, SheetModel, WordList } from "../../model/sheet-model";
import { listedWords } from "../parts/listed-words";
import { type CellOf, type ColumnKey, columnKeys, planningColumns } from "../planning-columns";
import type { Run, RunLine } from "../run-r07/run";

const HEADING_ROW = 2;
const FIRST_LINE = HEADING_ROW + 2;

/** Room for the first sentences of a caution; six lines still fit on a small screen. */
const LINE_HEIGHT = 79;

const MARKS_NOTE =
  "type: you fill it in · calc: worked out · either: worked out until you type over it (shaded: yours). Mass: blade without tang.";

function lineCells(line: RunLine, row: number): (CellModel | undefined)[] {
  const at: CellOf = (key) => cellName(row, columnKeys.indexOf(key));
  return columnKeys.map((key) => {
    const { content, role, filled, format, wrap } = planningColumns[key];
    const written = content(line, at);
    const dress = role ?? (filled === "calc" ? "worked" : "typed");
    return {
      content: written ?? "",
      role: dress,
      ...(format === undefined ? {} : { format }),
      ...(wrap === undefined ? {} : { wrap }),
    };
  });
}

function topRows(run: Run): (CellModel | undefined)[][] {
  const title = `Run ${run.name} · ${run.forge} · for ${run.customers.join(" and ")} · due in ${run.due}`;
  return [
    [{ content: title, role: "title" }],
    [{ content: MARKS_NOTE, role: "note" }],
    columnKeys.map((key) => ({ content: planningColumns[key].heading, role: "heading", wrap: true })),
    columnKeys.map((key) => ({ content: planningColumns[key].filled, role: "mark" })),
  ];
}

function wordLists(): WordList[] {
  const sources: readonly (readonly [ColumnKey, string])[] = [
    ["steel", "STEELS"],
    ["use", "USES"],
    ["quench", "QUENCHES"],
    ["grind", "GRINDS"],
  ];
  return sources.map(([key, name]) => ({ column: columnKeys.indexOf(key), words: listedWords(name) }));
}

/** The planning sheet of a run: one row a line, everything a smith changes in shaded cells. */
export function planningSheet(run: Run): SheetModel {
  const lastLine = FIRST_LINE + run.lines.length - 1;
  const lineHeights = run.lines.map((_, index) => [FIRST_LINE + index, LINE_HEIGHT]);
  return {
    name: `Run ${run.name}`,
    rows: [...topRows(run), ...run.lines.map((line, index) => lineCells(line, FIRST_LINE + index))],
    columnWidths: columnKeys.map((key) => planningColumns[key].width),
    rowHeights: { 0: 28, [HEADING_ROW]: 36, ...Object.fromEntries(lineHeights) },
    frozenRows: FIRST_LINE,
    frozenColumns: 2,
    lines: [FIRST_LINE, lastLine],
    wordLists: wordLists(),
    statusColumns: [columnKeys.indexOf("status")],
  };
}

/** Address of one figure of the planning sheet, line counted from 0. */
export function planningCell(line: number, key: ColumnKey): string {
  return cellName(FIRST_LINE + line, columnKeys.indexOf(key));
}
