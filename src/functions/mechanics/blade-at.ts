import { BLADE_SECTION, bladeAt } from "../../core/mechanics/beam";
import { STATION_MOMENTS } from "../../core/shape/stations";
import { densityRelations } from "../../core/steel/density";
import { rowFunction } from "../declare";
import { number } from "../parameters";
import { position } from "../shape/balance-arguments";
import { flatParameters, stationParameters, stationsOf } from "../shape/station-arguments";

export const BLADE_AT = rowFunction({
  name: "BLADE_AT",
  summary:
    "Width, thickness, area, second moments and mass to the tip at any place of a blade measured at stations.",
  parameters: {
    at: number(position({ label: "at mm", help: "Place along the blade in the x of the stations, in mm." })),
    ...stationParameters,
    ...flatParameters,
  },
  result: [
    { label: "width", unit: "mm" },
    { label: "thickness", unit: "mm" },
    { label: "area", unit: "mm²" },
    { label: "second moment", unit: "mm⁴" },
    { label: "mass to the tip", unit: "g" },
    { label: "second moment edgewise", unit: "mm⁴" },
  ],
  relations: (steel) => [BLADE_SECTION, STATION_MOMENTS, ...densityRelations(steel)],
  compute: ({ at, density, ...lists }) => {
    const here = bladeAt(at, stationsOf(lists), density);
    return [here.width, here.thickness, here.area, here.secondMoment, here.massToTip, here.edgewiseMoment];
  },
});
