import { findLevel, INSPECTION_LEVELS, SAMPLING, samplePlan } from "../../core/inspection/sample-plan";
import { rowFunction } from "../declare";
import { number, optionalText } from "../parameters";

const levels = INSPECTION_LEVELS.map(({ word }) => word).join(", ");

export const SAMPLE_PLAN = rowFunction({
  name: "SAMPLE_PLAN",
  summary:
    "How many pieces of a lot to test and how many bad ones to allow: single sampling, normal inspection.",
  parameters: {
    lot: number({
      label: "lot",
      quantity: "count",
      unit: "",
      min: 1,
      whole: true,
      help: "Pieces in the lot, 2 to 1200.",
    }),
    aql: number({
      label: "AQL",
      quantity: "mass %",
      unit: "%",
      above: 0,
      max: 100,
      help: "Acceptance quality limit in %: 0.65, 1, 1.5, 2.5, 4, 6.5, 10 or 15.",
    }),
    level: optionalText({
      label: "level",
      kind: "inspection level",
      help: `Inspection level: ${levels}.`,
      accepts: `one of ${levels}`,
      words: INSPECTION_LEVELS.map(({ word }) => word),
      find: findLevel,
      fallback: "II",
    }),
  },
  result: [
    { label: "letter", unit: "text" },
    { label: "sample", unit: "pieces" },
    { label: "accept", unit: "pieces" },
    { label: "reject", unit: "pieces" },
  ],
  relations: [SAMPLING],
  compute: ({ lot, aql, level }) => {
    const { letter, sample, accept, reject } = samplePlan(lot, aql, level);
    return [letter, sample, accept, reject];
  },
});
