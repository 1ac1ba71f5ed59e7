import { temperingRelations } from "../../core/tempering/relations";
import { temperCurve } from "../../core/tempering/temper-curve";
import { tableFunction } from "../declare";
import { numberOrNothing, optionalNumber } from "../parameters";
import { steel } from "../steel-argument";
import { onceHours, TEMPER_SPAN, toTenth } from "./treatment";

export const TEMPER_CURVE = tableFunction({
  name: "TEMPER_CURVE",
  summary:
    "Tempering curve of a blade that hardened through, as a table for a chart: temper, low, likely and high hardness.",
  parameters: {
    steel,
    from: numberOrNothing({
      label: "from C",
      ...TEMPER_SPAN,
      help: "First temper in °C; left out, 150 °C or where the published range starts.",
    }),
    to: numberOrNothing({
      label: "to C",
      ...TEMPER_SPAN,
      help: "Last temper in °C; left out, 425 °C or where the published range ends.",
    }),
    step: optionalNumber({
      label: "step C",
      quantity: "number",
      unit: "",
      above: 0,
      max: 500,
      fallback: 25,
      help: "Distance between two tempers in °C.",
    }),
    hours: onceHours,
  },
  result: [
    { label: "temper", unit: "°C" },
    { label: "low", unit: "HRC" },
    { label: "likely", unit: "HRC" },
    { label: "high", unit: "HRC" },
  ],
  relations: temperingRelations,
  compute: ({ steel, from, to, step, hours }) =>
    temperCurve(steel, { from, to, step }, hours).map(([celsius, ...hrc]) => [celsius, ...hrc.map(toTenth)]),
});
