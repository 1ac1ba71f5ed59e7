import { airHardeningMm } from "../hardening/air-hardening";
import { type CrackRank, crackRisk } from "../hardening/crack-risk";
import { softBySteel } from "../hardening/hardens";
import type { QuenchMedium } from "../hardening/quench-media";
import { attemptOr } from "../refusal";
import type { Steel } from "../steel/steel";
import { type ShopNeed, type Traits, usualQuench } from "../steel/traits";
import type { Use } from "./bands";
import type { Choice, ChoiceQuestion } from "./choice-row";
import { steelKind } from "./steel-kind";
import { saidAs, suitability } from "./suitability";

// What bars a steel from a choice before it is judged: the steel itself, the shop, or the bath that was asked for.

/** How much the quench of the question is to be feared for the steel itself; low where none is given. */
function crackRankIn({ quench }: ChoiceQuestion, steel: Steel): CrackRank {
  return quench === undefined ? "low" : crackRisk(steel, quench).rank;
}

/** The quench that a steel is judged in: that of the question, or air, which every shop has, where that is too harsh for it. */
export function quenchFor(question: ChoiceQuestion, steel: Steel): QuenchMedium | undefined {
  const isAir = airHardeningMm(steel) !== undefined && crackRankIn(question, steel) !== "low";
  return isAir ? usualQuench(steel) : question.quench;
}

/** What the bath of the question does to a steel that is less harshly quenched; empty where nothing. */
export function harshText(question: ChoiceQuestion, steel: Steel): string {
  const { quench } = question;
  if (quench === undefined || crackRankIn(question, steel) === "low") return "";
  const own = quenchFor(question, steel);
  return own === quench
    ? `${quench.word} cracks some blades: start more`
    : `not in ${quench.word}, which may crack it: cool it in ${own?.word}`;
}

/** What bars a steel, the most easily mended first: another shop, another bath, nothing but another steel. */
export const BARS = { none: 0, kiln: 1, bath: 2, band: 3, rust: 4, use: 5, soft: 6 } as const;

export interface Bar {
  readonly why: string;
  readonly step: number;
}

/** Why a steel cannot be whatever the shop has; nothing where it may. */
function barredBySteel(
  { use, length, stainless }: ChoiceQuestion,
  steel: Steel,
  traits: Traits,
): Bar | undefined {
  const soft = softBySteel(steel);
  if (soft !== "") return { why: soft, step: BARS.soft };
  const isBright = traits.rust === "stainless";
  if (stainless === true && !isBright) return { why: notBright(use, traits), step: BARS.rust };
  if (stainless === false && isBright) return { why: "stainless, and none is wanted", step: BARS.rust };
  const kind = attemptOr(undefined, () => steelKind(steel));
  if (kind === undefined) {
    const why = "the grade does not fix its carbon: give the grade with its class, or an analysis";
    return { why, step: BARS.use };
  }
  if (suitability({ use, steel, length }, kind) !== "no") return undefined;
  return { why: `${saidAs(kind)} is not the trade's choice for this use`, step: BARS.use };
}

/** Why the shop cannot harden a steel that would do. */
function barredByShop(question: ChoiceQuestion, steel: Steel, traits: Traits): Bar | undefined {
  if (quenchFor(question, steel) === question.quench && crackRankIn(question, steel) === "high") {
    return { why: `likely to crack in ${question.quench?.word}: quench it in oil`, step: BARS.bath };
  }
  if (question.kiln !== false || !NEEDS_KILN.includes(traits.need)) return undefined;
  return { why: `hardening wants more than a forge: ${traits.needs}`, step: BARS.kiln };
}

const NEEDS_KILN: readonly ShopNeed[] = ["kiln above 900 °C (1652 °F)", "outside heat treater"];

/** Cladding is the honest way to rust-free sides where only the edge cuts. */
function notBright({ service }: Use, { rust, kind }: Traits): string {
  const clad = service === "light" && (kind === "plain high carbon" || kind === "low-alloy high carbon");
  return clad
    ? "not stainless; clad with soft stainless its sides do not rust, its edge still does (CLADDING)"
    : `not stainless: ${rust}`;
}

/** What bars a steel, if anything does. */
export function barOf(question: ChoiceQuestion, steel: Steel, traits: Traits): Bar | undefined {
  return barredBySteel(question, steel, traits) ?? barredByShop(question, steel, traits);
}

/**
 * What to do where nothing that was asked can be, in a sentence; empty where something can.
 *
 * @param choices - As `steelsFor` gives them.
 * @returns A sentence; temperatures in it [°C]
 * Limits: nothing is refused. Error and source: those of `steelsFor`.
 */
export function nothingFits(choices: readonly Choice[]): string {
  const [first] = choices;
  if (first === undefined || first.barred === BARS.none) return "";
  const clad = "or clad a plain edge with stainless, which keeps its sides bright (CLADDING)";
  switch (first.barred) {
    case BARS.kiln: {
      const other = first.traits.rust === "stainless" ? clad : "or take another steel";
      return `Without a kiln above 900 °C (1652 °F) none of these can be hardened: send the blades out, ${other}.`;
    }
    case BARS.bath:
      return "None of these can be hardened in this bath without cracks to be feared: quench in oil.";
    default:
      // Of one steel its own row says it all.
      return choices.length === 1 ? "" : "None of these fits what was asked: each row says why.";
  }
}
