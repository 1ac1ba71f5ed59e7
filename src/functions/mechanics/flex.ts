import { YIELD_RATIO, YIELD_STRENGTH } from "../../core/hardness/strength";
import { BLADE_SECTION, type Blade, bladeOf } from "../../core/mechanics/beam";
import { BLADE_FLEX, type HeldBlade, heldBlade } from "../../core/mechanics/flex";
import { type YieldBand, yieldBand } from "../../core/mechanics/yield";
import { numberText, quantityText } from "../../core/quantity-text";
import { densityRelations } from "../../core/steel/density";
import { STEEL_MODULUS } from "../../core/steel/elastic-modulus";
import { type Answer, rowFunction } from "../declare";
import { yieldHardness, yieldTemper } from "../hardness/yield-arguments";
import { numberOrNothing } from "../parameters";
import { flatParameters, stationParameters, stationsOf } from "../shape/station-arguments";
import { heldAt, loadAt, loadPlace } from "./arguments";

type SetBend = ReturnType<HeldBlade["set"]>;

const CAUTION = "of a sound blade; it may break before it sets: not a proof test";

/** Deflection, stress, its place and its share of the yield; past the set the elastic figures are no longer the blade's. */
function underLoad(held: HeldBlade, load: number | undefined, strength: YieldBand | undefined): Answer[] {
  if (load === undefined || load === 0) return ["", "", "", ""];
  const { deflection, stress, stressAt } = held.bend(load);
  if (strength === undefined) return [deflection, stress, stressAt, ""];
  const share = stress / strength.likely;
  return share > 1 ? pastSet(held, load, strength) : [deflection, stress, stressAt, share];
}

function pastSet(held: HeldBlade, load: number, { likely }: YieldBand): Answer[] {
  const set = held.set(likely);
  return [
    `takes a set at ${numberText(Number((set.load / load).toPrecision(2)))} of this load`,
    "",
    set.stressAt,
    "over 1",
  ];
}

/** The set by the likely yield strength, then the load and the bend by its low and its high end. */
function atSet(held: HeldBlade, strength: YieldBand): Answer[] {
  const [low, likely, high] = [strength.low, strength.likely, strength.high].map(held.set) as [
    SetBend,
    SetBend,
    SetBend,
  ];
  return [likely.load, likely.deflection, likely.slope, low.load, high.load, low.slope, high.slope];
}

function cautionOf({ places }: Blade, at: number, strength: YieldBand | undefined): string {
  if (strength === undefined) return "no hardness given: the set is left out";
  const bound = strength.bounded ? "; yield is a lower bound at this hardness" : "";
  const tip = at >= (places.at(-1) ?? at) ? "" : `; loaded at ${quantityText(at, "mm")}`;
  return `${CAUTION}${bound}${tip}`;
}

export const FLEX = rowFunction({
  name: "FLEX",
  takesLong: true,
  summary:
    "How far a blade bends across the flat, how stiff it is, and the load and bend at which a sound blade takes a set; not a proof test.",
  parameters: {
    ...stationParameters,
    hrc: numberOrNothing(yieldHardness),
    load: numberOrNothing({
      label: "load N",
      quantity: "force",
      unit: "N",
      min: 0,
      max: 1e6,
      help: "Force across the flat in N (1 kgf is 9.81 N); it keeps its direction as the blade bends.",
    }),
    loadAt,
    heldAt,
    temperC: yieldTemper,
    ...flatParameters,
  },
  result: [
    { label: "deflection", unit: "mm" },
    { label: "stiffness", unit: "N/mm" },
    { label: "largest stress", unit: "MPa" },
    { label: "at", unit: "mm" },
    { label: "share of yield", unit: "" },
    { label: "load at set", unit: "N" },
    { label: "deflection at set", unit: "mm" },
    { label: "bend at set", unit: "°" },
    { label: "load at set low", unit: "N" },
    { label: "load at set high", unit: "N" },
    { label: "bend at set low", unit: "°" },
    { label: "bend at set high", unit: "°" },
    { label: "caution", unit: "text" },
  ],
  relations: (steel) => [
    BLADE_FLEX,
    BLADE_SECTION,
    STEEL_MODULUS,
    YIELD_STRENGTH,
    YIELD_RATIO,
    ...densityRelations(steel),
  ],
  compute: ({ density, hrc, load, loadAt: at, heldAt: heldPlace, temperC, ...lists }) => {
    const stations = stationsOf(lists);
    const blade = bladeOf(stations, density);
    const loaded = loadPlace(stations, heldPlace, at);
    const held = heldBlade(blade, heldPlace, loaded);
    const strength = hrc === undefined ? undefined : yieldBand(hrc, temperC);
    const [deflection = "", ...stress] = underLoad(held, load, strength);
    const set = strength === undefined ? Array<Answer>(7).fill("") : atSet(held, strength);
    return [deflection, held.stiffness, ...stress, ...set, cautionOf(blade, loaded, strength)];
  },
});
