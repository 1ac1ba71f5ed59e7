import { readdirSync, readFileSync } from "node:fs";
import { strToU8, zipSync } from "fflate";
import { FileRefusal } from "../../src/workbook/file/package/file-refusal";
import { readWorkbook } from "../../src/workbook/file/read/read-workbook";
import { randomFrom } from "../stock/brute-force";
import { partsOf } from "../workbook/hand-made";

type Parts = Record<string, string>;
type Random = () => number;

const FOLDER = new URL("../workbook/files/", `file://${process.cwd()}/tests/robustness/`);
const SAMPLES = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".xlsx"))
  .sort()
  .map((name) => partsOf(new Uint8Array(readFileSync(new URL(name, FOLDER)))));

const oneOf = <T>(list: readonly T[], random: Random) => list[Math.floor(random() * list.length)] as T;

/** Values that no program writes in their place. */
const ODD = [
  "",
  "-1",
  "0",
  "1e9",
  "999999999",
  "A0",
  "XFE1",
  "A1:A",
  "rId999",
  "\u0000".trim(),
  "true",
  "é",
  "../x",
];

const matches = (text: string, pattern: RegExp) => [...text.matchAll(pattern)];

function without(text: string, at: RegExpMatchArray, instead = ""): string {
  const start = at.index ?? 0;
  return text.slice(0, start) + instead + text.slice(start + at[0].length);
}

/** Changes of structure: each leaves text that looks like XML. */
const CHANGES: readonly ((text: string, random: Random) => string)[] = [
  (text, random) => oneElement(text, random, (element) => element + element),
  (text, random) => oneElement(text, random, () => ""),
  (text, random) => {
    const attribute = oneOf(matches(text, /\s[\w:]+="[^"]*"/g), random);
    return attribute === undefined ? text : without(text, attribute);
  },
  (text, random) => {
    const value = oneOf(matches(text, /="[^"]*"/g), random);
    return value === undefined ? text : without(text, value, `="${oneOf(ODD, random)}"`);
  },
  (text, random) => {
    const content = oneOf(matches(text, />[^<]+</g), random);
    return content === undefined ? text : without(text, content, `>${oneOf(ODD, random)}<`);
  },
  (text, random) => {
    const name = oneOf(matches(text, /<\w+/g), random)?.[0].slice(1);
    return name === undefined ? text : text.replaceAll(`<${name}`, "<odd").replaceAll(`</${name}>`, "</odd>");
  },
];

function oneElement(text: string, random: Random, change: (element: string) => string): string {
  const found = oneOf(matches(text, /<(\w+)[^>]*\/>|<(\w+)[^>]*>[^<]*<\/\2>/g), random);
  return found === undefined ? text : without(text, found, change(found[0]));
}

function mutated(seed: number): Uint8Array {
  const random = randomFrom(seed);
  const parts: Parts = { ...oneOf(SAMPLES, random) };
  const names = Object.keys(parts).filter((name) => /\.(?:xml|rels)$/.test(name));
  for (let change = 0; change <= seed % 4; change += 1) {
    const name = oneOf(names, random);
    if (random() < 0.05) delete parts[name];
    else parts[name] = oneOf(CHANGES, random)(parts[name] ?? "", random);
  }
  return zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])));
}

export type Outcome = "opened" | "refused" | `fault: ${string}`;

/** Opens one file of damaged structure: it is a workbook or a sentence, never a fault. */
export async function openMutated(seed: number): Promise<Outcome> {
  try {
    await readWorkbook(mutated(seed));
    return "opened";
  } catch (thrown) {
    if (thrown instanceof FileRefusal || (thrown as Error).name === "BudgetEnd") return "refused";
    return `fault: ${(thrown as Error).stack?.split("\n").slice(0, 3).join(" ")}`;
  }
}
