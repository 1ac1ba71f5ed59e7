import { CONVERSIONS, convertHardness } from "../../core/hardness/convert";
import { scalarFunction } from "../declare";
import { number, optionalText, text } from "../parameters";
import { classOptions, scaleOptions } from "./words";

export const HARDNESS = scalarFunction({
  name: "HARDNESS",
  summary:
    "A hardness in another scale, or as tensile strength, by the published table for the class of steel; good to 1 HRC.",
  parameters: {
    value: number({
      label: "value",
      quantity: "number",
      unit: "",
      above: 0,
      help: "Hardness as read, in the scale named next.",
    }),
    from: text({ ...scaleOptions, label: "from", help: 'Scale of the value: "HRC", "HV", "HB", "MPa".' }),
    to: text({ ...scaleOptions, label: "to", help: 'Scale wanted: "HRC", "HV", "HB", "MPa".' }),
    table: optionalText({ ...classOptions, fallback: "low alloy" }),
  },
  result: { label: "hardness", unit: "" },
  relations: CONVERSIONS,
  compute: ({ value, from, to, table }) => convertHardness(value, from.word, to.word, table),
});
