import { ORDERED_CYCLES, USUAL_HOURS } from "../../core/tempering/hollomon-jaffe";
import { lineColumns } from "./parts/line-columns";
import { inMillimetres } from "./parts/sheet-parts";
import {
  type CellOf,
  calcColumn,
  eitherColumn,
  STEEL_WIDTH,
  type TableColumns,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import {
  fahrenheitOf,
  type LineCells,
  NONE,
  NOT_ASSESSED,
  type TreatmentLabel,
  treatmentFigure,
} from "./parts/treatment";
import type { RecipeData } from "./template-data";

export type RecipeKey =
  | "line"
  | "item"
  | "steel"
  | "section"
  | "chosenHarden"
  | "tempers"
  | "hours"
  | "knownC"
  | "knownHrc"
  | "clay"
  | "clayFrom"
  | "quenchTo"
  | "subZeroHours"
  | "through"
  | "normalise"
  | "normaliseF"
  | "harden"
  | "hardenF"
  | "soak"
  | "furnace"
  | "quench"
  | "clayWords"
  | "subZero"
  | "temperWords"
  | "next"
  | "caution"
  | "text";

/** What an order has where nothing is typed; both cells go to every function that plans a line. */
const TEMPERS = String(ORDERED_CYCLES);
const HOURS = String(USUAL_HOURS);
/** Clay usually leaves so much of the width free above the edge; common practice, no source. */
const CLAY_FROM = 0.4;
const WHOLE = { format: "0" };
const TENTH = { format: "0.0" };
const WORDS = { role: "words", wrap: true } as const;

/** Addresses of what a line is cut from, and of what is ground off a face after hardening. */
export interface SentSizes {
  /** Thickness of the bar; 0 for a forged blade, which no bar limits. */
  readonly bar: (index: number) => string;
  readonly grindAfter: string;
}

/** The thickest place as it goes into the quench: the blade with what is ground off later, within its bar. */
function sectionFormula(finished: string, { bar, grindAfter }: SentSizes, index: number): string {
  const blade = inMillimetres(finished);
  const rough = `${blade}+2*N(${grindAfter})`;
  const cut = `IFERROR(N(${bar(index)}),0)`;
  // A text that is no length goes on as it stands: the functions say what is wrong with it.
  return `IFERROR(MAX(${blade},IF(${cut}>0,MIN(${rough},${cut}),${rough})),${finished})`;
}

/** How each line is hardened and tempered, decided once: lines, batches, orders and travellers read it here. */
export function recipeSheet(
  data: readonly RecipeData[],
  lines: () => LineCells,
  sent: SentSizes,
  count: number,
): TableSheet<RecipeKey> {
  const given = (key: keyof RecipeData) => data.map((recipe) => recipe[key] ?? null);
  const ofLine = (key: "steel") => (_: unknown, index: number) => lines().at(key, index);
  const asked = (label: TreatmentLabel, otherwise: string) => (_: CellOf<RecipeKey>, index: number) =>
    `IFERROR(${treatmentFigure(lines(), sheet(), label, index)},"${otherwise}")`;
  const number = (label: TreatmentLabel) => asked(label, NONE);
  const told = (label: TreatmentLabel) => asked(label, NOT_ASSESSED);
  const steelKnown = { needs: (_: unknown, index: number) => [lines().at("steel", index)] };
  const figure = { ...WHOLE, ...steelKnown };
  const said = { ...WORDS, ...steelKnown };
  const columns: TableColumns<RecipeKey> = {
    ...lineColumns<RecipeKey>(lines, 130),
    steel: calcColumn("Steel", STEEL_WIDTH, ofLine("steel"), steelKnown),
    section: eitherColumn(
      "Hardened mm",
      72,
      given("section"),
      (_, index) => sectionFormula(lines().at("thickness", index), sent, index),
      { ...TENTH, needs: (_, index) => [lines().at("thickness", index)] },
    ),
    chosenHarden: typedColumn("Harden at, chosen °C", 70, given("harden"), WHOLE),
    tempers: eitherColumn("Tempers", 68, given("tempers"), () => TEMPERS, WHOLE),
    hours: eitherColumn("Temper hours", 56, given("hours"), () => HOURS, TENTH),
    knownC: typedColumn("Known °C", 52, given("knownC"), WHOLE),
    knownHrc: typedColumn("Known HRC", 52, given("knownHrc"), TENTH),
    clay: typedColumn("Clay mm", 46, given("clay"), TENTH),
    clayFrom: eitherColumn(
      "Clay from mm",
      50,
      given("clayFrom"),
      (_, index) => `ROUND(${lines().at("width", index)}*${CLAY_FROM},0)`,
      { ...WHOLE, needs: (at, index) => [at("clay"), lines().at("width", index)] },
    ),
    quenchTo: typedColumn("Sub-zero °C", 62, given("quenchTo"), WHOLE),
    subZeroHours: typedColumn("Sub-zero h", 62, given("subZeroHours"), TENTH),
    through: calcColumn("Hardens through", 110, told("through-hardens"), { ...said, isBladeStatus: true }),
    normalise: calcColumn("Normalise °C", 74, number("normalise"), figure),
    normaliseF: calcColumn("Normalise °F", 74, (at) => fahrenheitOf(at("normalise")), figure),
    harden: calcColumn("Harden °C", 58, number("harden"), figure),
    hardenF: calcColumn("Harden °F", 58, (at) => fahrenheitOf(at("harden")), figure),
    soak: calcColumn("Soak min", 50, number("soak"), figure),
    furnace: calcColumn("In the furnace min", 62, number("in the furnace"), figure),
    quench: calcColumn("Quench and bath", 230, told("quench"), said),
    clayWords: calcColumn("Clay", 130, told("clay"), said),
    subZero: calcColumn("Sub-zero", 130, told("sub-zero"), said),
    temperWords: calcColumn("Tempers as ordered", 150, told("tempers"), said),
    next: calcColumn("Next step in full", 330, told("next step"), said),
    caution: calcColumn("Cautions in full", 420, told("cautions"), said),
    text: calcColumn("Recipe for loads", 260, told("recipe"), said),
  };
  const made = new TableSheet("Recipe", columns, count, {
    title: "Recipe: how each line is hardened and tempered",
    note: "Decided here once; lines, batches, orders and travellers read it. Hardened mm: the thickest place as it goes into the quench, the blade with what the cover lets be ground off later. Temper and quench are typed on Lines.",
    frozenColumns: 2,
  });
  const sheet = () => made;
  return made;
}

export type Recipes = TableSheet<RecipeKey>;
