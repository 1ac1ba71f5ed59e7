import { OXIDE_COLOURS, oxideColour } from "../../core/tempering/oxide-colour";
import { scalarFunction } from "../declare";
import { number } from "../parameters";
import { TEMPER_SPAN } from "./treatment";

export const OXIDE_COLOUR = scalarFunction({
  name: "OXIDE_COLOUR",
  summary:
    "Colour that a short temper in air leaves on clean carbon steel; a colour is no measurement of hardness.",
  parameters: { celsius: number({ label: "C", ...TEMPER_SPAN, help: "Temper in °C." }) },
  result: { label: "colour", unit: "text" },
  relations: [OXIDE_COLOURS],
  compute: ({ celsius }) => oxideColour(celsius),
});
