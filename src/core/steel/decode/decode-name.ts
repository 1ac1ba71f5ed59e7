import { NotAvailable } from "../../refusal";
import { nearestDesignations } from "../name-suggestions";
import { gradesNamed } from "../names";
import { bareName } from "../nominal-carbon";
import { tidy } from "../normalize-name";
import { splitPrefix } from "../prefix";
import { isCyrillic } from "../script";
import { type Grade, SYSTEMS, type System } from "../steel";
import { type Reading, readName } from "./forms";
import { groupFamily } from "./groups";
import type { Part } from "./part";

/** A name read by the rule of its system alone. */
export interface Decoded {
  /** As read: the designation where another name of a grade was given. */
  readonly name: string;
  /** Whose rule reads the name. */
  readonly system: System;
  /** Carbon first. */
  readonly parts: readonly Part[];
  /** The grade of the table with this name, whose limits go before anything decoded. */
  readonly grade: Grade | null;
}

const STANDARD_IN_FRONT = /^(\d{3,5}(?:-\d{2,4})?)\s+(?=\S)/;

interface Asked {
  readonly name: string;
  readonly systems: readonly System[];
  readonly standard: string;
}

/** Latin letters in front are read as Cyrillic only in the usual transliterations: SK8 is not СК8. */
function mayBeGost(tidied: string): boolean {
  return isCyrillic(tidied) || /^(?:\d|KH|SHKH|[UYR]\d)/.test(tidied);
}

/** Takes "GOST 5950 13Х" apart. */
function asked(given: string): Asked {
  const tidied = tidy(given);
  const prefixed = splitPrefix(tidied);
  const rest = prefixed?.rest ?? tidied;
  const standard = prefixed === undefined ? "" : (STANDARD_IN_FRONT.exec(rest)?.[1] ?? "");
  const folded = standard === "" ? rest : rest.replace(STANDARD_IN_FRONT, "");
  const systems = prefixed?.systems ?? SYSTEMS.filter((system) => system !== "GOST" || mayBeGost(folded));
  return { name: given.normalize("NFKC").trim().slice(-folded.length), systems, standard };
}

function signature({ parts }: Reading): string {
  return parts.map(({ element, content }) => `${element} ${content ?? "?"}`).join(" ");
}

interface Candidate {
  readonly reading: Reading;
  readonly name: string;
  readonly grade: Grade | null;
}

/** Table first: the system, standard and designation of the grades that bear the name. */
function ofGrades(grades: readonly Grade[]): Candidate[] {
  return grades.flatMap((grade) => {
    const name = bareName(grade);
    const reading = readName(name, grade.system, grade.standard);
    return reading === undefined ? [] : [{ reading, name, grade }];
  });
}

function ofRules({ name, systems, standard }: Asked): Candidate[] {
  return systems.flatMap((system) => {
    const reading = readName(name, system, standard);
    return reading === undefined ? [] : [{ reading, name, grade: null }];
  });
}

function shortName(system: System): string {
  return system.startsWith("AISI") ? "AISI" : system.replace("SAE/AISI", "SAE");
}

function refuseTwoReadings(given: string, candidates: readonly Candidate[]): never {
  const each = candidates.map(({ name, reading }) => {
    const says = reading.silence === "" ? signature(reading).replace(/ \?/g, "") : "no content in the name";
    return `"${shortName(reading.system)} ${name}" (${says})`;
  });
  throw new NotAvailable(`"${given}" reads differently in two systems: write ${each.join(" or ")}`);
}

function refuseSilent(given: string, { name, reading, grade }: Candidate): never {
  const { silence, group } = reading;
  const family = groupFamily(group);
  const which = family === "" || reading.system !== "EN" ? "" : `, here ${family}`;
  const as = tidy(given) === tidy(name) ? `"${given}"` : `"${given}" is ${name}, which`;
  const instead = grade === null ? "" : "; its limits are in the grade table (COMPOSITION)";
  throw new NotAvailable(`${as} states no content: ${silence}${which}${instead}`);
}

function refuseUnknown(given: string): never {
  const near = nearestDesignations(given);
  const hint = near.length === 0 ? "" : `; designations spelt alike: ${near.join(", ")}`;
  throw new NotAvailable(`"${given}" follows no naming rule of ${SYSTEMS.join(", ")}${hint}`);
}

/** An EN number names a grade, yet says nothing itself. */
function asNumber(given: string): Candidate | undefined {
  const reading = readName(given.replace(/^.*?(?=1[.,]\d)/, ""), "EN");
  return reading?.silence.startsWith("the number") ? { reading, name: given, grade: null } : undefined;
}

function candidatesFor(given: string): Candidate[] {
  const number = asNumber(given);
  if (number !== undefined) return [number];
  const wanted = asked(given);
  const grades = gradesNamed(wanted.standard === "" ? given : wanted.name);
  const known = grades.filter(({ system }) => wanted.systems.includes(system));
  const candidates = ofGrades(known);
  return candidates.length > 0 ? candidates : ofRules(wanted);
}

/**
 * Reads a designation by the rule of its system.
 *
 * @param given - A designation, with or without the name of its system or standard in front.
 * @returns Carbon and alloy as the name states them; nominal figures, not limits.
 * @throws NotAvailable where the name states no content, follows no rule, or reads differently in two systems.
 */
export function decodeName(given: string): Decoded {
  const candidates = candidatesFor(given.trim());
  const [first, ...others] = candidates;
  if (first === undefined) refuseUnknown(given);
  const told = candidates.filter(({ reading }) => reading.silence === "");
  const isSplit = others.some(({ reading }) => signature(reading) !== signature(first.reading));
  if (isSplit && (first.grade !== null || told.length > 1)) refuseTwoReadings(given, candidates);
  const chosen = told[0] ?? first;
  if (chosen.reading.silence !== "") refuseSilent(given, chosen);
  const { name, grade, reading } = chosen;
  return { name, system: reading.system, parts: reading.parts, grade };
}
