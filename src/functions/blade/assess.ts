import { assess } from "../../core/blade/assess";
import { bandRelation, USES } from "../../core/blade/bands";
import { QUENCH_RELATIONS } from "../../core/blade/quench-cautions";
import { TESTER_UNCERTAINTY } from "../../core/blade/status";
import { STEEL_BY_USE } from "../../core/blade/steel-cautions";
import { findQuench } from "../../core/hardening/quench-media";
import { EMBRITTLEMENT } from "../../core/tempering/embrittlement";
import { temperingRelations } from "../../core/tempering/relations";
import { rowFunction } from "../declare";
import { number, numberOrNothing, textOrNothing } from "../parameters";
import { steel } from "../steel-argument";
import { use } from "./use-argument";

const rockwell = { quantity: "hardness", unit: "HRC", min: 20, max: 70 } as const;
export const ASSESS = rowFunction({
  name: "ASSESS",
  summary:
    "Where a hardness lies in the usual band for its use, and what the trade would be wary of; never a promise.",
  parameters: {
    use,
    steel,
    low: number({ label: "HRC or low", ...rockwell, help: "Hardness, or the low end of a range, in HRC." }),
    high: numberOrNothing({ label: "high", ...rockwell, help: "High end of the range in HRC." }),
    length: numberOrNothing({
      label: "length",
      quantity: "length",
      unit: "mm",
      above: 0,
      help: "Length of the blade in mm; over 400 mm a struck blade counts as long.",
    }),
    quench: textOrNothing({
      label: "quench",
      kind: "quench",
      help: "Quench, one of the words that QUENCHES() lists.",
      accepts: 'a quench such as "fast oil"; QUENCHES() lists them',
      find: findQuench,
    }),
    temperC: numberOrNothing({
      label: "temper C",
      quantity: "temperature",
      unit: "°C",
      min: 50,
      max: 750,
      help: "Temper of the steel itself in °C; where left out, the one that the hardness implies.",
    }),
  },
  result: [
    { label: "status", unit: "text" },
    { label: "cautions", unit: "text" },
  ],
  relations: (steel) => [
    ...(steel === null ? USES.map(bandRelation) : []),
    TESTER_UNCERTAINTY,
    STEEL_BY_USE,
    EMBRITTLEMENT,
    ...QUENCH_RELATIONS,
    ...temperingRelations(steel),
  ],
  compute: (question) => {
    const { status, cautions } = assess(question);
    return [status, cautions.join(" ")];
  },
});
