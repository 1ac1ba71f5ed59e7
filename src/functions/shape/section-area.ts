import { SECTION_AREA as RELATION, sectionArea } from "../../core/shape/section-area";
import { scalarFunction } from "../declare";
import { number, numberOrNothing, optionalNumber, text } from "../parameters";
import {
  bevelOptions,
  curveOptions,
  edgeOptions,
  flatOptions,
  grindOptions,
  length,
  ribOptions,
  thicknessOptions,
  widthOptions,
} from "./lengths";

export const SECTION_AREA = scalarFunction({
  name: "SECTION_AREA",
  summary:
    "Area of a blade's cross-section by its grind; the triangle of the final edge bevel is not counted.",
  parameters: {
    grind: text(grindOptions),
    width: number(length({ ...widthOptions, above: 0 })),
    thickness: number(length({ ...thicknessOptions, above: 0 })),
    edge: optionalNumber({ ...edgeOptions, fallback: 0 }),
    bevelHeight: numberOrNothing(length({ ...bevelOptions, above: 0 })),
    curve: numberOrNothing(length({ ...curveOptions, above: 0 })),
    flatWidth: numberOrNothing(flatOptions),
    ribHeight: numberOrNothing(ribOptions),
  },
  result: { label: "area", unit: "mm²" },
  relations: [RELATION],
  compute: (section) => sectionArea(section),
});
