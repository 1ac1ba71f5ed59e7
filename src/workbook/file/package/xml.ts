import { SaxesParser } from "saxes";
import { FileRefusal } from "./file-refusal";

/** An element's tag and where it stands in the text of its part, counted in characters. */
export interface OpenTag {
  /** Name without its prefix. */
  readonly name: string;
  readonly prefix: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly start: number;
  readonly end: number;
  readonly isEmpty: boolean;
}

export interface Visitor {
  open?(tag: OpenTag): void;
  /** `start` and `end` of the closing tag; for an empty element both stand at its end. */
  close?(name: string, start: number, end: number): void;
  /** Text between tags, entities resolved. */
  text?(text: string): void;
}

const local = (name: string) => name.slice(name.indexOf(":") + 1);
const prefixOf = (name: string) => name.slice(0, name.indexOf(":") + 1);

function parserFor(xml: string, visitor: Visitor): SaxesParser {
  const parser = new SaxesParser({ position: true });
  let emptyEnd = -1;
  parser.on("opentag", (tag) => {
    const end = parser.position;
    if (tag.isSelfClosing) emptyEnd = end;
    visitor.open?.({
      name: local(tag.name),
      prefix: prefixOf(tag.name),
      attributes: tag.attributes as Record<string, string>,
      // A "<" cannot stand inside a tag, so the last one before its end is where it begins.
      start: xml.lastIndexOf("<", end - 1),
      end,
      isEmpty: tag.isSelfClosing,
    });
  });
  parser.on("closetag", (tag) => {
    const end = parser.position;
    visitor.close?.(local(tag.name), end === emptyEnd ? end : xml.lastIndexOf("<", end - 1), end);
  });
  const onText = (text: string) => visitor.text?.(text);
  parser.on("text", onText);
  parser.on("cdata", onText);
  return parser;
}

/**
 * Walks through the XML of a part.
 *
 * @throws FileRefusal where it is not well-formed, or defines entities of its own.
 */
export function walkXml(part: string, xml: string, visitor: Visitor): void {
  const parser = parserFor(xml, visitor);
  const refuse = (why: string) => new FileRefusal(`Part ${part} of the file cannot be read: ${why}`);
  parser.on("doctype", () => {
    throw refuse("it defines entities of its own, which no spreadsheet program writes.");
  });
  parser.on("error", (problem) => {
    throw refuse(problem.message);
  });
  parser.write(xml).close();
}

/** Text as it stands between tags or in a double-quoted attribute. */
export function escapeXml(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}

const ATTRIBUTE = /\s+([^\s=]+)\s*=\s*(?:"[^"]*"|'[^']*')/g;

/**
 * Sets or removes an attribute of an opening tag, every other character of it kept.
 *
 * @param tag - Text of a well-formed opening tag, `<` to `>`.
 */
export function withAttribute(tag: string, name: string, value: string | undefined): string {
  const found = [...tag.matchAll(ATTRIBUTE)].find(([, written]) => written === name);
  const written = value === undefined ? "" : ` ${name}="${escapeXml(value)}"`;
  if (found) return tag.slice(0, found.index) + written + tag.slice(found.index + found[0].length);
  const end = tag.endsWith("/>") ? tag.length - 2 : tag.length - 1;
  return tag.slice(0, end).trimEnd() + written + tag.slice(end);
}
