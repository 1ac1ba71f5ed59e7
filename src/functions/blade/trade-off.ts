import { tradeOffInParts } from "../../core/blade/trade-off";
import { YIELD_RATIO } from "../../core/hardness/strength";
import { EDGE_BENDING } from "../../core/mechanics/edge-load";
import { InvalidValue } from "../../core/refusal";
import { toughnessRelations } from "../../core/steel/toughness";
import { EMBRITTLEMENT } from "../../core/tempering/embrittlement";
import { temperingRelations } from "../../core/tempering/relations";
import { tableFunction } from "../declare";
import { number, rangeParameter } from "../parameters";
import { steel } from "../steel-argument";
import { shownChance, USUAL_TREATMENT } from "./blade-arguments";
import { use } from "./use-argument";

const rounded = (value: number | undefined, places = 0) =>
  value === undefined ? "" : Number(value.toFixed(places));

export const TRADE_OFF = tableFunction({
  name: "TRADE_OFF",
  summary:
    "What a few points softer or harder buy with one steel: temper, chance of the band, yield strength, what the edge bears, published toughness.",
  parameters: {
    use,
    steel,
    hrc: rangeParameter(
      number({
        label: "HRC list",
        quantity: "hardness",
        unit: "HRC",
        min: 20,
        max: 68,
        help: "Hardnesses to compare, a column in HRC; the first is the one the others are held against.",
      }),
    ),
  },
  result: [
    { label: "HRC", unit: "HRC" },
    { label: "temper C", unit: "°C" },
    { label: "chance", unit: "" },
    { label: "yield", unit: "MPa" },
    { label: "edge load", unit: "N/mm" },
    { label: "published toughness", unit: "text" },
    { label: "what changes", unit: "text" },
  ],
  relations: (steel) => [
    ...temperingRelations(steel),
    EMBRITTLEMENT,
    YIELD_RATIO,
    EDGE_BENDING,
    ...toughnessRelations(steel),
  ],
  *compute({ use, steel, hrc }) {
    const asked = hrc.filter((value) => value !== undefined);
    if (asked.length === 0) throw new InvalidValue("HRC list: empty; give one hardness or more");
    const rows = yield* tradeOffInParts(use, steel, asked, USUAL_TREATMENT);
    return rows.map((row) => [
      row.hrc,
      rounded(row.temperC),
      shownChance(row.chance),
      rounded(row.yieldMPa),
      rounded(row.edgeLoad, 1),
      row.toughness,
      row.changes,
    ]);
  },
});
