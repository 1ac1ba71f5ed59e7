import { InvalidValue } from "../../core/refusal";
import { BILLET_MEAN, billetCarbon } from "../../core/steel/billet";
import { rowFunction } from "../declare";
import { number, rangeParameter } from "../parameters";

function all(values: readonly (number | undefined)[], label: string): number[] {
  return values.map((value, at) => {
    if (value !== undefined) return value;
    throw new InvalidValue(`${label}: cell ${at + 1} is empty; give one figure a steel`);
  });
}

export const BILLET_CARBON = rowFunction({
  name: "BILLET_CARBON",
  summary: "Carbon of a billet welded of several steels once its layers have evened out: the mean by mass.",
  parameters: {
    carbon: rangeParameter(
      number({
        label: "carbon",
        quantity: "mass %",
        unit: "%",
        min: 0,
        max: 2.5,
        askOver: (value) => `was ${value / 100} meant?`,
        help: "Range of carbon contents, one a steel.",
      }),
    ),
    share: rangeParameter(
      number({
        label: "share",
        quantity: "number",
        unit: "",
        min: 0,
        help: "Range of masses of the steels, in any one unit: kg, g or %.",
      }),
    ),
  },
  result: [{ label: "carbon", unit: "mass %" }],
  relations: [BILLET_MEAN],
  compute: ({ carbon, share }) => [billetCarbon(all(carbon, "carbon"), all(share, "share"))],
});
