import { CONVERSION_TABLES } from "../../core/hardness/conversion-tables";
import { SCALES as scales } from "../../core/hardness/scales";
import { tableFunction } from "../declare";

export const SCALES = tableFunction({
  name: "SCALES",
  summary: "Every hardness scale and every class of steel that HARDNESS knows, for drop-down lists.",
  parameters: {},
  result: [
    { label: "word", unit: "text" },
    { label: "what it names", unit: "text" },
    { label: "meaning", unit: "text" },
  ],
  relations: [],
  compute: () => [
    ...scales.map(({ word, meaning }) => [word, "scale", meaning]),
    ...CONVERSION_TABLES.map(({ word, title }) => [word, "class", title]),
  ],
});
