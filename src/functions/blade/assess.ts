import { bandRelation, USES } from "../../core/blade/bands";
import { TESTER_UNCERTAINTY } from "../../core/blade/status";
import { bladeStory } from "../../core/blade/story";
import { STEEL_BY_USE } from "../../core/blade/suitability";
import { MAX_PLATE } from "../../core/hardening/max-section";
import { numberText } from "../../core/quantity-text";
import { InvalidValue } from "../../core/refusal";
import { EMBRITTLEMENT } from "../../core/tempering/embrittlement";
import { temperingRelations } from "../../core/tempering/relations";
import { rowFunction } from "../declare";
import { number, numberOrNothing } from "../parameters";
import { steel } from "../steel-argument";
import { bladeLength, cautionText, quench, shownChance, thickness, USUAL_TREATMENT } from "./blade-arguments";
import { use } from "./use-argument";

const rockwell = { quantity: "hardness", unit: "HRC", min: 20, max: 70 } as const;
export const ASSESS = rowFunction({
  name: "ASSESS",
  summary:
    "How a hardness stands against the usual band of its use: a word, the chance, what to do next and what to be wary of; never a promise.",
  parameters: {
    use,
    steel,
    low: number({ label: "HRC or low", ...rockwell, help: "Hardness, or the low end of a range, in HRC." }),
    high: numberOrNothing({ label: "high", ...rockwell, help: "High end of the range in HRC." }),
    length: bladeLength,
    quench,
    temperC: numberOrNothing({
      label: "temper C",
      quantity: "temperature",
      unit: "°C",
      min: 50,
      max: 750,
      help: "Temper of the steel itself in °C; where left out, the one that the hardness implies.",
    }),
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
  compute: ({ low, high = low, use, steel, length, quench, temperC, thickness }) => {
    if (high < low) {
      throw new InvalidValue(`HRC ${numberText(low)} to ${numberText(high)}: give the low end first`);
    }
    const story = bladeStory({
      use,
      steel,
      length,
      thickness,
      quench,
      temperC,
      reading: { low, high },
      treatment: USUAL_TREATMENT,
    });
    return [story.status, shownChance(story.chance), story.next, cautionText(story.cautions)];
  },
});
