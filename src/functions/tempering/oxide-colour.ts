import { OXIDE_COLOURS, oxideColour } from "../../core/tempering/oxide-colour";
import { scalarFunction } from "../declare";
import { number } from "../parameters";
import { TEMPER_SPAN } from "./treatment";

export const OXIDE_COLOUR = scalarFunction({
  name: "OXIDE_COLOUR",
  topic: "Tempering",
  summary:
    "Colour that a short temper in air leaves on clean carbon steel; a colour is no measurement of hardness.",
  parameters: { celsius: number({ label: "C", ...TEMPER_SPAN, help: "Temper in °C." }) },
  result: { label: "colour", unit: "text" },
  relations: [OXIDE_COLOURS],
  compute: ({ celsius }) => oxideColour(celsius),
  examples: [
    {
      given: [275],
      gives: "purple (270 °C (518 °F) to 288 °C (550 °F)); clean carbon steel, no measurement",
      source: "Sheffield Gauge Plate 270 to 280 °C; Dooley 530 to 550 °F",
    },
  ],
});
