import type { TableInput } from "../../../engine/workbook-input";
import { readRectangle } from "../../../formula/addresses";
import type { Package } from "../package/package";
import { relationshipsOf } from "../package/relationships";
import { walkXml } from "../package/xml";
import { readXstring } from "../strings";
import type { ListedSheet } from "./workbook-part";

interface ReadTable {
  name: string;
  ref: string;
  headerRows: number;
  totalsRows: number;
  readonly headings: string[];
}

function readTable(part: string, xml: string): ReadTable {
  const table: ReadTable = { name: "", ref: "", headerRows: 1, totalsRows: 0, headings: [] };
  walkXml(part, xml, {
    open({ name, attributes }) {
      if (name === "table") {
        table.name = attributes.displayName ?? attributes.name ?? "";
        table.ref = attributes.ref ?? "";
        table.headerRows = Number(attributes.headerRowCount ?? 1);
        table.totalsRows = Number(attributes.totalsRowCount ?? 0);
      }
      if (name === "tableColumn") table.headings.push(readXstring(attributes.name ?? ""));
    },
  });
  return table;
}

/** The parts that hold the tables of a sheet. */
export function tableParts(file: Package, sheet: ListedSheet): string[] {
  return relationshipsOf(file, sheet.part).flatMap(({ kind, part }) =>
    kind === "table" && part !== undefined && file.has(part) ? [part] : [],
  );
}

/** The tables of a sheet as the engine takes them. One without a heading row cannot be named by its columns there. */
export function tablesOf(file: Package, sheet: ListedSheet): TableInput[] {
  return tableParts(file, sheet).flatMap((part): TableInput[] => {
    const { name, ref, headerRows, totalsRows, headings } = readTable(part, file.text(part));
    const area = readRectangle(ref);
    if (area === undefined || headerRows !== 1) return [];
    const rows = area.lastRow - area.row + 1 - totalsRows;
    return [{ name, sheet: sheet.name, row: area.row, column: area.column, rows, headings }];
  });
}
