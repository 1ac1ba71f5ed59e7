import { USUAL_HOURS } from "../../core/tempering/hollomon-jaffe";
import { temperingRelations } from "../../core/tempering/relations";
import { retemper } from "../../core/tempering/retemper";
import { rowFunction } from "../declare";
import { number, optionalNumber } from "../parameters";
import { roundedOrBlank } from "../rounded-or-blank";
import { steel } from "../steel-argument";
import { HRC_SPAN, TEMPER_SPAN, TIME_SPAN, targetHrc, toTenth } from "./treatment";

export const RETEMPER = rowFunction({
  name: "RETEMPER",
  summary:
    "The next temper for a blade that reads too hard; one that reads too soft has to be hardened again.",
  parameters: {
    steel,
    soFarC: number({
      label: "temper C so far",
      ...TEMPER_SPAN,
      help: "Temper that the blade has had, in °C.",
    }),
    soFarHours: number({ label: "hours so far", ...TIME_SPAN, help: "Its time in all, in hours." }),
    reading: number({ label: "reading HRC", ...HRC_SPAN, help: "What the blade reads now, in HRC." }),
    targetHrc,
    hours: optionalNumber({
      label: "hours",
      ...TIME_SPAN,
      fallback: USUAL_HOURS,
      help: "Time of the next temper in hours.",
    }),
  },
  result: [
    { label: "next temper", unit: "°C" },
    { label: "likely after it", unit: "HRC" },
    { label: "advice", unit: "text" },
  ],
  relations: temperingRelations,
  compute: ({ steel, soFarC, soFarHours, reading, targetHrc, hours }) => {
    const blade = { celsius: soFarC, hours: soFarHours, hrc: reading };
    const { nextC, likely, advice } = retemper(steel, blade, targetHrc, hours);
    return [roundedOrBlank(nextC), toTenth(likely), advice];
  },
});
