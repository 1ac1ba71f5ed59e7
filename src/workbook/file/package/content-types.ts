import { applyEdits } from "./edits";
import type { Package } from "./package";
import { escapeXml, walkXml } from "./xml";

const PART = "[Content_Types].xml";

interface Override {
  readonly part: string;
  readonly type: string;
  readonly start: number;
  readonly end: number;
}

function overrides(file: Package): Override[] {
  const found: Override[] = [];
  walkXml(PART, file.text(PART), {
    open({ name, attributes, start, end }) {
      if (name !== "Override") return;
      found.push({
        part: (attributes.PartName ?? "").slice(1),
        type: attributes.ContentType ?? "",
        start,
        end,
      });
    },
  });
  return found;
}

/** The declared type of a part; `undefined` where none stands by its name. */
export function contentTypeOf(file: Package, part: string): string | undefined {
  return overrides(file).find((entry) => entry.part.toLowerCase() === part.toLowerCase())?.type;
}

/** Removes parts together with the entries that declare their types. */
export function removeParts(file: Package, parts: readonly string[]): void {
  const gone = new Set(parts.map((part) => part.toLowerCase()));
  const edits = overrides(file)
    .filter(({ part }) => gone.has(part.toLowerCase()))
    .map(({ start, end }) => ({ start, end, text: "" }));
  if (edits.length > 0) file.setText(PART, applyEdits(file.text(PART), edits));
  for (const part of parts) if (file.has(part)) file.remove(part);
}

/** Declares the type of a part that was added. */
export function declarePart(file: Package, part: string, type: string): void {
  const text = file.text(PART);
  const end = text.lastIndexOf("</");
  const prefix = /^<\/(\w+:)?/.exec(text.slice(end))?.[1] ?? "";
  const entry = `<${prefix}Override PartName="/${escapeXml(part)}" ContentType="${type}"/>`;
  file.setText(PART, text.slice(0, end) + entry + text.slice(end));
}
