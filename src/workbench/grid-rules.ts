import type { IRange, IResources } from "@univerjs/core";
import { STATUS_COLOURS } from "../workbook/colours";
import type { SheetModel } from "../workbook/sheet-model";

function columnRange(column: number, [startRow, endRow]: SheetModel["lines"]): IRange {
  return { startRow, endRow, startColumn: column, endColumn: column };
}

function statusRules({ statusColumns, lines }: SheetModel) {
  return statusColumns.flatMap((column) =>
    STATUS_COLOURS.map(([word, colour]) => ({
      cfId: `status-${column}-${word}`,
      ranges: [columnRange(column, lines)],
      stopIfTrue: false,
      rule: {
        type: "highlightCell",
        subType: "text",
        operator: "containsText",
        value: word,
        style: { bg: { rgb: colour } },
      },
    })),
  );
}

/** Lists only offer: a word outside them may be typed, and the functions say what is wrong with it. */
function listRules({ wordLists, lines }: SheetModel) {
  const filled = wordLists.filter(({ words }) => words.length > 0);
  return filled.map(({ column, words, rows = lines }, index) => ({
    uid: `list-${column}-${index}`,
    type: "list",
    formula1: words.map((word) => word.replaceAll(",", " ")).join(","),
    ranges: [columnRange(column, rows)],
    allowBlank: true,
    showErrorMessage: false,
    errorStyle: 0,
    renderMode: 1,
  }));
}

type Named = readonly (readonly [id: string, sheet: SheetModel])[];

function resource(name: string, sheets: Named, rules: (sheet: SheetModel) => readonly unknown[]) {
  return { name, data: JSON.stringify(Object.fromEntries(sheets.map(([id, sheet]) => [id, rules(sheet)]))) };
}

/** Drop-down lists and status colours. They come with the workbook, so that the first undo does not undo them. */
export function rulesOf(sheets: Named): IResources {
  return [
    resource("SHEET_CONDITIONAL_FORMATTING_PLUGIN", sheets, statusRules),
    resource("SHEET_DATA_VALIDATION_PLUGIN", sheets, listRules),
  ];
}
