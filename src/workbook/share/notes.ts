import { cellName } from "../../formula/addresses";
import { declareEnding, declarePart } from "../file/package/content-types";
import { applyEdits, type Edit } from "../file/package/edits";
import type { Package } from "../file/package/package";
import { addRelationship, relationshipsOf } from "../file/package/relationships";
import { escapeXml, walkXml } from "../file/package/xml";
import { writeXstring } from "../file/strings";
import type { Note } from "./note";
import { EMPTY_DRAWING, withShapes } from "./note-shapes";
import { freeName } from "./part-names";
import { elementsAt, withNotesDrawing } from "./sheet-elements";

const COMMENTS_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml";
const VML_TYPE = "application/vnd.openxmlformats-officedocument.vmlDrawing";
const EMPTY_NOTES =
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n' +
  '<comments xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><authors><author></author></authors><commentList></commentList></comments>';

interface StoredNotes {
  readonly prefix: string;
  /** Where `</commentList>` begins. */
  readonly listEnd: number;
  /** By cell: where `</text>` of its note begins. */
  readonly textEnds: ReadonlyMap<string, number>;
}

function readNotes(part: string, xml: string): StoredNotes {
  const textEnds = new Map<string, number>();
  let prefix = "";
  let listEnd = -1;
  let cell = "";
  walkXml(part, xml, {
    open(tag) {
      if (tag.name === "comments") prefix = tag.prefix;
      if (tag.name === "comment") cell = tag.attributes.ref ?? "";
    },
    close(name, start) {
      if (name === "text") textEnds.set(cell, start);
      if (name === "commentList") listEnd = start;
    },
  });
  return { prefix, listEnd, textEnds };
}

function run(text: string, prefix: string): string {
  return `<${prefix}r><${prefix}t xml:space="preserve">${escapeXml(writeXstring(text))}</${prefix}t></${prefix}r>`;
}

function withNotes(part: string, xml: string, notes: readonly Note[]): { xml: string; fresh: Note[] } {
  const { prefix, listEnd, textEnds } = readNotes(part, xml);
  const fresh: Note[] = [];
  const edits = notes.map((note): Edit => {
    const name = cellName(note.cell.row, note.cell.column);
    const end = textEnds.get(name);
    if (end !== undefined) return { start: end, end, text: run(`\n${note.text}`, prefix) };
    fresh.push(note);
    const text = `<${prefix}comment ref="${name}" authorId="0"><${prefix}text>${run(note.text, prefix)}</${prefix}text></${prefix}comment>`;
    return { start: listEnd, end: listEnd, text };
  });
  return { xml: applyEdits(xml, edits), fresh };
}

function notesPart(file: Package, sheet: string): string {
  const existing = relationshipsOf(file, sheet).find(({ kind }) => kind === "comments")?.part;
  if (existing !== undefined) return existing;
  const part = freeName(file, "xl/comments", ".xml");
  file.setText(part, EMPTY_NOTES);
  declarePart(file, part, COMMENTS_TYPE);
  addRelationship(file, sheet, "comments", part);
  return part;
}

/** The drawing in which the notes of a sheet are laid out, made and linked where there is none. */
function drawingPart(file: Package, sheet: string): string {
  const xml = file.text(sheet);
  const link = elementsAt(sheet, xml, 1).find(({ name }) => name === "legacyDrawing");
  const id = link && /:id\s*=\s*["']([^"']*)/.exec(xml.slice(link.start, link.tagEnd))?.[1];
  const existing = relationshipsOf(file, sheet).find((entry) => entry.id === id)?.part;
  if (existing !== undefined) return existing;
  const part = freeName(file, "xl/drawings/vmlDrawing", ".vml");
  file.setText(part, EMPTY_DRAWING);
  declareEnding(file, "vml", VML_TYPE);
  file.setText(sheet, withNotesDrawing(sheet, xml, addRelationship(file, sheet, "vmlDrawing", part)));
  return part;
}

/** Lays notes on the cells of a sheet. A cell that has a note already keeps it, with the new text below. */
export function addNotes(file: Package, sheet: string, notes: readonly Note[]): void {
  if (notes.length === 0) return;
  const part = notesPart(file, sheet);
  const { xml, fresh } = withNotes(part, file.text(part), notes);
  file.setText(part, xml);
  if (fresh.length === 0) return;
  const drawing = drawingPart(file, sheet);
  file.setText(drawing, withShapes(file.text(drawing), fresh));
}
