import { bathOf } from "../../../src/core/hardening/max-section";
import { findQuench } from "../../../src/core/hardening/quench-media";
import { attempt, Refusal } from "../../../src/core/refusal";
import { type Answers, answered, differing, number, type Pair, type Told, table } from "./blade";

/** What may not be told otherwise by two functions that are asked about one blade. */
export interface BladeRule {
  readonly says: string;
  /** The least share of blades of which it can be asked: a rule that is never met would prove nothing. */
  readonly share: number;
  /** "" where it holds, what was told where it does not, nothing where it cannot be asked. */
  readonly holds: (answers: Answers) => string | undefined;
}

const pairsOf = (labels: readonly string[], one: Told, other: Told): readonly Pair[] =>
  labels.map((label) => [label, one[label], other[label]]);

const IN_BOTH = [
  "band status",
  "chance",
  "next step",
  "temper C",
  "temper F",
  "HRC low",
  "HRC high",
  "through-hardens",
  "tempers",
  "recipe",
];

const sentences = (cell: unknown) =>
  String(answered(cell) ?? "")
    .split(/(?<=\.)\s(?=[A-Z])/)
    .filter((sentence) => sentence !== "");

/** Both tell the same; RUN_PLAN has cautions of its own besides, of stock and fuel. */
function inPlan(plan: Told, treatment: Told): string {
  const untold = sentences(treatment.cautions).find((caution) => !String(plan.cautions).includes(caution));
  const labels = IN_BOTH.filter((label) => label in plan);
  return differing([...pairsOf(labels, plan, treatment), ["cautions", untold, undefined]]);
}

/** A quench of its own that STEELS_FOR judges an air-hardening steel in. */
const ownQuench = (why: unknown) => /which may crack it: cool it in ([a-z ]+)/i.exec(String(why))?.[1];

/** The tempers between which a sentence says that a steel turns brittle, as "230-370". */
function brittleIn(sentence: unknown): readonly string[] {
  return String(sentence)
    .split(/(?<=\.)\s/)
    .filter((clause) => /brittle/.test(clause))
    .flatMap((clause) => [...clause.matchAll(/(\d+) °C \(\d+ °F\) (?:to|and) (\d+) °C/g)])
    .map(([, low, high]) => `${low}-${high}`)
    .sort();
}

const said = (ranges: readonly string[]) => [...new Set(ranges)].join(" and ") || "no brittle range";

/** The word with which the verdict of a section begins. */
const WORDS = ["does not harden through", "does not harden", "hardens through", "marginal"];
const wordOf = (verdict: unknown) => WORDS.find((word) => String(verdict).startsWith(word));

/** Whether a use asks for hardness in the whole blade; where it does not, the section as such is not judged. */
function isWhole(answers: Answers): boolean {
  const { use, steel } = answers.blade;
  return answers.ask("BAND", { use, steel }).part === "whole";
}

/** A temper, or the one that a refusal names: the nearest at an end of the reach, of several the coolest. */
function temperNamed(cell: unknown): unknown {
  const named = /(?:the nearest is|more than one temper in [^:]*:) (\d+) °C/.exec(String(cell))?.[1];
  return named === undefined ? cell : Number(named);
}

/** The row of STEELS_FOR for the steel of the blade. */
function offered(answers: Answers): Told {
  const { steel, ...question } = answers.part;
  return answers.ask("STEELS_FOR", { ...question, among: steel });
}

const treated = (answers: Answers, more = {}) => answers.ask("TREATMENT", { ...answers.part, ...more });

/** The bath whose figure stands for a quench. */
function bathFor(quench: string): string {
  const medium = findQuench(quench);
  return attempt(() => bathOf(medium)) instanceof Refusal && medium.kind === "oil" ? "slow oil" : quench;
}

export const BLADE_RULES: readonly BladeRule[] = [
  {
    says: "RUN_PLAN and TREATMENT, the temper left to the use",
    share: 0.9,
    holds: (answers) => inPlan(answers.planned(), treated(answers)),
  },
  {
    says: "RUN_PLAN and TREATMENT, for a target",
    share: 0.9,
    holds: (answers) => {
      const { target } = answers.blade;
      return inPlan(answers.planned({ "target HRC": target }), treated(answers, { target }));
    },
  },
  {
    says: "RUN_PLAN and TREATMENT, at a temper that was chosen",
    share: 0.9,
    holds: (answers) => {
      const { temperC } = answers.blade;
      return inPlan(answers.planned({ "chosen temper C": temperC }), treated(answers, { chosenC: temperC }));
    },
  },
  {
    says: "BAND_TEMPER is the temper of TREATMENT",
    share: 0.9,
    holds: (answers) => {
      const [own, treatment] = [answers.ask("BAND_TEMPER", answers.part), treated(answers)];
      const isRefused = number(own["temper C"]) === undefined;
      const labels = ["temper C", "temper F", "HRC low", "HRC high"];
      return differing(pairsOf(isRefused ? labels : [...labels, "chance", "next step"], own, treatment));
    },
  },
  {
    says: "STEELS_FOR tells of a steel what TREATMENT does",
    share: 0.15,
    holds: (answers) => {
      const row = offered(answers);
      if (row.status === "ruled out") return undefined;
      const quench = ownQuench(row["gives up"]) ?? ownQuench(row.why) ?? answers.blade.quench;
      const treatment = treated(answers, { quench });
      const isOffered = number(row["temper C"]) !== undefined;
      const temper = answers.ask("BAND_TEMPER", { ...answers.part, quench });
      return differing([
        ["status", row.status, treatment["band status"]],
        ...(isOffered ? pairsOf(["temper C", "chance", "likely"], row, temper) : []),
      ]);
    },
  },
  {
    says: "STEELS_FOR names the thickness of MAX_SECTION",
    share: 0.1,
    holds: (answers) => {
      const { steel, quench } = answers.blade;
      const row = offered(answers);
      const mm = number(row["hardens through"]);
      // Of a steel that cannot be it is not told in which quench.
      if (mm === undefined || number(row["temper C"]) === undefined) return undefined;
      const own = ownQuench(row["gives up"]) ?? ownQuench(row.why) ?? quench;
      return differing([
        ["mm", mm, answers.ask("MAX_SECTION", { steel, quench: bathFor(own) })["fully hard"]],
      ]);
    },
  },
  {
    says: "ASSESS judges a temper as TREATMENT and BAND_TEMPER do",
    share: 0.4,
    holds: (answers) => {
      const treatment = treated(answers);
      const temper = number(treatment["temper C"]);
      if (temper === undefined) return undefined;
      const { status, chance } = answers.ask("ASSESS", { ...answers.part, temper });
      return differing([
        ["status", status, treatment["band status"]],
        ["chance", chance, treatment.chance],
      ]);
    },
  },
  {
    says: "ASSESS judges the temper for a target as TREATMENT does",
    share: 0.2,
    holds: (answers) => {
      const treatment = treated(answers, { target: answers.blade.target });
      const temper = number(treatment["temper C"]);
      if (temper === undefined || treatment["band status"] === "out of reach") return undefined;
      const { status, chance } = answers.ask("ASSESS", { ...answers.part, temper });
      return differing([
        ["status", status, treatment["band status"]],
        ["chance", chance, treatment.chance],
      ]);
    },
  },
  {
    says: "ASSESS and TREATMENT judge a chosen temper alike",
    share: 0.9,
    holds: (answers) => {
      const { temperC } = answers.blade;
      const treatment = treated(answers, { chosenC: temperC });
      const { status, chance } = answers.ask("ASSESS", { ...answers.part, temper: temperC });
      return differing([
        ["status", status, treatment["band status"]],
        ["chance", chance, treatment.chance],
      ]);
    },
  },
  {
    says: "TEMPERED_RANGE expects of a temper what TREATMENT, BAND_TEMPER and RUN_PLAN do",
    share: 0.3,
    holds: (answers) => {
      const treatment = treated(answers);
      const temper = number(treatment["temper C"]);
      if (temper === undefined || !isWhole(answers)) return undefined;
      const { steel, thickness, quench } = answers.blade;
      const range = answers.ask("TEMPERED_RANGE", { steel, temper, sectionMm: thickness, quench });
      return differing([
        ["low", range.low, treatment["HRC low"]],
        ["likely", range.likely, answers.ask("BAND_TEMPER", answers.part).likely],
        ["high", range.high, treatment["HRC high"]],
      ]);
    },
  },
  {
    says: "TREATMENT, TEMPER_PLAN, TEMPER_FOR and TRADE_OFF name one temper for a target",
    share: 0.2,
    holds: (answers) => {
      const { steel, use, target } = answers.blade;
      const temper = number(treated(answers, { target })["temper C"]);
      if (temper === undefined) return undefined;
      const { likely } = answers.ask("TEMPER_PLAN", { steel, targetHrc: target });
      const exact = temperNamed(answers.ask("TEMPER_FOR", { steel, targetHrc: target }).answer);
      const traded = answers.ask("TRADE_OFF", { steel, use, hrc: target })["temper C"];
      return differing([
        ["TEMPER_PLAN", likely, temper, 1],
        ["TEMPER_FOR", exact, temper, 1],
        ["TRADE_OFF", traded, temper, 1],
      ]);
    },
  },
  {
    says: "TRADE_OFF gives a hardness the chance that TREATMENT gives it",
    share: 0.2,
    holds: (answers) => {
      const { steel, use, target } = answers.blade;
      const { chance, "temper C": temper } = answers.ask("TRADE_OFF", { steel, use, hrc: target });
      const treatment = treated(answers, { target, quench: null, thickness: null });
      if (number(temper) === undefined) return undefined;
      return differing([["chance", chance, treatment.chance, 0.011]]);
    },
  },
  {
    says: "RECIPE names the temper of TREATMENT, and is refused where the blade does not harden",
    share: 0.3,
    holds: (answers) => {
      const { steel, quench, target } = answers.blade;
      const recipe = answered(answers.ask("RECIPE", { steel, quench, target }).answer);
      const treatment = treated(answers, { target });
      const temper = number(treatment["temper C"]);
      if (temper !== undefined) return differing([["recipe", recipe, treatment.recipe]]);
      if (recipe === undefined) return "";
      const word = String(treatment["through-hardens"]);
      return word === "does not harden" ? `${recipe}, and ${word}` : undefined;
    },
  },
  {
    says: "MAX_SECTION and TREATMENT agree on what hardens through",
    share: 0.3,
    holds: (answers) => {
      const { steel, quench, thickness } = answers.blade;
      const word = String(treated(answers)["through-hardens"]);
      const most = answers.ask("MAX_SECTION", { steel, quench });
      const [full, half] = [number(most["fully hard"]), number(most["half martensite"])];
      if (full === undefined || half === undefined || !isWhole(answers)) return undefined;
      // Two figures are shown: a thickness nearer than that to an end may go either way.
      const isNear = (mm: number) => Math.abs(thickness - mm) <= 0.05 * Math.max(1, mm);
      if (isNear(full) || isNear(half)) return undefined;
      const due = thickness <= full ? "hardens through" : thickness <= half ? "marginal" : "does not harden";
      return word.startsWith(due) ? "" : `${full} and ${half} mm, ${word}`;
    },
  },
  {
    says: "SECTION_QUENCH and TREATMENT have one word for a section",
    share: 0.15,
    holds: (answers) => {
      const word = answered(treated(answers)["through-hardens"]);
      const section = sectionOf(answers);
      const own = wordOf(section.verdict);
      if (own === undefined || word === undefined || !isWhole(answers)) return undefined;
      return differing([["word", own, word]]);
    },
  },
  {
    says: "SECTION_PROFILE begins and ends with the hardness of SECTION_QUENCH",
    share: 0.15,
    holds: (answers) => {
      const section = sectionOf(answers);
      const rows = profileOf(answers);
      const pairs = (["edge", "spine"] as const).map((place): Pair => {
        const row = rows.at(place === "edge" ? 0 : -1) ?? {};
        const isFigure = typeof section[place] === "number";
        return [place, section[place], isFigure ? whole(row.likely) : bandText(row)];
      });
      return answered(section.edge) === undefined ? undefined : differing(pairs);
    },
  },
  {
    says: "the edge of a section that hardens through is as hard as QUENCHED_HRC says",
    share: 0.1,
    holds: (answers) => {
      const likely = number(profileOf(answers)[0]?.likely);
      const quenched = number(answers.ask("QUENCHED_HRC", { steel: answers.blade.steel }).answer);
      if (likely === undefined || quenched === undefined) return undefined;
      if (wordOf(sectionOf(answers).verdict) !== "hardens through") return undefined;
      return differing([["edge", likely, quenched, 2]]);
    },
  },
  {
    says: "SECTION_FIT finds the published bath again in the depth that SECTION_QUENCH gives",
    share: 0.01,
    holds: (answers) => {
      const depth = number(sectionOf(answers)["hardened depth"]);
      if (depth === undefined || depth <= 1 || depth >= answers.blade.width - 1) return undefined;
      // Where the word of the plate alone keeps it short of the spine, no calculation gives it.
      const calculated = answers.ask("SECTION_QUENCH", { ...sectionAsked(answers), bathFactor: 1 + 1e-9 });
      if (Math.abs(Number(calculated["hardened depth"]) - depth) > 0.01) return undefined;
      const fit = answers.ask("SECTION_FIT", { ...sectionAsked(answers), measured: depth });
      return differing([
        ["bath factor", fit["bath factor"], 1, 0.01],
        ["misfit", fit.misfit, 0, 0.01],
      ]);
    },
  },
  {
    says: "TREATMENT, RUN_PLAN and ASSESS name one brittle range for a temper",
    share: 0.9,
    holds: (answers) => {
      const { temperC } = answers.blade;
      const assessed = brittleIn(answers.ask("ASSESS", { ...answers.part, temper: temperC }).cautions);
      const treatment = brittleIn(treated(answers, { chosenC: temperC }).cautions);
      const line = brittleIn(answers.planned({ "chosen temper C": temperC }).cautions);
      return differing([
        ["ASSESS", said(assessed), said(treatment)],
        ["RUN_PLAN", said(line), said(treatment)],
      ]);
    },
  },
  {
    says: "TEMPER_PLAN, TRADE_OFF, RECIPE and ASSESS call the same tempers brittle",
    share: 0.15,
    holds: (answers) => {
      const { steel, use, target } = answers.blade;
      const plan = answers.ask("TEMPER_PLAN", { steel, targetHrc: target });
      const likely = number(plan.likely);
      if (likely === undefined) return undefined;
      const { cautions } = answers.ask("ASSESS", { use, steel, temper: likely });
      const isBrittle = /lies in the embrittlement range/.test(String(cautions));
      const { "what changes": changes } = answers.ask("TRADE_OFF", { steel, use, hrc: target });
      const recipe = answers.ask("RECIPE", { steel, target }).answer;
      const ranges = plan.flag === "embrittlement range" ? brittleIn(plan.caution) : undefined;
      return differing([
        ["TRADE_OFF", String(/in its brittle range/.test(String(changes))), String(isBrittle)],
        ["RECIPE", String(/in its brittle range/.test(String(recipe))), String(isBrittle)],
        ...(ranges === undefined ? [] : [["TEMPER_PLAN", said(ranges), said(brittleIn(cautions))] as Pair]),
      ]);
    },
  },
  {
    says: "STEELS_FOR avoids the brittle range that ASSESS names",
    share: 0.01,
    holds: (answers) => {
      const { steel, use } = answers.blade;
      const given = offered(answers)["gives up"];
      const [range] = /avoided as brittle/.test(String(given)) ? brittleIn(given) : [];
      if (range === undefined) return undefined;
      const [low = 0, high = 0] = range.split("-").map(Number);
      const middle = (low + high) / 2;
      const { cautions } = answers.ask("ASSESS", { use, steel, temper: middle });
      return brittleIn(cautions).includes(range) ? "" : `${range} against ${said(brittleIn(cautions))}`;
    },
  },
  {
    says: "TREATMENT calls too hard, too soft or inside what BAND says is",
    share: 0.3,
    holds: (answers) => {
      const { steel, use } = answers.blade;
      const band = answers.ask("BAND", { use, steel });
      const likely = number(answers.ask("BAND_TEMPER", answers.part).likely);
      const status = String(treated(answers)["band status"]);
      const [low, high] = [number(band["HRC low"]) ?? 0, number(band["HRC high"]) ?? 0];
      if (likely === undefined || /out of reach|does not harden|not known/.test(status)) return undefined;
      // Whole points are shown: one on the end of a band may have been rounded from either side.
      const isHeld =
        (status !== "too hard" || likely > high) &&
        (status !== "too soft" || likely < low) &&
        (status !== "inside" || (likely >= low && likely <= high));
      return isHeld ? "" : `${status}, likely ${likely}, band ${low} to ${high}`;
    },
  },
  {
    says: "TEMPER_CURVE, TEMPERED_RANGE and TEMPERED_HRC give a temper one hardness",
    share: 0.3,
    holds: (answers) => {
      const { steel, temperC } = answers.blade;
      const hrc = number(answers.ask("TEMPERED_HRC", { steel, temperC }).answer);
      if (hrc === undefined) return undefined;
      const curve = answers.ask("TEMPER_CURVE", { steel, from: temperC, to: temperC });
      const range = answers.ask("TEMPERED_RANGE", { steel, temper: temperC });
      return differing([
        ["likely on the curve", curve.likely, hrc, 0.06],
        ["low", range.low, curve.low, 0.56],
        ["likely", range.likely, hrc, 0.56],
        ["high", range.high, curve.high, 0.56],
      ]);
    },
  },
  {
    says: "RETEMPER leads a blade that reads as expected to what its temper for the target gives",
    share: 0.05,
    holds: (answers) => {
      const { steel, temperC, target } = answers.blade;
      const reading = number(answers.ask("TEMPERED_HRC", { steel, temperC }).answer);
      const known = { knownC: temperC, knownHrc: reading };
      const { likely } = answers.ask("TEMPER_PLAN", { steel, targetHrc: target, ...known });
      const wanted = number(likely);
      // Half a point about the target is at it; under it the blade is hardened again.
      if (reading === undefined || wanted === undefined || reading <= target + 0.6) return undefined;
      if (wanted < temperC + 5) return undefined;
      const next = answers.ask("RETEMPER", {
        steel,
        soFarC: temperC,
        soFarHours: 2,
        reading,
        targetHrc: target,
      });
      // The hours so far count: the next temper is no hotter than one of a blade that had none.
      const celsius = number(next["next temper"]);
      if (celsius === undefined) return `${next["next temper"]} ${next.advice}, TEMPER_PLAN ${wanted}`;
      return celsius <= wanted + 1 ? "" : `${celsius} °C, TEMPER_PLAN ${wanted}`;
    },
  },
  {
    says: "the hardening temperature of TREATMENT lies in the window of HARDENING",
    share: 0.3,
    holds: (answers) => {
      const harden = number(treated(answers).harden);
      const window = answers.ask("HARDENING", { steel: answers.blade.steel });
      const [low, high] = [number(window["harden, low"]), number(window["harden, high"])];
      if (harden === undefined || low === undefined || high === undefined) return undefined;
      return low - 0.5 <= harden && harden <= high + 0.5 ? "" : `${harden}, ${low} to ${high}`;
    },
  },
  {
    says: "TREATMENT soaks as SOAK does",
    share: 0.3,
    holds: (answers) => {
      const { steel, thickness } = answers.blade;
      const { harden: furnaceC, "in the furnace": minutes } = treated(answers);
      if (number(furnaceC) === undefined || number(minutes) === undefined) return undefined;
      const { total } = answers.ask("SOAK", { thickness, furnaceC, family: steel });
      return differing([["minutes", total, minutes, 1]]);
    },
  },
];

const sectionAsked = ({ blade: { steel, quench, width, thickness } }: Answers) => ({
  steel,
  quench,
  width,
  spine: thickness,
  // Common practice, no source: an edge left as thick as this at the quench does not burn.
  edge: Math.min(thickness, 1.2),
});

const profileOf = (answers: Answers) => table("SECTION_PROFILE", sectionAsked(answers));

const whole = (cell: unknown) => (typeof cell === "number" ? Math.round(cell) : cell);

/** A row of SECTION_PROFILE as SECTION_QUENCH writes it where it is no one figure. */
const bandText = ({ low, high }: Told) =>
  typeof high === "number" ? `${whole(low)} to ${whole(high)}` : high;

const sectionOf = (answers: Answers) => answers.ask("SECTION_QUENCH", sectionAsked(answers));

/** How a rule fared with some blades. */
export interface RuleTried {
  /** Blades of which it could be asked. */
  readonly asked: number;
  readonly contradictions: readonly string[];
}

/** Holds blades against a rule. */
export function heldAgainst({ holds }: BladeRule, blades: readonly Answers[]): RuleTried {
  const told = blades.map((answers) => ({ answers, words: holds(answers) }));
  const asked = told.filter(({ words }) => words !== undefined);
  const wrong = asked.filter(({ words }) => words !== "");
  return {
    asked: asked.length,
    contradictions: wrong.map(({ answers, words }) => `${JSON.stringify(answers.blade)}: ${words}`),
  };
}
