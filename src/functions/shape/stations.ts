import { FULLER } from "../../core/shape/fuller";
import { SECTION_AREA } from "../../core/shape/section-area";
import { bladeProperties, STATION_MOMENTS } from "../../core/shape/stations";
import { densityRelations } from "../../core/steel/density";
import { rowFunction } from "../declare";
import { flatParameters, stationParameters, stationsOf } from "./station-arguments";

export const STATIONS = rowFunction({
  name: "STATIONS",
  summary: "Volume, mass, balance and inertia of a blade measured at stations from heel to tip.",
  parameters: { ...stationParameters, ...flatParameters },
  result: [
    { label: "volume", unit: "mm³" },
    { label: "mass", unit: "g" },
    { label: "balance", unit: "mm" },
    { label: "inertia about the balance", unit: "kg m²" },
  ],
  relations: (steel) => [STATION_MOMENTS, SECTION_AREA, FULLER, ...densityRelations(steel)],
  compute: (values) => {
    const { volume, mass, balance, inertia } = bladeProperties(stationsOf(values), values.density);
    return [volume, mass, balance, inertia];
  },
});
