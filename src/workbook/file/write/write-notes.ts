import { cellName } from "../../../formula/addresses";
import type { CellData, SheetData } from "../../model/workbook-data";
import { escapeXml } from "../package/xml";
import { writeXstring } from "../strings";
import { HEAD, type Link, MAIN, type Part } from "./package-parts";

/** Id of the link from a sheet to the drawing of its notes. */
export const NOTES_DRAWING = "rIdDrawing";

/** Columns and rows that the box of a note covers. */
const BOX = { columns: 4, rows: 5 };

/** A cell that has a note. */
type Noted = CellData & { readonly note: string };

/** The cells of a sheet that have a note. */
export const notesOf = ({ cells }: SheetData): Noted[] =>
  cells.flatMap((cell) =>
    cell.note === undefined || cell.note === "" ? [] : [{ ...cell, note: cell.note }],
  );

function commentsXml(notes: readonly Noted[]): string {
  const list = notes.map(({ row, column, note }) => {
    const text = `<r><t xml:space="preserve">${escapeXml(writeXstring(note))}</t></r>`;
    return `<comment ref="${cellName(row, column)}" authorId="0"><text>${text}</text></comment>`;
  });
  return (
    `${HEAD}<comments xmlns="${MAIN}"><authors><author></author></authors>` +
    `<commentList>${list.join("")}</commentList></comments>`
  );
}

function shapeXml({ row, column }: Noted, number: number): string {
  const anchor = [column + 1, 12, row, 6, column + 1 + BOX.columns, 12, row + BOX.rows, 6].join(", ");
  return (
    `<v:shape id="note_${number}" type="#note" style="position:absolute;visibility:hidden" fillcolor="#ffffe1" o:insetmode="auto">` +
    '<v:fill color2="#ffffe1"/><v:shadow on="t" color="black" obscured="t"/><v:path o:connecttype="none"/><v:textbox style="mso-direction-alt:auto"/>' +
    `<x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/><x:Anchor>${anchor}</x:Anchor><x:AutoFill>False</x:AutoFill>` +
    `<x:Row>${row}</x:Row><x:Column>${column}</x:Column></x:ClientData></v:shape>`
  );
}

/** The hidden boxes that Excel asks for beside the texts of notes (ECMA-376 Part 4, 19). */
function drawingXml(notes: readonly Noted[]): string {
  return (
    '<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel">' +
    '<o:shapelayout v:ext="edit"><o:idmap v:ext="edit" data="1"/></o:shapelayout>' +
    '<v:shapetype id="note" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"><v:stroke joinstyle="miter"/><v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype>' +
    `${notes.map((note, index) => shapeXml(note, index + 1)).join("")}</xml>`
  );
}

const commentsPart = (position: number) => `comments${position + 1}.xml`;
const drawingPart = (position: number) => `drawings/vmlDrawing${position + 1}.vml`;

/** The links of a sheet to the parts of its notes. */
export function notesLinks(notes: readonly Noted[], position: number): Link[] {
  if (notes.length === 0) return [];
  return [
    { id: "rIdNotes", kind: "comments", target: `../${commentsPart(position)}` },
    { id: NOTES_DRAWING, kind: "vmlDrawing", target: `../${drawingPart(position)}` },
  ];
}

/** The parts that hold the notes of a sheet. */
export function notesParts(notes: readonly Noted[], position: number): Part[] {
  if (notes.length === 0) return [];
  return [
    { name: `xl/${commentsPart(position)}`, type: "spreadsheetml.comments", xml: commentsXml(notes) },
    { name: `xl/${drawingPart(position)}`, xml: drawingXml(notes) },
  ];
}
