import {
  findThicknessRule,
  TEN_TIMES_DEPTH,
  THICKNESS_RULES,
  THICKNESS_TABLE,
  testThickness,
} from "../../core/inspection/test-thickness";
import { scalarFunction } from "../declare";
import { number, optionalText } from "../parameters";

const words = THICKNESS_RULES.map(({ word }) => word).join(", ");

export const TEST_THICKNESS = scalarFunction({
  name: "TEST_THICKNESS",
  summary:
    "Thinnest steel on which a Rockwell C reading counts; the two published rules differ, the larger stands.",
  parameters: {
    hrc: number({
      label: "HRC",
      quantity: "hardness",
      unit: "HRC",
      above: 0,
      max: 100,
      help: "Hardness expected.",
    }),
    rule: optionalText({
      label: "rule",
      kind: "thickness rule",
      help: `Which rule: ${words}.`,
      accepts: `one of ${words}`,
      words: THICKNESS_RULES.map(({ word }) => word),
      find: findThicknessRule,
      fallback: "larger",
    }),
  },
  result: { label: "least thickness", unit: "mm" },
  relations: [THICKNESS_TABLE, TEN_TIMES_DEPTH],
  compute: ({ hrc, rule }) => testThickness(hrc, rule),
});
