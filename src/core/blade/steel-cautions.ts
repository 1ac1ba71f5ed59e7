import { softBySteel } from "../hardening/hardens";
import { asSentence, numberText, quantityText } from "../quantity-text";
import { attempt, Refusal } from "../refusal";
import { carbonOf } from "../steel/carbon";
import type { Use, UseGroup } from "./bands";
import { type Caution, caution } from "./caution";
import { isStainless, type SteelKind, steelKind } from "./steel-kind";
import {
  hardensDeep,
  isLongImpact,
  keepsToLowEnd,
  lacksCarbon,
  type SteelQuestion,
  saidAs,
  suitability,
  wantsSoftBody,
} from "./suitability";

const BLADE_WORD: Readonly<Record<UseGroup, string>> = {
  kitchen: "kitchen knives",
  field: "field knives",
  tool: "such tools",
  chopper: "choppers and axes",
  sword: "swords",
};
const percent = (carbon: number) => quantityText(carbon, "% C");

/** The trade's own steels for a use, as something to do. */
function insteadOf({ steels }: Use): string {
  return `Take one of the trade's steels for it: ${steels}.`;
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
      insteadOf(use),
    ),
  ];
}

function carbonCaution({ use, steel }: SteelQuestion): Caution[] {
  // What does not harden at all is told by the hardening itself.
  if (softBySteel(steel) !== "" || !lacksCarbon(steel)) return [];
  const carbon = carbonOf(steel);
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
          "Take a steel of 0.60 % C or more for a lasting edge.",
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
      "Harden the edge only, or take a spring steel.",
    ),
  ];
}

function differential({ use, steel }: SteelQuestion, kind: SteelKind): Caution[] {
  if (!wantsSoftBody(use) || !hardensDeep(kind)) return [];
  return [
    caution(
      "spoils the blade",
      "hardens deep: clay will not leave the body soft",
      `${steel.name} hardens deep: clay will not leave the body soft. Take a plain steel low in manganese.`,
      "Take a plain steel low in manganese for a hard edge and a soft body.",
    ),
  ];
}

/** Struck blades break of the wrong steel; others only serve worse. */
function barred(use: Use, name: string): Caution {
  const suits = BLADE_WORD[use.group];
  const short = `not the trade's steel for ${suits}`;
  const full = `${name} is not the trade's choice for ${suits}.`;
  return use.service === "impact"
    ? caution("danger", short, full, insteadOf(use))
    : caution("note", short, full);
}

function bySuitability(question: SteelQuestion, kind: SteelKind): Caution[] {
  const { use, steel } = question;
  const suits = BLADE_WORD[use.group];
  const name = `${steel.name} (${saidAs(kind)})`;
  // What bars a plain high-carbon steel from a struck blade, or a deep one from clay, has a caution of its own.
  const isTold =
    kind === "plain high carbon" || (wantsSoftBody(use) && hardensDeep(kind)) || lacksCarbon(steel);
  switch (isTold ? "" : suitability(question, kind)) {
    case "no":
      return [barred(use, name)];
    case "caution": {
      const full = `${name} chips sooner than tougher steels in ${suits}.`;
      return [caution("spoils the blade", "chips sooner than tougher steels", full)];
    }
    default: {
      if (!keepsToLowEnd(question, kind)) return [];
      const full = `${steel.name} suits ${suits} at the low end of the band.`;
      return [caution("note", "keep to the low end of the band", full)];
    }
  }
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
