import type { Note } from "./note";

/** A drawing of notes without any note yet: the form Excel asks for beside the texts (ECMA-376 Part 4, 19). */
export const EMPTY_DRAWING =
  '<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel">' +
  '<o:shapelayout v:ext="edit"><o:idmap v:ext="edit" data="1"/></o:shapelayout></xml>';

const SHAPE_TYPE =
  '<v:shapetype id="formula_note" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"><v:stroke joinstyle="miter"/><v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype>';

const WIDTH_COLUMNS = 4;
const HEIGHT_ROWS = 5;

function shape({ cell: { row, column } }: Note, number: number): string {
  const anchor = [column + 1, 12, row, 6, column + 1 + WIDTH_COLUMNS, 12, row + HEIGHT_ROWS, 6].join(", ");
  return (
    `<v:shape id="formula_note_${number}" type="#formula_note" style="position:absolute;visibility:hidden" fillcolor="#ffffe1" o:insetmode="auto">` +
    '<v:fill color2="#ffffe1"/><v:shadow on="t" color="black" obscured="t"/><v:path o:connecttype="none"/><v:textbox style="mso-direction-alt:auto"/>' +
    `<x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/><x:Anchor>${anchor}</x:Anchor><x:AutoFill>False</x:AutoFill>` +
    `<x:Row>${row}</x:Row><x:Column>${column}</x:Column></x:ClientData></v:shape>`
  );
}

/** The drawing with a hidden box for every note, shown when the pointer rests on its cell. */
export function withShapes(drawing: string, notes: readonly Note[]): string {
  const end = drawing.lastIndexOf("</xml>");
  const shapes = notes.map((note, index) => shape(note, index + 1)).join("");
  const names =
    'xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"';
  const named = (text: string) =>
    text.replace("<v:shapetype ", `<v:shapetype ${names} `).replaceAll("<v:shape ", `<v:shape ${names} `);
  const isOurs = drawing === EMPTY_DRAWING;
  const added = SHAPE_TYPE + shapes;
  return drawing.slice(0, end) + (isOurs ? added : named(added)) + drawing.slice(end);
}
