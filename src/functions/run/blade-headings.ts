import { findUse } from "../../core/blade/bands";
import { USUAL_LINE } from "../../core/run/line";
import { use } from "../blade/use-argument";
import { blades, confidence, yieldOptions } from "../money/arguments";
import { number, numberOrNothing, optionalNumber, optionalText, textOrNothing } from "../parameters";
import {
  bevelOptions,
  curveOptions,
  edgeOptions,
  flatOptions,
  INCHES_UNDER,
  length,
  optionalGrind,
  ribOptions,
  thicknessOptions,
  widthOptions,
} from "../shape/lengths";
import { steel } from "../steel-argument";

/** What is made: how many, for what, of what, how large. */
export const bladeHeadings = {
  name: optionalText({
    label: "line",
    kind: "name",
    help: "Name of the line, L1; stands in front of its results.",
    accepts: "a name",
    fallback: USUAL_LINE.name,
    find: (given) => String(given),
  }),
  use: textOrNothing({
    label: use.label,
    kind: use.kind,
    help: use.help,
    accepts: use.accepts,
    words: use.words,
    find: findUse,
  }),
  steel,
  good: number(blades({ label: "good", help: "Good blades wanted." })),
  yieldShare: number(yieldOptions),
  confidence: optionalNumber({
    ...confidence({ help: "Chance of having enough, below 1." }),
    fallback: USUAL_LINE.confidence,
  }),
  length: numberOrNothing(
    length({
      label: "length",
      above: 0,
      inchesUnder: INCHES_UNDER.length,
      help: "Of the blade, heel to tip, in mm.",
    }),
  ),
  width: numberOrNothing(length({ ...widthOptions, above: 0, inchesUnder: INCHES_UNDER.width })),
  thickness: numberOrNothing(length({ ...thicknessOptions, above: 0, inchesUnder: INCHES_UNDER.thickness })),
  grind: optionalGrind,
  tipWidth: numberOrNothing(
    length({
      label: "tip width",
      above: 0,
      help: "Width at the tip in mm; as at the heel where left out; for a point give 0.1.",
    }),
  ),
  tipThickness: numberOrNothing(
    length({
      label: "tip thickness",
      above: 0,
      help: "Thickness at the tip in mm; as at the heel where left out; for a point give 0.1.",
    }),
  ),
  edge: optionalNumber({ ...edgeOptions, fallback: USUAL_LINE.edge }),
  bevelHeight: numberOrNothing(length({ ...bevelOptions, above: 0 })),
  curve: numberOrNothing(length({ ...curveOptions, above: 0 })),
  flatWidth: numberOrNothing(flatOptions),
  ribHeight: numberOrNothing(ribOptions),
  edgeAngle: numberOrNothing({
    label: "edge angle",
    quantity: "angle",
    unit: "°",
    above: 0,
    max: 90,
    help: "Angle of the edge a side in degrees; half of the included angle.",
  }),
};
