import steelByUse from "../../data/blade/steel-by-use.json";
import { softBySteel } from "../hardening/hardens";
import { asSentence, numberText, quantityText } from "../quantity-text";
import { attempt, Refusal } from "../refusal";
import { relation } from "../relation";
import { carbonOf } from "../steel/carbon";
import type { Steel } from "../steel/steel";
import { oneOf, records, text } from "../table";
import type { Use, UseGroup } from "./bands";
import { type Caution, caution } from "./caution";
import { isStainless, STEEL_KINDS, type SteelKind, steelKind } from "./steel-kind";

export const STEEL_BY_USE = relation({
  title: "Which steel suits which kind of blade",
  source: "steel-by-use",
  locator: "table of steel by use",
  evidence: "common practice",
  inputs: {},
  output: { label: "suitability", unit: "" },
  error: {
    size: null,
    unit: "",
    kind: "a rule of thumb; the maker's heat treatment matters more than the name",
  },
});

/** From this length a struck blade counts as long, mm. */
const LONG_MM = 400;
/** Under this carbon an edge does not last, mass %. */
const EDGE_CARBON = 0.5;
/** With this much chromium, carbon alone no longer tells how hard a steel gets, mass %. */
const ALLOY_HARDENED = 3;

const verdict = oneOf([
  "best",
  "good",
  "yes",
  "fair",
  "low end",
  "caution",
  "edge only",
  "differential only",
  "no",
]);

const suitability = records(steelByUse, {
  kind: oneOf(STEEL_KINDS),
  saidAs: text,
  sword: verdict,
  chopper: verdict,
  field: verdict,
  kitchen: verdict,
  edgeTool: verdict,
  spring: verdict,
});
const TABLE = new Map(suitability.map((row) => [row.kind, row]));
const BLADE_WORD: Readonly<Record<UseGroup, string>> = {
  kitchen: "kitchen knives",
  field: "field knives",
  tool: "such tools",
  chopper: "choppers and axes",
  sword: "swords",
};
const DEEP: readonly SteelKind[] = [
  "spring steel",
  "0.7-0.85 % C low alloy",
  "low-alloy high carbon",
  "cold work",
  "stainless",
  "high alloy",
  "shock resisting",
  "hot work",
];

/** A use, a steel and the length where it is known. */
export interface SteelQuestion {
  readonly use: Use;
  readonly steel: Steel;
  /** mm */
  readonly length?: number | undefined;
}

const percent = (carbon: number) => quantityText(carbon, "% C");

function isLongImpact({ use, length }: SteelQuestion): boolean {
  return use.service === "impact" && (use.isLong || (length !== undefined && length > LONG_MM));
}

function stainlessCaution(question: SteelQuestion): Caution[] {
  const { steel, use } = question;
  if (!isStainless(steel) || !isLongImpact(question)) return [];
  const name = `${steel.name}, ${numberText(steel.composition.Cr)} % Cr`;
  return [
    caution(
      "danger",
      "stainless breaks in a long blade that is struck",
      `Stainless hardened through (${name}) is a poor choice for a long blade that is struck: ` +
        `it needs a controlled kiln and breaks sooner than a spring steel${use.group === "sword" ? "; keep it for display" : ""}.`,
    ),
  ];
}

function carbonCaution({ use, steel }: SteelQuestion): Caution[] {
  // What does not harden at all is told by the hardening itself.
  if (softBySteel(steel) !== "" || steel.composition.Cr >= ALLOY_HARDENED) return [];
  const carbon = carbonOf(steel);
  if (carbon >= EDGE_CARBON) return [];
  return use.service === "impact"
    ? [
        caution(
          "note",
          `${percent(carbon)}: tough, the edge does not last`,
          `${percent(carbon)} is the low end for blades that are struck: tough, but the edge does not last.`,
        ),
      ]
    : [
        caution(
          "spoils the blade",
          `${percent(carbon)} is too little for a lasting edge`,
          `${percent(carbon)} is too little carbon for a lasting edge: choose 0.60 % C or more.`,
        ),
      ];
}

function throughHardened({ use, steel }: SteelQuestion, kind: SteelKind): Caution[] {
  if (kind !== "plain high carbon" || use.service !== "impact" || use.part !== "whole") return [];
  return [
    caution(
      "danger",
      "plain high carbon through-hardened is brittle under blows",
      `Plain high-carbon steel (${steel.name}, ${percent(carbonOf(steel))}) hardened through is brittle under blows: ` +
        "harden the edge only, or take a spring steel.",
    ),
  ];
}

function differential({ use, steel }: SteelQuestion, kind: SteelKind): Caution[] {
  const wantsSoftBody = use.group === "sword" && use.part === "edge";
  if (!wantsSoftBody || !DEEP.includes(kind)) return [];
  return [
    caution(
      "spoils the blade",
      "hardens deep: clay will not leave the body soft",
      `${steel.name} hardens deep: clay will not leave the body soft. Take a plain steel low in manganese.`,
    ),
  ];
}

function bySuitability({ use, steel }: SteelQuestion, kind: SteelKind): Caution[] {
  const row = TABLE.get(kind);
  const suits = BLADE_WORD[use.group];
  if (row === undefined || use.group === "tool") return [];
  const verdict = row[use.group];
  const name = `${steel.name} (${row.saidAs})`;
  if (verdict === "no") {
    const rank = use.service === "impact" ? "danger" : "note";
    return [
      caution(rank, `not the trade's steel for ${suits}`, `${name} is not the trade's choice for ${suits}.`),
    ];
  }
  if (verdict === "caution") {
    const full = `${name} chips sooner than tougher steels in ${suits}.`;
    return [caution("spoils the blade", "chips sooner than tougher steels", full)];
  }
  if (verdict !== "low end") return [];
  return [
    caution(
      "note",
      "keep to the low end of the band",
      `${steel.name} suits ${suits} at the low end of the band.`,
    ),
  ];
}

function byKind(question: SteelQuestion): Caution[] {
  const kind = steelKind(question.steel);
  const long = stainlessCaution(question);
  const suits = long.length > 0 ? long : bySuitability(question, kind);
  return [...suits, ...throughHardened(question, kind), ...differential(question, kind)];
}

/**
 * What the trade would say about a steel for a use; none where it has nothing against it.
 * A grade that does not fix its carbon yields the sentence that says so.
 */
export function steelCautions(question: SteelQuestion): Caution[] {
  const found = attempt(() => [...byKind(question), ...carbonCaution(question)]);
  if (!(found instanceof Refusal)) return found;
  return [...stainlessCaution(question), caution("note", "carbon not known", asSentence(found.message))];
}
