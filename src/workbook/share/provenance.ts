import manifest from "../../../package.json";
import { DATA_EDITION } from "../../core/edition";
import { cellName } from "../../formula/addresses";
import { NAMESPACE } from "../../functions/catalogue";
import { constantXml } from "../file/cell-xml";
import { declarePart } from "../file/package/content-types";
import type { Package } from "../file/package/package";
import { addRelationship } from "../file/package/relationships";
import { freeName } from "./part-names";

/** Name of the sheet that says where the values of a copy come from. */
export const PROVENANCE = "Provenance";

/** What computed the values: the words that VERSION gives in a cell. */
export const COMPUTED_BY = `Blade Metallurgy ${manifest.version}, data edition ${DATA_EDITION}`;

/** The labels that verification looks for. */
export const LABELS = {
  computedBy: "Computed by",
  date: "Date given by the sender",
  digest: "SHA-256 of the values",
  formulas: "Formulas replaced by values",
  leftOut: "Sheets left out",
} as const;

const SHEET_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";

type Cell = string | number;
type Line = readonly Cell[];

function cellText(cell: Cell, row: number, column: number): string {
  const { attributes, xml } = constantXml({ value: cell }, "");
  return `<c r="${cellName(row, column)}"${attributes}>${xml}</c>`;
}

function sheetText(lines: readonly Line[]): string {
  const rows = lines.map((line, row) => {
    const cells = line.map((cell, column) => (cell === "" ? "" : cellText(cell, row, column))).join("");
    return `<row r="${row + 1}">${cells}</row>`;
  });
  return (
    '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n' +
    '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>' +
    '<sheetViews><sheetView workbookViewId="0"/></sheetViews><cols><col min="1" max="1" width="30" customWidth="1"/>' +
    '<col min="2" max="2" width="24" customWidth="1"/><col min="3" max="3" width="70" customWidth="1"/></cols>' +
    `<sheetData>${rows.join("")}</sheetData><pageMargins left="0.6" right="0.6" top="0.7" bottom="0.7" header="0.3" footer="0.3"/>` +
    '<pageSetup paperSize="9" orientation="portrait" fitToHeight="0"/></worksheet>'
  );
}

/** What the sheet tells. */
export interface Origin {
  readonly date: string;
  readonly source: string;
  readonly formulas: number;
  readonly leftOut: number;
  /** Whether a note keeps every formula, or only those that call our functions. */
  readonly areAllNoted: boolean;
  readonly digest: string;
  /** Formulas that kept the value of the file they came from: sheet, cell, reason. */
  readonly left: readonly Line[];
  /** Results that are errors: sheet, cell, sentence. */
  readonly errors: readonly Line[];
  /** Typed cells that formulas read: sheet, cell, content. */
  readonly inputs: readonly Line[];
}

function block(title: string, headings: Line, lines: readonly Line[]): Line[] {
  return lines.length === 0 ? [] : [[], [title], headings, ...lines];
}

function inputLines({ inputs, leftOut }: Origin): Line[] {
  if (inputs.length === 0 && leftOut > 0)
    return [[], ["Inputs"], ["They stand on sheets that were left out."]];
  return block("Inputs", ["Sheet", "Cell", "Typed content"], inputs);
}

function linesOf(origin: Origin): Line[] {
  return [
    [PROVENANCE],
    [
      `Every formula of this copy was replaced by its value; ${origin.areAllNoted ? "the note on a cell keeps the formula" : `there are many, and notes keep those of ${NAMESPACE} functions only`}.`,
    ],
    ["Estimates carry a range and an error: ask the sender before heat-treating by them."],
    ["Follow local codes and licensed practice."],
    [],
    [LABELS.computedBy, COMPUTED_BY],
    [LABELS.date, origin.date === "" ? "not given" : origin.date],
    ["Copied from", origin.source === "" ? "not given" : origin.source],
    [LABELS.formulas, origin.formulas],
    [LABELS.leftOut, origin.leftOut],
    [LABELS.digest, origin.digest],
    ...block("Not computed by us, value as it stood", ["Sheet", "Cell", "Reason"], origin.left),
    ...block("Errors", ["Sheet", "Cell", "What it says"], origin.errors),
    ...inputLines(origin),
  ];
}

/** Adds the sheet to a copy. @returns The id of the link to it, for the list of sheets. */
export function addProvenance(file: Package, main: string, origin: Origin): string {
  const folder = main.slice(0, main.lastIndexOf("/") + 1);
  const part = freeName(file, `${folder}worksheets/sheet`, ".xml");
  file.setText(part, sheetText(linesOf(origin)));
  declarePart(file, part, SHEET_TYPE);
  return addRelationship(file, main, "worksheet", part);
}
