import { BLADE_SECTION } from "../../core/mechanics/beam";
import { BLADE_FLEX } from "../../core/mechanics/flex";
import { thicknessForFlex } from "../../core/mechanics/thickness-for-flex";
import { STEEL_MODULUS } from "../../core/steel/elastic-modulus";
import { rowFunction } from "../declare";
import { numberOrNothing } from "../parameters";
import { flatParameters, stationParameters, stationsOf } from "../shape/station-arguments";
import { heldAt, loadAt, loadPlace, needed } from "./arguments";

export const THICKNESS_FOR_FLEX = rowFunction({
  name: "THICKNESS_FOR_FLEX",
  takesLong: true,
  summary:
    "How much thicker or thinner a blade must be for a stiffness across the flat; widths, edge, wheel and fullers stay.",
  parameters: {
    ...stationParameters,
    stiffness: numberOrNothing({
      label: "stiffness N/mm",
      quantity: "stiffness",
      unit: "N/mm",
      above: 0,
      max: 1e6,
      help: "Stiffness wanted at the load, in N/mm.",
    }),
    loadAt,
    heldAt,
    ...flatParameters,
  },
  result: [
    { label: "factor on thickness", unit: "" },
    { label: "heel thickness", unit: "mm" },
  ],
  relations: [BLADE_FLEX, BLADE_SECTION, STEEL_MODULUS],
  compute: ({ density: _density, stiffness, loadAt: at, heldAt: held, ...lists }) => {
    const stations = stationsOf(lists);
    const wanted = needed(stiffness, "stiffness", "a stiffness in N/mm, such as 2.5");
    const { factor, heel } = thicknessForFlex(stations, wanted, held, loadPlace(stations, held, at));
    return [factor, heel];
  },
});
