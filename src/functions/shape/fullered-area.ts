import { FULLER } from "../../core/shape/fuller";
import { FULLER_DATUMS, fulleredArea } from "../../core/shape/fullered-area";
import { SECTION_AREA } from "../../core/shape/section-area";
import { choice } from "../choice";
import { scalarFunction } from "../declare";
import { number, optionalNumber, text } from "../parameters";
import { grindOptions, length, thicknessOptions, widthOptions } from "./lengths";

export const FULLERED_AREA = scalarFunction({
  name: "FULLERED_AREA",
  summary:
    "Area of a fullered section: flat, rectangle, lenticular or diamond; the metal above the fuller's chord goes too.",
  parameters: {
    grind: text(grindOptions),
    width: number(length({ ...widthOptions, min: 0.001, max: 1000 })),
    thickness: number(length({ ...thicknessOptions, min: 0.001, max: 1000 })),
    fullerWidth: number(length({ label: "fuller width", min: 0.001, max: 1000, help: "Rim to rim, in mm." })),
    fullerDepth: number(
      length({ label: "fuller depth", min: 0.001, max: 1000, help: "Depth in the middle, in mm." }),
    ),
    aSide: optionalNumber({
      label: "a side",
      quantity: "count",
      unit: "",
      whole: true,
      min: 1,
      max: 5,
      fallback: 1,
      help: "Fullers beside one another on one side.",
    }),
    sides: optionalNumber({
      label: "sides",
      quantity: "count",
      unit: "",
      whole: true,
      min: 1,
      max: 2,
      fallback: 2,
      help: "Sides that are fullered, 1 or 2.",
    }),
    datum: choice({
      label: "datum",
      words: FULLER_DATUMS,
      help: "chord: depth below a straight edge over the rims; crown: below the face as it was before.",
    }),
  },
  result: { label: "area", unit: "mm²" },
  relations: [FULLER, SECTION_AREA],
  compute: (section) => fulleredArea(section),
});
