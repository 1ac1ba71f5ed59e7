import { textLiteral } from "../../../formula/tokens";
import type { CellModel, SheetModel } from "../../model/sheet-model";
import { heading, helperSheet, note, type Row } from "./sheet-parts";

/** What stands where a paper leaves a point open: whoever gets it must ask. */
export const TO_AGREE = "to be agreed";

/** The usual caution of a paper that goes out. */
export const CAUTION =
  "Figures are estimates within their stated error: try one piece first. Follow local codes and licensed practice.";

/** A named point of a paper. */
export interface DocField {
  readonly label: string;
  /** A formula without its equals sign, or the text that stands until someone types another. */
  readonly formula?: string;
  readonly text?: string;
  readonly format?: string;
}

/** A point taken from another sheet; open while that is empty. */
export const taken = (label: string, reference: string, format?: string): DocField => ({
  label,
  formula: `IF(${reference}="","${TO_AGREE}",${reference})`,
  ...(format === undefined ? {} : { format }),
});

/** A point with a text that the smith may type over; open while there is none. */
export const stated = (label: string, text: string = TO_AGREE): DocField => ({ label, text });

/** A temperature of another cell in both scales; open while that is empty. */
export const temperature = (label: string, reference: string): DocField => ({
  label,
  formula: `IF(ISNUMBER(${reference}),${bothScales(reference)},"${TO_AGREE}")`,
});

/** A temperature in °C as text in both scales, as part of a formula. */
export const bothScales = (celsius: string): string =>
  `ROUND(${celsius},0)&" °C ("&ROUND(${celsius}*9/5+32,0)&" °F)"`;

function valueCell({ formula, text, format }: DocField, named: string): CellModel {
  const content = formula ?? textLiteral(text ?? "");
  return {
    content: named === "" ? `=${content}` : `=IF(${named}="","",${content})`,
    role: formula === undefined ? "typed" : "words",
    wrap: true,
    ...(format === undefined ? {} : { format }),
  };
}

/** Points two beside each other, name in front. Where `named` is a cell, all wait until it is filled. */
export function fieldRows(fields: readonly DocField[], named = ""): Row[] {
  const half = Math.ceil(fields.length / 2);
  return Array.from({ length: half }, (_, index) =>
    [fields[index], fields[half + index]].flatMap((field) =>
      field === undefined ? [] : [heading(field.label), valueCell(field, named)],
    ),
  );
}

/** A part of a paper with its name. */
export const section = (name: string, fields: readonly DocField[], named = ""): Row[] => [
  [{ content: name, role: "title" }],
  ...fieldRows(fields, named),
];

const SIGN: CellModel = { content: "", role: "typed" };

/** Cells to sign in, and the usual caution. */
export const signatures: readonly Row[] = [
  [heading("For the forge, date"), SIGN, heading("For the supplier, date"), SIGN],
  [note(CAUTION)],
];

/** Pixels of the four columns of a paper: one page wide at full size. */
const DOC_WIDTHS = [132, 216, 132, 216] as const;

/** A paper that goes out, one page wide and upright. */
export function docSheet(name: string, rows: readonly Row[], looks: Partial<SheetModel> = {}): SheetModel {
  return helperSheet(name, rows, { columnWidths: DOC_WIDTHS, rowHeights: { 0: 28 }, print: {}, ...looks });
}
