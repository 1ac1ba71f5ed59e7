import { temperingRelations } from "../../core/tempering/relations";
import { temperPlan } from "../../core/tempering/temper-plan";
import { rowFunction } from "../declare";
import { steel } from "../steel-argument";
import { targetHrc, toTenth, treatment, treatmentOf } from "./treatment";

const whole = (celsius: number | null) => (celsius === null ? "" : Math.round(celsius));
const tenth = (hrc: number | null) => (hrc === null ? "" : toTenth(hrc));

export const TEMPER_PLAN = rowFunction({
  name: "TEMPER_PLAN",
  topic: "Tempering",
  summary:
    "Temper for a hardness: where to begin, the likely temper, the hottest that may still do, what kind of answer it is and which way to lean.",
  parameters: { steel, targetHrc, ...treatment },
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
    const plan = temperPlan(values.steel, values.targetHrc, treatmentOf(values));
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
  examples: [
    {
      given: ["C 0.60 Mn 0.88 Si 0.25 Cr 0.80", 51],
      gives: [330, 376, 413, "embrittlement range", 51.8, 50.2, "…"],
      within: 12,
      source:
        "worked inverse of the composition formula, 375.7 °C, slope -0.064 HRC/°C at 250 and -0.083 at 400 °C; ±3 HRC",
    },
    {
      given: ["H13", 54],
      gives: [350, 400, 558, "two answers", 53.8, 54.3, "…"],
      within: 6,
      source:
        "Akrostal, 1.2344 page: 53, 54 and 55.5 HRC after 350, 400 and 450 °C, 52.5 and 48 after 550 and 600; ±2.5 HRC",
    },
    {
      given: ["D2", 58, 2, 2],
      gives: [232, 371, 530, "plateau", 58.2, 58, "…"],
      within: 2,
      source:
        "Crucible, D2 data sheet: 58 HRC from 371 to 480 °C, 61 and 60 after 205 and 260, 55 after 540; ±2.5 HRC",
    },
    {
      given: ["1045", 62],
      gives: ["", "", "", "out of reach", "", "", "…"],
      source: "Hollomon and Jaffe 1945: 0.56 % C reads 63 HRC as quenched and less after any temper",
    },
  ],
});
