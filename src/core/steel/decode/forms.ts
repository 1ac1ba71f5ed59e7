import table from "../../../data/steel/decode-forms.json";
import { oneOf, records, text } from "../../table";
import { SYSTEMS, type System } from "../steel";
import { type Cut, readContents } from "./contents";
import { content, type Part } from "./part";
import { spelledFor } from "./spelling";

/** What a name came to by the rules of one system. */
export interface Reading {
  readonly system: System;
  /** Carbon first; empty where the name states no content. */
  readonly parts: readonly Part[];
  /** Why the name states nothing; empty where it states something. */
  readonly silence: string;
  /** Two digits of an EN number, first two of an SAE one. */
  readonly group: string;
}

const FORMS = records(table, {
  system: oneOf(SYSTEMS),
  pattern: (cell) => new RegExp(text(cell)),
  carbon: text,
  contents: text,
  standard: (cell) => (cell === "" ? null : new RegExp(text(cell))),
  words: text,
});

type Form = (typeof FORMS)[number];

const DIVISORS: Readonly<Record<string, number>> = { hundredths: 100, tenths: 10, thousandths: 1000 };

type CarbonReader = (digits: string, words: string) => Part;

const CARBON: Readonly<Record<string, CarbonReader>> = {
  suffix: (digits, words) => {
    const low = Number(digits) / 10;
    const span = `${low.toFixed(2)} to ${(low + 0.1).toFixed(2)} %`;
    return { element: "C", content: content(low + 0.05), says: `"${digits}": ${words}, ${span}` };
  },
  "about 1": (_, words) => ({ element: "C", content: 1, says: words, isAbout: true }),
  "not stated": (_, words) => ({ element: "C", content: null, says: words }),
  "at most": (_, words) => ({ element: "C", content: null, says: words }),
};

function carbonPart({ carbon, words }: Form, digits: string): Part {
  const divisor = DIVISORS[carbon];
  if (divisor !== undefined)
    return { element: "C", content: content(Number(digits) / divisor), says: `"${digits}": ${words}` };
  const reader = CARBON[carbon];
  if (reader === undefined) throw new Error(`no reading of carbon ${carbon}`);
  return reader(digits, words);
}

function read(form: Form, cut: Cut): Reading | undefined {
  const { system, carbon, contents, words } = form;
  const group = cut.n ?? "";
  if (carbon === "nothing") return { system, parts: [], silence: words, group };
  const alloy = readContents(contents, cut, system);
  if (alloy === undefined) return undefined;
  return { system, parts: [carbonPart(form, cut.c ?? ""), ...alloy], silence: "", group };
}

/**
 * Reads a name by the rules of one system.
 *
 * @param name - Designation without the name of its system.
 * @param system - The system.
 * @param standard - Its standard where that is known: GOST 5950 writes tenths where others write hundredths.
 * @returns The reading, or undefined where no form of the system fits.
 */
export function readName(name: string, system: System, standard = ""): Reading | undefined {
  const spelled = spelledFor(system, name);
  for (const form of FORMS) {
    if (form.system !== system || (form.standard !== null && !form.standard.test(standard))) continue;
    const cut = form.pattern.exec(spelled);
    const reading = cut === null ? undefined : read(form, cut.groups ?? {});
    if (reading !== undefined) return reading;
  }
  return undefined;
}
