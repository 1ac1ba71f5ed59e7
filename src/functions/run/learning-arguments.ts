import { LEARNING_MODELS, type LearningModel } from "../../core/run/learning";
import { askIfPercent } from "../../core/run/starts";
import type { ChoiceOptions } from "../choice";
import type { NumberOptions } from "../parameters";

/** Which hours the rate is a share of, as people name the two models. */
export const modelOptions: ChoiceOptions<LearningModel> = {
  label: "model",
  words: LEARNING_MODELS,
  aliases: { crawford: "unit", wright: "average", "cumulative average": "average" },
  help: "unit (Crawford): the rate is that of single pieces; average (Wright): of the mean of all so far.",
};

/** How hours fall with practice. */
export function learningRate(help: string): NumberOptions {
  return { label: "rate", quantity: "fraction", unit: "", min: 0.5, max: 1, askOver: askIfPercent, help };
}
