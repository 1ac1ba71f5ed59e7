import { SECTION_AREA as RELATION } from "../../core/shape/relations";
import { sectionArea } from "../../core/shape/section-area";
import { scalarFunction } from "../declare";
import { number, numberOrNothing, optionalNumber, text } from "../parameters";
import {
  bevelOptions,
  curveOptions,
  edgeOptions,
  grindOptions,
  length,
  thicknessOptions,
  widthOptions,
} from "./lengths";

export const SECTION_AREA = scalarFunction({
  name: "SECTION_AREA",
  topic: "Shape, mass and balance",
  summary:
    "Area of a blade's cross-section by its grind; the triangle of the final edge bevel is not counted.",
  parameters: {
    grind: text(grindOptions),
    width: number(length({ ...widthOptions, above: 0 })),
    thickness: number(length({ ...thicknessOptions, above: 0 })),
    edge: optionalNumber({ ...edgeOptions, fallback: 0 }),
    bevelHeight: numberOrNothing(length({ ...bevelOptions, above: 0 })),
    curve: numberOrNothing(length({ ...curveOptions, above: 0 })),
    flatWidth: numberOrNothing(
      length({
        label: "flat or rib width",
        above: 0,
        help: "Hexagonal: width of the flat along the middle, in mm. T-back: width of the rib across the blade's thickness, in mm.",
      }),
    ),
    ribHeight: numberOrNothing(
      length({ label: "rib height", above: 0, help: "T-back: height of the rib above the body, in mm." }),
    ),
  },
  result: { label: "area", unit: "mm²" },
  relations: [RELATION],
  compute: (section) => sectionArea(section),
  examples: [
    {
      given: ["flat", 45, 3, 0.4],
      gives: 76.5,
      within: 1e-9,
      source: "trapezium by hand: 45 × (3 + 0.4) / 2",
    },
    {
      given: ["part flat", 40, 4, 0.5, 18],
      gives: 128.5,
      within: 1e-9,
      source: "by hand: 4 × 22 + 18 × 4.5 / 2",
    },
    {
      given: ["hollow", 32, 4, 0.5, 16, 127],
      gives: 94.5213,
      within: 5e-5,
      source: "by hand: 100 less two circular segments of radius 127 over a 16.0954 mm face, 2.73934 each",
    },
    {
      given: ["convex", 40, 4, null, null, 0.5],
      gives: 106.7033,
      within: 5e-5,
      source: "by hand: wedge 80 plus two circular segments of radius 401.25",
    },
    {
      given: ["lenticular", 40, 6],
      gives: 160.7177,
      within: 5e-5,
      source: "by hand: two circular segments of radius 68.1667",
    },
    { given: ["diamond", 40, 6], gives: 120, source: "by hand: 40 × 6 / 2" },
    { given: ["hexagonal", 40, 5, null, null, null, 12], gives: 130, source: "by hand: 5 × (40 + 12) / 2" },
    {
      given: ["t-back", 24, 2, 0.3, null, null, 7, 6],
      gives: 69.6,
      within: 1e-9,
      source: "by hand: rib 7 × 6 plus body 24 × (2 + 0.3) / 2",
    },
  ],
});
