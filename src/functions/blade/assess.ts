import { bandRelation, USES } from "../../core/blade/bands";
import { TESTER_UNCERTAINTY } from "../../core/blade/status";
import { bladeStory } from "../../core/blade/story";
import { STEEL_BY_USE } from "../../core/blade/suitability";
import { MAX_PLATE } from "../../core/hardening/max-section";
import { isHardnessSpan, readHardness } from "../../core/hardness/read-hardness";
import { numberText, quantityText } from "../../core/quantity-text";
import { InvalidValue } from "../../core/refusal";
import { EMBRITTLEMENT } from "../../core/tempering/embrittlement";
import { temperingRelations } from "../../core/tempering/relations";
import { rowFunction } from "../declare";
import { numberOrNothing, type Parameter } from "../parameters";
import { steel } from "../steel-argument";
import { typedTemperOrNothing } from "../tempering/typed-temper";
import { bladeLength, cautionText, quench, shownChance, thickness, USUAL_TREATMENT } from "./blade-arguments";
import { use } from "./use-argument";

const rockwell = { quantity: "hardness", unit: "HRC", min: 20, max: 70 } as const;

interface Span {
  readonly low: number;
  readonly high: number;
}

const one = numberOrNothing({
  label: "HRC or low",
  ...rockwell,
  help: 'Hardness read or wanted in HRC, the low end of a range, or both as "57-59"; where left out, what the temper is expected to give.',
});

/** One hardness, or a span in one cell: "57-59". */
const readingOrSpan: Parameter<Span | undefined> = {
  ...one,
  read: (cell) => {
    if (typeof cell === "string" && isHardnessSpan(cell)) {
      const { low, high } = readHardness(cell);
      return { low, high };
    }
    const hrc = one.read(cell);
    return hrc === undefined ? undefined : { low: hrc, high: hrc };
  },
  fallback: () => undefined,
};

/** The reading in both its arguments; nothing where none is given. */
function readingOf(low: Span | undefined, high: number | undefined): Span | undefined {
  if (low === undefined) {
    if (high === undefined) return undefined;
    throw new InvalidValue(`HRC or low is empty and high is ${quantityText(high, "HRC")}: give both ends`);
  }
  if (high === undefined) return low;
  if (low.high !== low.low) {
    const span = `${numberText(low.low)} to ${numberText(low.high)} HRC`;
    throw new InvalidValue(`${span} and high ${numberText(high)} HRC: give the high end once`);
  }
  if (high < low.low) {
    throw new InvalidValue(`HRC ${numberText(low.low)} to ${numberText(high)}: give the low end first`);
  }
  return { low: low.low, high };
}

export const ASSESS = rowFunction({
  name: "ASSESS",
  takesLong: true,
  summary:
    "How a hardness, or a temper, stands against the usual band of its use: a word, the chance, what to do next and what to be wary of.",
  parameters: {
    use,
    steel,
    low: readingOrSpan,
    high: numberOrNothing({ label: "high", ...rockwell, help: "High end of the range in HRC." }),
    length: bladeLength,
    quench,
    temper: typedTemperOrNothing(
      numberOrNothing({
        label: "temper C",
        quantity: "temperature",
        unit: "°C",
        min: 50,
        max: 750,
        help: "Temper of the steel itself in °C; where left out, the one that the hardness implies.",
      }),
    ),
    thickness,
  },
  result: [
    { label: "status", unit: "text" },
    { label: "chance", unit: "" },
    { label: "next step", unit: "text" },
    { label: "cautions", unit: "text" },
  ],
  relations: (steel) => [
    ...(steel === null ? USES.map(bandRelation) : []),
    TESTER_UNCERTAINTY,
    STEEL_BY_USE,
    EMBRITTLEMENT,
    MAX_PLATE,
    ...temperingRelations(steel),
  ],
  compute: ({ low, high, temper, ...blade }) => {
    const reading = readingOf(low, high);
    const story = bladeStory({
      ...blade,
      reading,
      temperC: temper?.celsius,
      temperHasUnit: temper?.hasUnit,
      asIs: true,
      treatment: USUAL_TREATMENT,
    });
    return [story.status, shownChance(story.chance), story.next, cautionText(story.cautions)];
  },
});
