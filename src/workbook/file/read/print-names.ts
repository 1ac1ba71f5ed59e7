import { columnOf, readRectangle } from "../../../formula/addresses";
import { splitAddress } from "../../../formula/references";
import { typedForm } from "../../../formula/stored-form";
import type { PrintSetup } from "../../model/workbook-data";
import { PRINT_AREA, WORKED_AREA } from "../patch/print-area-names";
import type { LiveSheet, LiveWorkbook } from "./live-workbook";

/** An area of so many columns whose rows a formula counts, as `print-xml.ts` writes it. */
const WORKED = /^.*!\$A\$1:INDEX\(.*?!\$([A-Z]+)\$1:\$\1\$\d+,(.*)\)$/;

function workedArea(formula: string): PrintSetup["printed"] {
  const [, letters, rows] = WORKED.exec(formula) ?? [];
  return letters === undefined || rows === undefined
    ? undefined
    : { columns: columnOf(letters) + 1, rows: typedForm(rows) };
}

/** What the names of a sheet say of printing: the area, and columns and rows that stand again on every page. */
export function printNames(
  { main }: LiveWorkbook,
  { listed }: LiveSheet,
): Pick<PrintSetup, "area" | "printed" | "repeatedRows" | "repeatedColumns"> {
  const meaning = (wanted: string) =>
    main.names.find(({ name, sheet }) => name === wanted && sheet === listed.position)?.formula ?? "";
  const titles = meaning("_xlnm.Print_Titles");
  const [, first, last] = /\$?(\d+):\$?(\d+)$/.exec(titles) ?? [];
  const [, columns] = /\$A:\$([A-Z]+)(?:,|$)/.exec(titles) ?? [];
  const area = readRectangle(splitAddress(meaning(PRINT_AREA)).place);
  const printed = workedArea(meaning(WORKED_AREA)) ?? workedArea(meaning(PRINT_AREA));
  return {
    ...(area && { area }),
    ...(printed && { printed }),
    ...(columns === undefined ? {} : { repeatedColumns: columnOf(columns) + 1 }),
    ...(first === undefined ? {} : { repeatedRows: [Number(first) - 1, Number(last) - 1] as const }),
  };
}
