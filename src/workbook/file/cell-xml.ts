import type { CellValue } from "../../engine/cell-value";
import { writtenForm } from "./cell-content";
import { escapeXml } from "./package/xml";
import { writeXstring } from "./strings";

/** What a `<c>` element holds, and the attributes that go with it, written with the prefix of its part. */
export interface CellXml {
  /** With a space in front, or empty. */
  readonly attributes: string;
  readonly xml: string;
}

/** An empty cell: only its style is left. */
export const EMPTY: CellXml = { attributes: "", xml: "" };

/** A constant that was typed; a text stands in its own cell, not in the list that all cells share. */
export function constantXml(content: CellValue, prefix: string): CellXml {
  if ("value" in content && typeof content.value === "string") {
    const text = escapeXml(writeXstring(content.value));
    const xml = `<${prefix}is><${prefix}t xml:space="preserve">${text}</${prefix}t></${prefix}is>`;
    return { attributes: ' t="inlineStr"', xml };
  }
  return resultXml(content, prefix);
}

/** What a formula gave, in a cell of its own or one that it fills. */
export function resultXml(content: CellValue, prefix: string): CellXml {
  const { type, text } = writtenForm(content);
  const attributes = type === undefined ? "" : ` t="${type}"`;
  return { attributes, xml: `<${prefix}v>${escapeXml(text)}</${prefix}v>` };
}
