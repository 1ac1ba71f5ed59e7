import { bandRelation, USES } from "../../core/blade/bands";
import { TESTER_UNCERTAINTY } from "../../core/blade/status";
import { bladeStory } from "../../core/blade/story";
import { MAX_PLATE } from "../../core/hardening/max-section";
import { fahrenheit } from "../../core/quantity-text";
import { NotAvailable } from "../../core/refusal";
import { EMBRITTLEMENT } from "../../core/tempering/embrittlement";
import { temperingRelations } from "../../core/tempering/relations";
import { treatmentOf } from "../../core/tempering/tempered";
import { rowFunction } from "../declare";
import { quenchToC } from "../hardening/quench-to-argument";
import { steel } from "../steel-argument";
import { treatment } from "../tempering/treatment";
import { bladeLength, quench, shownChance, thickness } from "./blade-arguments";
import { use } from "./use-argument";

export const BAND_TEMPER = rowFunction({
  name: "BAND_TEMPER",
  takesLong: true,
  summary:
    "The temper with the best chance of the usual band for a use, out of the brittle range where the blade is struck, and what to expect of it.",
  parameters: { use, steel, length: bladeLength, thickness, quench, ...treatment, quenchToC },
  result: [
    { label: "temper C", unit: "°C" },
    { label: "temper F", unit: "°F" },
    { label: "HRC low", unit: "HRC" },
    { label: "likely", unit: "HRC" },
    { label: "HRC high", unit: "HRC" },
    { label: "chance", unit: "" },
    { label: "next step", unit: "text" },
  ],
  relations: (steel) => [
    ...(steel === null ? USES.map(bandRelation) : []),
    TESTER_UNCERTAINTY,
    EMBRITTLEMENT,
    MAX_PLATE,
    ...temperingRelations(steel),
  ],
  compute: (values) => {
    const { use, steel, length, thickness, quench } = values;
    const story = bladeStory({ use, steel, length, thickness, quench, treatment: treatmentOf(values) });
    const { temperC, estimate, chance, next } = story;
    if (temperC === undefined || estimate === undefined) {
      throw story.missing ?? new NotAvailable(`no temper of ${steel.name} is held`);
    }
    const hrc = [estimate.low, estimate.likely, estimate.high].map(Math.round);
    return [temperC, Math.round(fahrenheit(temperC)), ...hrc, shownChance(chance), next];
  },
});
