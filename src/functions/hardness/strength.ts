import { strengthOf, TENSILE_STRENGTH, YIELD_RATIO, YIELD_STRENGTH } from "../../core/hardness/strength";
import { rowFunction } from "../declare";
import { number, optionalText } from "../parameters";
import { scaleOptions } from "./words";
import { yieldTemper } from "./yield-arguments";

const whole = (value: number) => String(Math.round(value));

export const STRENGTH = rowFunction({
  name: "STRENGTH",
  summary:
    "Yield and tensile strength that a hardness stands for; above 58 HRC the yield is a lower bound and no tensile strength is published.",
  parameters: {
    value: number({
      label: "hardness",
      quantity: "number",
      unit: "",
      above: 0,
      help: "Hardness, in the scale named next.",
    }),
    scale: optionalText({
      ...scaleOptions,
      label: "scale",
      help: "Scale of the hardness.",
      fallback: "HRC",
    }),
    temperC: yieldTemper,
  },
  result: [
    { label: "yield", unit: "MPa" },
    { label: "tensile", unit: "MPa" },
  ],
  relations: [YIELD_STRENGTH, YIELD_RATIO, TENSILE_STRENGTH],
  compute: ({ value, scale, temperC }) => {
    const { yieldMPa, bounded, tensileMPa } = strengthOf(value, scale.word, temperC);
    return [bounded ? `over ${whole(yieldMPa)}` : yieldMPa, tensileMPa ?? "none published"];
  },
});
