import { relation } from "../relation";
import { SHOP_NEEDS } from "../steel/traits";
import { systemsCarrying } from "../steel/twins";
import { bandFor } from "./band-by-steel";
import type { Choice, ChoiceQuestion } from "./choice-row";
import { CLEAR_MARGIN } from "./choice-words";
import { hardPartMm } from "./hard-part";
import { mentionsOf } from "./named-steels";
import { type BladeStatus, missOf, NEAR_MISS_HRC } from "./status";
import { SUITABILITIES, wantsSoftBody } from "./suitability";

/** One thing that steels are compared by: what is told of it, and its step, the lowest first. */
interface Criterion {
  readonly told: string;
  readonly step: (choice: Choice, question: ChoiceQuestion) => number;
}

/** The words that bar a steel from a use. */
export const CANNOT: readonly (BladeStatus | "ruled out" | "")[] = [
  "ruled out",
  "does not harden",
  "out of reach",
];

const isOut = ({ status }: Choice) => CANNOT.includes(status);

/** The words that a chance has, the likeliest first; all others count alike. */
const BY_CHANCE: readonly Choice["status"][] = ["inside", "likely inside", "uncertain"];

function chanceStep({ status }: Choice): number {
  const at = BY_CHANCE.indexOf(status);
  return at < 0 ? BY_CHANCE.length : at;
}

/** A body that clay has to keep soft: 0 where the steel by itself would not harden through there, 1 where it would. */
function bodyStep({ hardensMm: mm }: Choice, { use, thickness }: ChoiceQuestion): number {
  if (thickness === undefined || !wantsSoftBody(use)) return 0;
  return Number(mm === undefined || mm >= thickness);
}

/** 0 with room in the quench, 1 just enough, 2 less or not known. */
function marginStep({ hardensMm: mm }: Choice, { use, thickness }: ChoiceQuestion): number {
  const wanted = hardPartMm({ use, thicknessMm: thickness });
  if (thickness === undefined || wanted === undefined) return 0;
  if (mm === undefined) return 2;
  if (mm >= CLEAR_MARGIN * wanted) return 0;
  return mm >= wanted ? 1 : 2;
}

const needStep = ({ traits }: Choice) => SHOP_NEEDS.indexOf(traits.need);

/** A steel that serves, before one that is not usual. */
const servesStep = ({ suits }: Choice) =>
  Number(SUITABILITIES.indexOf(suits) > SUITABILITIES.indexOf("fair"));

/** A temper that may land in the band or misses it by little, before one that is expected to miss it. */
function landsStep(choice: Choice, { use }: ChoiceQuestion): number {
  if (chanceStep(choice) < BY_CHANCE.length) return 0;
  return Number(
    choice.likely === undefined ||
      Math.abs(missOf(bandFor(use, choice.steel), choice.likely)) > NEAR_MISS_HRC,
  );
}

/** Of a list that was given all can be had: there nothing is told apart by it. */
const soldStep = ({ isSold }: Choice, { isOffered }: ChoiceQuestion) =>
  Number(!(isSold || isOffered === true));

/** What is compared, one after another: the first difference decides. The words are those of the help. */
export const CRITERIA: readonly Criterion[] = [
  {
    told: "what cannot be stands last, what another shop or bath could mend before the rest",
    step: (choice) => choice.barred,
  },
  { told: "a usual kind, or one that serves", step: servesStep },
  {
    told: `a temper that may land in the band, or misses it by ${NEAR_MISS_HRC} HRC at most`,
    step: landsStep,
  },
  { told: "sold widely for blades, where no list is given (common practice, no source)", step: soldStep },
  {
    told: "in a shop without a kiln what a steel needs",
    step: (choice, { kiln }) => (kiln === false && !isOut(choice) ? needStep(choice) : 0),
  },
  { told: "suitability for the use", step: ({ suits }) => SUITABILITIES.indexOf(suits) },
  { told: "under clay, shallower than the blade is thick", step: bodyStep },
  {
    told: "chance of the band outside the brittle range (inside, likely inside, uncertain, else)",
    step: chanceStep,
  },
  { told: "margin in the quench (1.5 times what has to be hard, just enough, less)", step: marginStep },
  { told: "named by the trade for the use", step: ({ isNamed }) => (isNamed ? 0 : 1) },
  { told: "what the shop needs", step: needStep },
  { told: "price", step: ({ price }) => price ?? Number.MAX_VALUE },
  { told: "how many of the trade's lists name it", step: ({ steel }) => -mentionsOf(steel) },
  { told: "how many systems of designation carry it", step: ({ steel }) => -systemsCarrying(steel) },
  { told: "chance", step: ({ chance = 0 }) => -chance },
];

/** The order in which steels are put forward for a use. */
export const CHOICE_ORDER = relation({
  title: "Order of steels for a use",
  source: "steel-by-use",
  locator: `in turn: ${CRITERIA.map(({ told }) => told).join("; ")}`,
  evidence: "common practice",
  inputs: {},
  output: { label: "order", unit: "" },
  error: {
    size: null,
    unit: "",
    kind: "an order of these words one after another, no score: neighbours may change places",
  },
});

/** The choices in the order of `CRITERIA`; what nothing tells apart stays as it stood. */
export function inOrder(choices: readonly Choice[], question: ChoiceQuestion): Choice[] {
  return choices
    .map((choice) => ({ choice, steps: CRITERIA.map(({ step }) => step(choice, question)) }))
    .sort((a, b) => {
      const at = a.steps.findIndex((step, i) => step !== b.steps[i]);
      return at < 0 ? 0 : (a.steps[at] as number) - (b.steps[at] as number);
    })
    .map(({ choice }) => choice);
}
