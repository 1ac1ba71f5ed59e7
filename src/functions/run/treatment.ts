import { type Caution, caution, ranked } from "../../core/blade/caution";
import { nextStepInShort } from "../../core/blade/next-step";
import { TESTER_UNCERTAINTY } from "../../core/blade/status";
import { STEEL_BY_USE } from "../../core/blade/suitability";
import { heatTreatmentRelations } from "../../core/hardening/heat-treatment";
import { MAX_PLATE } from "../../core/hardening/max-section";
import { HEAT_UP, SOAK_RULE } from "../../core/hardening/soak";
import { asSentence } from "../../core/quantity-text";
import type { Refusal } from "../../core/refusal";
import {
  type Faults,
  faultSentences,
  MEND_LINE,
  NOT_ASSESSED,
  type RecipePart,
  recipeFault,
} from "../../core/run/faulty-cells";
import type { Figure, RecipeLine } from "../../core/run/line";
import { type LineRecipe, recipeBesideFaults } from "../../core/run/line-recipe";
import { temperingRelations } from "../../core/tempering/relations";
import { shownChance } from "../blade/blade-arguments";
import type { Cell } from "../cells";
import { tableFunction } from "../declare";
import { bladeHeadings } from "./blade-headings";
import { heatHeadings } from "./heat-headings";
import { underHeading } from "./table-rows";

/** A result that is empty says so: a sheet read without the add-in keeps what stands in its cells. */
const NONE_HELD = "none held";
const shown = (figure: Figure): Cell => figure ?? NONE_HELD;
const told = (words: string, otherwise = "none") => (words === "" ? otherwise : words);

const RESULT = [
  { label: "band status", unit: "text" },
  { label: "chance", unit: "" },
  { label: "next step", unit: "text" },
  { label: "cautions", unit: "text" },
  { label: "temper C", unit: "°C" },
  { label: "temper F", unit: "°F" },
  { label: "HRC low", unit: "HRC" },
  { label: "HRC high", unit: "HRC" },
  { label: "through-hardens", unit: "text" },
  { label: "normalise", unit: "°C" },
  { label: "harden", unit: "°C" },
  { label: "soak", unit: "min" },
  { label: "in the furnace", unit: "min" },
  { label: "quench", unit: "text" },
  { label: "clay", unit: "text" },
  { label: "sub-zero", unit: "text" },
  { label: "tempers", unit: "text" },
  { label: "recipe", unit: "text" },
  { label: "do next", unit: "text" },
  { label: "be wary of", unit: "text" },
] as const;

interface Treated {
  readonly recipe: LineRecipe;
  readonly line: RecipeLine;
  readonly faults: Faults;
}

/** What there is to be wary of, the heaviest first; a cell that cannot be read comes before all. */
function cautionsOf({ recipe, line, faults }: Treated): readonly Caution[] {
  const { word, caution: full } = recipe.hardening;
  const isTold = (part: RecipePart) => recipeFault(line, faults, part) === undefined;
  return [
    ...faultSentences(faults).map((said) =>
      caution("danger", "a cell of this line cannot be read", asSentence(said)),
    ),
    ...ranked([
      ...(isTold("temper") ? recipe.temper.cautions : []),
      ...(full === "" || !isTold("through") ? [] : [caution("note", word, full)]),
    ]),
  ];
}

const fullText = (cautions: readonly Caution[]) => cautions.map(({ full }) => full).join(" ");

/** The heaviest, and how many there are besides. */
function inShort(cautions: readonly Caution[]): string {
  const [first, ...others] = cautions;
  if (first === undefined) return "";
  return others.length === 0 ? first.short : `${first.short} (${others.length} more)`;
}

/** A refused line: words outlive a reader without the add-in, the sentence of an error does not. */
function refusedRow(refusal: Refusal): Cell[][] {
  const said = asSentence(refusal.message);
  const words: Readonly<Record<string, string>> = {
    "next step": MEND_LINE,
    "do next": MEND_LINE,
    cautions: said,
    "be wary of": said,
  };
  return [RESULT.map(({ label }) => words[label] ?? refusal)];
}

const { use, steel, length, thickness } = bladeHeadings;
const { target, quench, hardenC, sectionMm, chosenC, temperHours, temperCycles } = heatHeadings;
const { knownC, knownHrc, quenchToC, subZeroHours, clayMm, clayFromMm } = heatHeadings;

/** Faults with the name of their argument in front. */
function labelled(faults: Faults): Faults {
  const labels: Readonly<Record<string, { readonly label: string }>> = { ...bladeHeadings, ...heatHeadings };
  return Object.fromEntries(
    Object.entries(faults).map(([key, refusal]) => [key, underHeading(refusal, labels[key]?.label ?? key)]),
  );
}

/** Each result in its order, with the part of the recipe that it belongs to. */
function resultsOf(treated: Treated): readonly (readonly [RecipePart | "told", Cell])[] {
  const { recipe, faults } = treated;
  const { temper, hardening } = recipe;
  const cautions = cautionsOf(treated);
  const isWhole = Object.keys(faults).length === 0;
  return [
    ["status", told(temper.status, "no use given")],
    ["status", temper.chance === undefined ? NONE_HELD : shownChance(temper.chance)],
    ["told", isWhole ? told(temper.next) : MEND_LINE],
    ["told", told(fullText(cautions))],
    ["temper", shown(temper.celsius)],
    ["temper", shown(temper.fahrenheit)],
    ["temper", shown(temper.low)],
    ["temper", shown(temper.high)],
    ["through", told(hardening.word, "not judged")],
    ["told", shown(recipe.normaliseC)],
    ["harden", shown(recipe.hardenC)],
    ["soak", shown(recipe.soakMinutes)],
    ["soak", shown(recipe.furnaceMinutes)],
    ["quench", told(recipe.quench, "none printed")],
    ["clay", recipe.clay],
    ["subZero", recipe.subZero],
    ["temper", told(temper.tempers)],
    ["recipe", recipe.text],
    ["told", isWhole ? told(nextStepInShort(temper.next)) : MEND_LINE],
    ["told", told(inShort(cautions))],
  ];
}

/** A part that rests on a faulty cell: figures carry the refusal, words say that nothing was assessed. */
function answerOf(treated: Treated): Cell[] {
  const { line, faults } = treated;
  return resultsOf(treated).map(([part, came], at) => {
    const fault = part === "told" ? undefined : recipeFault(line, faults, part);
    if (fault === undefined) return came;
    return RESULT[at]?.unit === "text" ? NOT_ASSESSED : fault;
  });
}

export const TREATMENT = tableFunction({
  name: "TREATMENT",
  summary:
    "How a line is hardened and tempered, as RUN_PLAN has it: status, temper, hardness, soak, quench with its bath, clay, sub-zero.",
  parameters: {
    steel,
    use,
    target,
    quench,
    thickness,
    length,
    sectionMm,
    hardenC,
    chosenC,
    temperHours,
    temperCycles,
    knownC,
    knownHrc,
    quenchToC,
    subZeroHours,
    clayMm,
    clayFromMm,
  },
  result: RESULT,
  refused: refusedRow,
  relations: (steel) => [
    ...heatTreatmentRelations(steel),
    HEAT_UP,
    SOAK_RULE,
    ...temperingRelations(steel),
    TESTER_UNCERTAINTY,
    STEEL_BY_USE,
    MAX_PLATE,
  ],
  toleratesFaults: true,
  compute: (given, unread) => [answerOf(recipeBesideFaults(given, labelled(unread)))],
});
