import { type Caution, caution, ranked } from "../../core/blade/caution";
import { nextStepInShort } from "../../core/blade/next-step";
import { TESTER_UNCERTAINTY } from "../../core/blade/status";
import { STEEL_BY_USE } from "../../core/blade/suitability";
import { heatTreatmentRelations } from "../../core/hardening/heat-treatment";
import { MAX_PLATE } from "../../core/hardening/max-section";
import { HEAT_UP, SOAK_RULE } from "../../core/hardening/soak";
import { asSentence } from "../../core/quantity-text";
import type { Refusal } from "../../core/refusal";
import type { Figure } from "../../core/run/line";
import { type LineRecipe, lineRecipe } from "../../core/run/line-recipe";
import { temperingRelations } from "../../core/tempering/relations";
import { shownChance } from "../blade/blade-arguments";
import type { Cell } from "../cells";
import { tableFunction } from "../declare";
import { bladeHeadings } from "./blade-headings";
import { heatHeadings } from "./heat-headings";

/** A result that is empty says so: a sheet read without the add-in keeps what stands in its cells. */
const NONE_HELD = "none held";
const shown = (figure: Figure): Cell => figure ?? NONE_HELD;
const told = (words: string, otherwise = "none") => (words === "" ? otherwise : words);

/** What a refused line asks for. */
const MEND = "Mend this line: its caution says what is wrong";

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

/** What there is to be wary of, the heaviest first. */
function cautionsOf({ temper, hardening }: LineRecipe): readonly Caution[] {
  const { word, caution: full } = hardening;
  return ranked([...temper.cautions, ...(full === "" ? [] : [caution("note", word, full)])]);
}

const fullText = (cautions: readonly Caution[]) => cautions.map(({ full }) => full).join(" ");

/** The heaviest, and how many there are besides. */
function inShort(cautions: readonly Caution[]): string {
  const [first, ...others] = cautions;
  if (first === undefined) return "";
  return others.length === 0 ? first.short : `${first.short} (+${others.length})`;
}

/** A refused line: words outlive a reader without the add-in, the sentence of an error does not. */
function refusedRow(refusal: Refusal): Cell[][] {
  const said = asSentence(refusal.message);
  const words: Readonly<Record<string, string>> = {
    "next step": MEND,
    "do next": MEND,
    cautions: said,
    "be wary of": said,
  };
  return [RESULT.map(({ label }) => words[label] ?? refusal)];
}

const { use, steel, length, thickness } = bladeHeadings;
const { target, quench, hardenC, sectionMm, chosenC, temperHours, temperCycles } = heatHeadings;
const { knownC, knownHrc, quenchToC, subZeroHours, clayMm, clayFromMm } = heatHeadings;

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
  compute: (line) => {
    const recipe = lineRecipe(line);
    const { temper, hardening } = recipe;
    const cautions = cautionsOf(recipe);
    return [
      [
        told(temper.status, "no use given"),
        temper.chance === undefined ? NONE_HELD : shownChance(temper.chance),
        told(temper.next),
        told(fullText(cautions)),
        shown(temper.celsius),
        shown(temper.fahrenheit),
        shown(temper.low),
        shown(temper.high),
        told(hardening.word, "not judged"),
        shown(recipe.normaliseC),
        shown(recipe.hardenC),
        shown(recipe.soakMinutes),
        shown(recipe.furnaceMinutes),
        told(recipe.quench, "none printed"),
        recipe.clay,
        recipe.subZero,
        told(temper.tempers),
        recipe.text,
        told(nextStepInShort(temper.next)),
        told(inShort(cautions)),
      ],
    ];
  },
});
