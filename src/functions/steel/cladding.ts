import { attemptOr } from "../../core/refusal";
import { CARBON_DIFFUSION } from "../../core/steel/billet";
import { carbonOf } from "../../core/steel/carbon";
import { CLADDING_DIFFUSION, claddingNote, cladEdge, TWO_LAYER_WARP } from "../../core/steel/cladding";
import type { Steel } from "../../core/steel/steel";
import { rowFunction } from "../declare";
import { number } from "../parameters";
import { steel } from "../steel-argument";

const rangeOf = ({ unit, min, max }: { unit: string; min: number; max: number }) => ({ unit, min, max });
const celsius = rangeOf(CLADDING_DIFFUSION.inputs.celsius);
const minutes = rangeOf(CLADDING_DIFFUSION.inputs.minutes);
const layer = rangeOf(CLADDING_DIFFUSION.inputs.layer);

/** Carbon of a cladding: of a grade with a maximum alone, half of it. */
function cladCarbon(clad: Steel): number {
  return attemptOr((clad.grade?.limits.C?.high ?? 0) / 2, () => carbonOf(clad));
}

export const CLADDING = rowFunction({
  name: "CLADDING",
  summary:
    "A core welded into a cladding (soft steel, 304, 410): how far carbon crosses, the carbon at the weld, and whether the edge keeps enough.",
  parameters: {
    core: { ...steel, label: "core", help: `Steel of the edge. ${steel.help}` },
    clad: { ...steel, label: "clad", help: `Steel of the sides. ${steel.help}` },
    celsius: number({
      ...celsius,
      label: "C",
      quantity: "temperature",
      help: "Welding or forging temperature of the steel itself in °C.",
    }),
    minutes: number({
      ...minutes,
      label: "minutes",
      quantity: "time",
      help: "Time at that temperature in all.",
    }),
    layer: number({
      ...layer,
      label: "layer mm",
      quantity: "length",
      help: "Thickness of one layer of the cladding, and of half the core, in mm as the blade is when it is hot.",
    }),
  },
  result: [
    { label: "core short of carbon", unit: "mm" },
    { label: "clad enriched", unit: "mm" },
    { label: "carbon at the weld", unit: "mass %" },
    { label: "note", unit: "text" },
  ],
  relations: [CLADDING_DIFFUSION, CARBON_DIFFUSION, TWO_LAYER_WARP],
  compute: ({ core, clad, ...heat }) => {
    const given = { core: carbonOf(core), clad: cladCarbon(clad), ...heat };
    const { depth, weld } = cladEdge(given);
    const mm = Math.round(depth * 100) / 100;
    return [mm, mm, Math.round(weld * 1000) / 1000, claddingNote(core, clad, given)];
  },
});
