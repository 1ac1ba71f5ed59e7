import { LAYERS_EVEN, minutesToEvenOut } from "../../core/steel/billet";
import { scalarFunction } from "../declare";
import { number, optionalNumber } from "../parameters";

export const EVEN_OUT = scalarFunction({
  name: "EVEN_OUT",
  summary:
    "Minutes at welding heat until equal alternate layers share their carbon to 95 %; nickel, manganese and chromium barely move.",
  parameters: {
    layerMm: number({
      label: "layer mm",
      quantity: "length",
      unit: "mm",
      above: 0,
      max: 50,
      help: "Thickness of one layer.",
    }),
    celsius: number({
      label: "C",
      quantity: "temperature",
      unit: "°C",
      above: 0,
      max: 1500,
      help: "Temperature of the steel itself.",
    }),
    carbon: optionalNumber({
      label: "carbon",
      quantity: "mass %",
      unit: "%",
      above: 0,
      max: 2.5,
      fallback: 0.6,
      askOver: (value) => `was ${value / 100} meant?`,
      help: "Mean carbon of the billet (BILLET_CARBON gives it).",
    }),
  },
  result: { label: "time", unit: "min" },
  relations: [LAYERS_EVEN],
  compute: ({ layerMm, celsius, carbon }) => minutesToEvenOut(layerMm, celsius, carbon),
});
