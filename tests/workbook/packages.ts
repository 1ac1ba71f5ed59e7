import { createHash } from "node:crypto";
import { strToU8, unzipSync, zipSync } from "fflate";
import { partsOf } from "./hand-made";

/** A file with the text of one part replaced, written with a zip library and nothing of ours. */
export function withPart(file: Uint8Array, name: string, change: (text: string) => string): Uint8Array {
  const parts = unzipSync(file);
  const before = partsOf(file)[name];
  if (before === undefined) throw new Error(`no part ${name}`);
  const after = change(before);
  if (after === before) throw new Error(`nothing changed in ${name}`);
  return zipSync({ ...parts, [name]: strToU8(after) });
}

const folderOf = (part: string) => part.slice(0, part.lastIndexOf("/") + 1);
const ownerOf = (links: string) => links.replace(/_rels\/([^/]*)\.rels$/, "$1");

function faultsOfTypes(parts: Readonly<Record<string, string>>): string[] {
  const names = Object.keys(parts);
  const types = parts["[Content_Types].xml"] ?? "";
  const declared = [...types.matchAll(/<Override[^>]*PartName="\/([^"]*)"/g)].map(([, part]) => part ?? "");
  const endings = [...types.matchAll(/<Default[^>]*Extension="([^"]*)"/g)].map(([, ending]) => ending);
  const isTyped = (name: string) =>
    declared.includes(name) || endings.includes(name.slice(name.lastIndexOf(".") + 1));
  return [
    ...declared.filter((part) => !names.includes(part)).map((part) => `type of no part: ${part}`),
    ...names
      .filter((name) => name !== "[Content_Types].xml" && !isTyped(name))
      .map((name) => `no type: ${name}`),
  ];
}

interface Link {
  readonly id: string;
  readonly target: string;
  readonly isOutside: boolean;
}

function linksIn(text: string): Link[] {
  return [...text.matchAll(/<Relationship\s[^>]*>/g)].map(([link]) => {
    const valueIn = (key: string) => new RegExp(`\\s${key}="([^"]*)"`).exec(link)?.[1] ?? "";
    return {
      id: valueIn("Id"),
      target: valueIn("Target"),
      isOutside: link.includes('TargetMode="External"'),
    };
  });
}

function faultsOfLinks(name: string, text: string, names: readonly string[]): string[] {
  const links = linksIn(text);
  const base = `file:///${folderOf(ownerOf(name))}`;
  const isBroken = ({ target, isOutside }: Link) =>
    !isOutside && !names.includes(new URL(target, base).pathname.slice(1));
  return [
    ...links.filter(isBroken).map(({ target }) => `link to nothing: ${name} ${target}`),
    ...(new Set(links.map(({ id }) => id)).size === links.length ? [] : [`two links of one id: ${name}`]),
  ];
}

/**
 * What is wrong with a package by the rules of ECMA-376 Part 2 (7.2 and 6.5): a type without its part, a part
 * without a type, a link to nothing, two links of one id.
 */
export function faultsOf(file: Uint8Array): string[] {
  const parts = partsOf(file);
  const lists = Object.entries(parts).filter(([name]) => name.endsWith(".rels"));
  return [
    ...faultsOfTypes(parts),
    ...lists.flatMap(([name, text]) => faultsOfLinks(name, text, Object.keys(parts))),
  ];
}

/** Name of the part that holds the sheet Provenance of a copy. */
export function provenancePart(bytes: Uint8Array): string {
  const found = Object.entries(partsOf(bytes)).find(
    ([name, xml]) => /worksheets\//.test(name) && xml.includes("Sheets left out"),
  );
  return found?.[0] ?? "";
}

/** Sheet, cell, kind and content of the cells of Provenance, those of the digest left out, read by a pattern alone. */
export function provenanceLinesOf(bytes: Uint8Array): string[][] {
  const xml = partsOf(bytes)[provenancePart(bytes)] ?? "";
  const cells = [
    ...xml.matchAll(/<c r="([A-Z]+)(\d+)"[^>]*>(?:<is><t[^>]*>([^<]*)<\/t><\/is>|<v>([^<]*)<\/v>)<\/c>/g),
  ];
  const isSeal = (words = "") => words.startsWith("SHA-256") || words.startsWith("Signature");
  const seals = cells
    .filter(([, column, , words]) => column === "A" && isSeal(words))
    .map(([, , row]) => row);
  return cells
    .filter(([, , row]) => !seals.includes(row))
    .map(([, column, row, words, figure]) => {
      const cell = `${column}${row}`;
      return words === undefined
        ? ["Provenance", cell, "number", figure ?? ""]
        : [
            "Provenance",
            cell,
            "string",
            words
              .replaceAll("&lt;", "<")
              .replaceAll("&gt;", ">")
              .replaceAll("&quot;", '"')
              .replaceAll("&amp;", "&"),
          ];
    });
}

/** SHA-256 of a copy with such cells, reckoned by a pattern alone: one line of JSON a cell, Provenance's own after them. */
export function digestBy(bytes: Uint8Array, cells: readonly (readonly string[])[]): string {
  const lines = [...cells, ...provenanceLinesOf(bytes)].map((line) => JSON.stringify(line));
  return createHash("sha256").update(lines.join("\n")).digest("hex");
}

/** A copy with the SHA-256 that fits what it says now. */
export function resealed(bytes: Uint8Array, cells: readonly (readonly string[])[]): Uint8Array {
  return withPart(bytes, provenancePart(bytes), (xml) => xml.replace(/[0-9a-f]{64}/, digestBy(bytes, cells)));
}
