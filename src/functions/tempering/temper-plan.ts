import { bladeStory } from "../../core/blade/story";
import { NotAvailable } from "../../core/refusal";
import { temperingRelations } from "../../core/tempering/relations";
import { treatmentOf } from "../../core/tempering/tempered";
import { rowFunction } from "../declare";
import { quenchToC } from "../hardening/quench-to-argument";
import { steel } from "../steel-argument";
import { targetHrc, toTenth, treatment } from "./treatment";

const whole = (celsius: number | null) => (celsius === null ? "" : Math.round(celsius));
const tenth = (hrc: number | null) => (hrc === null ? "" : toTenth(hrc));

export const TEMPER_PLAN = rowFunction({
  name: "TEMPER_PLAN",
  summary:
    "Temper for a hardness: where to begin, the likely temper, the hottest that may still do, what kind of answer it is and which way to lean.",
  parameters: { steel, targetHrc, ...treatment, quenchToC },
  result: [
    { label: "start at", unit: "°C" },
    { label: "likely", unit: "°C" },
    { label: "high", unit: "°C" },
    { label: "flag", unit: "text" },
    { label: "at 10 °C cooler", unit: "HRC" },
    { label: "at 10 °C hotter", unit: "HRC" },
    { label: "caution", unit: "text" },
  ],
  relations: temperingRelations,
  compute: (values) => {
    const { steel, targetHrc: target } = values;
    const { plan, missing } = bladeStory({ steel, target, treatment: treatmentOf(values) });
    if (plan === undefined) throw missing ?? new NotAvailable(`no temper of ${steel.name} is held`);
    return [
      whole(plan.startC),
      whole(plan.likelyC),
      whole(plan.highC),
      plan.flag,
      tenth(plan.hrcCooler),
      tenth(plan.hrcHotter),
      plan.caution,
    ];
  },
});
