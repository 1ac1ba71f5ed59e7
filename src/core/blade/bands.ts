import bands from "../../data/blade/bands.json";
import { betweenText, quantityText } from "../quantity-text";
import { EVIDENCE_KINDS, type Evidence, type Relation } from "../relation";
import { type SourceKey, sourceText } from "../sources";
import { flag, listOf, number, oneOf, orNull, records, sourceKey, text } from "../table";
import { type Worded, wordFinder } from "../word-list";

const USE_GROUPS = ["kitchen", "field", "tool", "chopper", "sword"] as const;

export type UseGroup = (typeof USE_GROUPS)[number];

const SERVICES = ["impact", "light", "none"] as const;

/** How hard the blade is struck in use. */
export type Service = (typeof SERVICES)[number];

/** What is usual for one use of a blade. Hardness in HRC, angles in degrees a side, lengths in mm. */
export interface Use extends Worded {
  /** Lower end of the usual band [HRC]. */
  readonly low: number;
  /** Upper end of the usual band [HRC]. */
  readonly high: number;
  /** Target to start from, within the band [HRC]. */
  readonly aim: number;
  /** Smallest usual edge angle, a side [°]; `null` where none is told. */
  readonly angleLow: number | null;
  /** Largest usual edge angle, a side [°]; `null` where none is told. */
  readonly angleHigh: number | null;
  /** Least thickness behind the edge, before the final edge is put on [mm]; `null` where none is told. */
  readonly behindEdgeLow: number | null;
  /** Most thickness behind the edge, before the final edge is put on [mm]; `null` where none is told. */
  readonly behindEdgeHigh: number | null;
  /** Part of the blade that the hardness holds for: `edge`, `whole` or `bit`. */
  readonly part: string;
  readonly group: UseGroup;
  /** Blows that it takes in use. */
  readonly service: Service;
  /** A long blade by its nature, whatever length is given. */
  readonly isLong: boolean;
  /** Highest hardness for hard targets [HRC]; `null` where no such rule is told. */
  readonly ceiling: number | null;
  /** How the band came to be: a standard, measured, fitted, compiled or common practice. */
  readonly evidence: Evidence;
  readonly sources: readonly SourceKey[];
  /** Steels that are usual for it, in words. */
  readonly steels: string;
  /** What goes with the band, in words. */
  readonly note: string;
  /** Where sources differ, in words; empty where none were found to. */
  readonly disagreement: string;
}

/** Every use with its usual band. */
export const USES: readonly Use[] = records(bands, {
  word: text,
  aliases: listOf(text),
  low: number,
  high: number,
  aim: number,
  angleLow: orNull(number),
  angleHigh: orNull(number),
  behindEdgeLow: orNull(number),
  behindEdgeHigh: orNull(number),
  part: text,
  group: oneOf(USE_GROUPS),
  service: oneOf(SERVICES),
  isLong: flag,
  ceiling: orNull(number),
  evidence: oneOf(EVIDENCE_KINDS),
  sources: listOf(sourceKey),
  steels: text,
  note: text,
  disagreement: text,
});

/**
 * Finds a use by its name or the beginnings of its words.
 *
 * @throws NotAvailable naming the uses that fit ("sword" fits several) or the nearest ones.
 */
export const findUse = wordFinder(USES, {
  noun: "use",
  listedBy: "USES()",
  fillers: ["knife", "knives", "blade", "blades"],
});

/** Names of uses that hold a text, or all of them. Nothing is refused. */
export function usesContaining(text: string): string[] {
  const wanted = text.trim().toLowerCase();
  const names = ({ word, aliases, group }: Use) => [word, ...aliases, group].join(" ").toLowerCase();
  return USES.filter((use) => names(use).includes(wanted)).map(({ word }) => word);
}

/** Where the band comes from and where its sources differ, on one line. */
export function basisText(use: Use): string {
  const { disagreement } = use;
  return disagreement === "" ? citedText(use) : `${citedText(use)}. ${disagreement}`;
}

function citedText({ evidence, sources }: Use): string {
  const cited = sources.filter((key) => key !== "common").map(sourceText);
  if (evidence === "common practice") {
    return cited.length === 0
      ? sourceText("common")
      : `${sourceText("common")}; see also ${cited.join("; ")}`;
  }
  return `${evidence}: ${cited.join("; ")}`;
}

/** Swords of this hardness and more are tempered inside the embrittlement range of spring steel. */
const SWORD_LEAN_FROM = 50;

/** Which end of the band to take when in doubt, and why. */
export function leanText({ group, part, low }: Use): string {
  const mend = "a bent edge can be mended, a chip must be ground out";
  if (group !== "sword" || part !== "whole" || low < SWORD_LEAN_FROM) return `low end: ${mend}`;
  return (
    `low end, ${low} to ${quantityText(low + 2, "HRC")}: harder spring-steel swords are tempered ` +
    `${betweenText(230, 370, "°C")}, where such steel is less tough; and ${mend}`
  );
}

/** The band of a use as a relation, for the record of evidence. */
export function bandRelation(use: Use): Relation {
  const others = use.sources.slice(1).map(sourceText);
  const notes = [use.note, use.disagreement, others.length > 0 ? `Also: ${others.join("; ")}.` : ""];
  return {
    title: `Usual hardness, edge angle and thickness: ${use.word}`,
    source: use.sources[0] ?? "common",
    locator: `row "${use.word}" of the table of uses`,
    evidence: use.evidence,
    inputs: {},
    output: { label: "hardness", unit: "HRC" },
    error: { size: null, unit: "HRC", kind: "not known; sources for one use differ by 5 to 10 HRC" },
    note: notes.filter((part) => part !== "").join(" "),
  };
}
